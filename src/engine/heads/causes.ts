/**
 * What may have taken more heads than usual: each cause with what the record speaks for it and against it, and what would
 * tell. Ranked by weights that are judgement (docs/model/heads.md, "Causes"); nothing here is a finding, only a question.
 */
import { daysBetween } from "../stocking/suitability.ts";
import type { Animal } from "../types/animal.ts";
import type { ReadingSeen, SignSeen, TankRecord } from "../types/record.ts";
import { SHELF_NAME } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import { type FedKind, SHORT_SHARE } from "./feeding.ts";
import type { KindHeads } from "./kind.ts";
import { moults } from "./life.ts";
import { hideoutOf } from "./seen.ts";

export type CauseId =
  | "source_water"
  | "starving"
  | "salinity"
  | "warmth"
  | "ammonia"
  | "copper"
  | "predator"
  | "shells"
  | "fallen"
  | "moult"
  | "outage"
  | "arrival"
  | "age"
  | "hidden";

export interface Cause {
  readonly id: CauseId;
  readonly name: string;
  readonly for: readonly string[];
  readonly against: readonly string[];
  /** What would tell it from the others. */
  readonly tell: string;
  readonly weight: number;
}

export interface LossScene {
  readonly kind: KindHeads;
  readonly facts: TankFacts;
  readonly record: TankRecord;
  /** Null for an animal that the shelves do not feed. */
  readonly fed: FedKind | null;
  /** Everybody that lives there. */
  readonly company: readonly Animal[];
}

/** Days back from now that count as "about that time". */
const LATELY = 30;
/** Weights: a cause as such, one more thing that speaks for it, one that speaks against it. */
const SPEAKS = { for: 2, strongly: 4, against: -3 } as const;

type Draft = Pick<Cause, "id" | "name" | "tell"> & {
  readonly base: number;
  readonly strong?: readonly string[];
  readonly for?: readonly string[];
  readonly against?: readonly string[];
};

/** The likeliest first; what does not apply to the kind is left out. */
export function causesOf(scene: LossScene): Cause[] {
  const drafts = [
    starving(scene),
    salinity(scene),
    warmth(scene),
    ammonia(scene),
    copper(scene),
    predator(scene),
    shells(scene),
    fallen(scene),
    moult(scene),
    outage(scene),
    arrival(scene),
    age(scene),
    hidden(scene),
  ].flatMap((draft) => (draft === null ? [] : [draft]));
  const found = drafts.map(causeOf);
  const explained = found.some(({ weight, id }) => weight >= EXPLAINED && id !== "hidden");
  return [...found, ...sourceWater(scene, explained)].toSorted((a, b) => b.weight - a.weight);
}

/** From here on a cause explains a loss by itself, and source water is no longer asked first. */
const EXPLAINED = 4;
/** Source water's weight where something else explains the loss: still before what nothing speaks for. */
const ASKED_ALL_THE_SAME = 2.5;

function causeOf({ base, strong = [], for: speaks = [], against = [], ...rest }: Draft): Cause {
  return {
    ...rest,
    for: [...strong, ...speaks],
    against,
    weight:
      base + strong.length * SPEAKS.strongly + speaks.length * SPEAKS.for + against.length * SPEAKS.against,
  };
}

const lately = (record: TankRecord, on: string, days = LATELY): boolean =>
  daysBetween(on, record.asOf) <= days;

const readingsOf = (record: TankRecord, quantity: ReadingSeen["quantity"]): ReadingSeen[] =>
  record.observations.flatMap((one) =>
    one.kind === "reading" && one.quantity === quantity && lately(record, one.on) ? [one] : [],
  );

const signsOf = (record: TankRecord, sign: SignSeen["sign"], animal: string): SignSeen[] =>
  record.observations.flatMap((one) =>
    one.kind === "sign" &&
    one.sign === sign &&
    (one.animal === animal || one.animal === null) &&
    lately(record, one.on)
      ? [one]
      : [],
  );

const isMollusc = ({ group }: Animal): boolean => group === "snail" || group === "conch" || group === "slug";

function starving({ fed }: LossScene): Draft | null {
  if (fed === null) return null;
  const shelf = fed.scarcest === null ? "its shelves" : SHELF_NAME[fed.scarcest];
  const short = fed.fed.central < SHORT_SHARE;
  const enough = fed.fed.low >= 1 - 1e-9;
  return {
    ...{ id: "starving", name: "Too little food", base: 1 },
    tell: "Offer what it eats at lights-out for three nights: hungry animals come, and fast.",
    strong: short ? [`${shelf} gives less than its mouths want`] : [],
    for: !short && fed.shortOf20 >= 8 ? [`${shelf} is short in ${fed.shortOf20} of 20 runs`] : [],
    against: enough ? ["the shelves feed all of them in nearly every run"] : [],
  };
}

/** A jump of salinity that harms molluscs and echinoderms, PSU, from one reading to the next. Judgement. */
const SALINITY_JUMP = 2;
const SALINITY_LEEWAY = 1;

function salinity({ kind: { life }, record }: LossScene): Draft {
  const { salinityPsu } = life.animal;
  const readings = readingsOf(record, "salinity_psu");
  const outside = readings.filter(
    ({ value }) =>
      value.central < salinityPsu.low - SALINITY_LEEWAY || value.central > salinityPsu.high + SALINITY_LEEWAY,
  );
  const jump = readings.some((one, i) => {
    const before = readings[i - 1];
    return before !== undefined && Math.abs(one.value.central - before.value.central) >= SALINITY_JUMP;
  });
  return {
    ...{ id: "salinity", name: "Salinity, or a change of it", base: 1.5 },
    tell: "Measure salinity with a checked instrument, in the tank and in the new water.",
    strong: [
      ...(outside.length > 0 ? [`salinity was out of its range on ${outside.at(-1)!.on}`] : []),
      ...(jump ? ["salinity jumped from one reading to the next"] : []),
    ],
    against:
      readings.length >= 2 && outside.length === 0 && !jump ? ["salinity was steady and in its range"] : [],
  };
}

function warmth({ kind: { life }, record }: LossScene): Draft | null {
  const { temperatureC } = life.animal;
  const readings = readingsOf(record, "temperature_c");
  const hot = readings.filter(({ value }) => value.central > temperatureC.max);
  const cold = readings.filter(({ value }) => value.central < temperatureC.min);
  if (hot.length + cold.length === 0 && !temperatureC.coolWaterSpecies) return null;
  return {
    ...{ id: "warmth", name: "Too warm or too cold", base: 0.5 },
    tell: "Read the thermometer at its warmest hour, late in the lit day.",
    strong: [
      ...(hot.length > 0 ? [`the water was warmer than it bears on ${hot.at(-1)!.on}`] : []),
      ...(cold.length > 0 ? [`the water was colder than it bears on ${cold.at(-1)!.on}`] : []),
    ],
    for: temperatureC.coolWaterSpecies ? ["it is a cool-water kind"] : [],
  };
}

/** mg N/L from which on ammonia is a cause to reckon with. */
const AMMONIA = 0.25;

function ammonia({ record }: LossScene): Draft {
  const readings = readingsOf(record, "tan_mg_n_per_l");
  const high = readings.filter(
    ({ value, flag }) => flag === "danger" || (value.central >= AMMONIA && flag !== null),
  );
  const clear = readings.filter(({ value }) => value.central < AMMONIA);
  return {
    ...{ id: "ammonia", name: "Ammonia", base: 1 },
    tell: "Test ammonia today, and again tomorrow: a hidden body raises it.",
    strong: high.length > 0 ? [`ammonia was high on ${high.at(-1)!.on}`] : [],
    against: clear.length > 0 && high.length === 0 ? ["ammonia tested low in these weeks"] : [],
  };
}

function copper({ kind: { life }, facts, record }: LossScene): Draft | null {
  const treated = record.happenings.filter(
    (one) => one.kind === "treated" && one.step === "started" && lately(record, one.on, 90),
  );
  const named = [...facts.medicines, ...treated.map((one) => (one.kind === "treated" ? one.substance : ""))];
  if (named.length === 0 && !life.animal.risks.includes("copper_sensitive")) return null;
  return {
    ...{ id: "copper", name: "Copper or a medicine", base: 0.5 },
    tell: "Test copper in the tank and in the source water; ask what the tank and its rock were treated with before.",
    strong: named.length > 0 ? [`${[...new Set(named)].join(", ")} was put in`] : [],
  };
}

function predator({ kind: { life }, company }: LossScene): Draft | null {
  const there = (likelihood: "likely" | "possible") =>
    life.animal.predatorsOfIt.flatMap((link) =>
      link.likelihood === likelihood
        ? company
            .filter(({ id }) => id === link.id && id !== life.animal.id)
            .map(({ commonName }) => commonName)
        : [],
    );
  const likely = there("likely");
  const possible = there("possible");
  if (life.animal.predatorsOfIt.length === 0) return null;
  return {
    ...{ id: "predator", name: "Eaten", base: 0.5 },
    tell: "Look by torch two hours after lights-out, and for shells that are bored, chipped or licked clean.",
    strong: likely.map((name) => `${name} eats it`),
    for: possible.map((name) => `${name} may eat it`),
  };
}

function shells({ kind: { life }, record }: LossScene): Draft | null {
  if (life.animal.needs.emptyShellsPerAnimal === null) return null;
  const free = signsOf(record, "empty_shells", life.animal.id);
  return {
    ...{ id: "shells", name: "A fight over shells", base: 1.5 },
    tell: "Put in two or three empty shells for each, of several sizes, and see within a day who moves.",
    for: free.length === 0 ? ["no empty shells were logged in these weeks"] : [],
    against: free.some(({ animal }) => animal === null) ? ["empty shells lie about"] : [],
  };
}

function fallen({ kind: { life }, record }: LossScene): Draft | null {
  const { canRightItself, id } = life.animal;
  if (canRightItself === "not-applicable") return null;
  const fell = signsOf(record, "fallen_snails", id);
  const poor = canRightItself === "no" || canRightItself === "poorly" || canRightItself === "disputed";
  if (!poor && fell.length === 0) return null;
  return {
    ...{ id: "fallen", name: "Fallen and not righted", base: poor ? 2 : 0.5 },
    tell: "Turn over every upturned one on the sand each evening for a week, and note how many.",
    strong: fell.length > 0 ? [`upturned snails were seen on ${fell.at(-1)!.on}`] : [],
    for: canRightItself === "no" ? ["it cannot right itself on sand"] : [],
  };
}

function moult({ kind: { life }, record }: LossScene): Draft | null {
  if (!moults(life.animal)) return null;
  const cast = signsOf(record, "cast_shell", life.animal.id);
  return {
    ...{ id: "moult", name: "Moulting: hidden, or eaten while soft", base: 1 },
    tell: "Wait ten days: one that has moulted comes out again. Look whether the empty one is split behind the head and light.",
    strong: cast.length > 0 ? [`a cast shell was seen on ${cast.at(-1)!.on}: that is no loss`] : [],
  };
}

function outage({ record }: LossScene): Draft | null {
  const outages = record.happenings.filter(
    (one) =>
      one.kind === "outage" &&
      one.hours >= 1 &&
      (one.of === "power" || one.of === "pumps" || one.of === "heater") &&
      lately(record, one.on),
  );
  if (outages.length === 0) return null;
  return {
    ...{ id: "outage", name: "The outage", base: 0 },
    tell: "Other kinds would have suffered too: count them by torch.",
    strong: [`power, pumps or heater stood still on ${outages.at(-1)!.on}`],
  };
}

const JOURNEY_DAYS = 14;

function arrival({ kind: { life }, record }: LossScene): Draft | null {
  const came = life.events.filter(
    ({ kind, on }) => kind === "added" && lately(record, on, LATELY + JOURNEY_DAYS),
  );
  if (came.length === 0) return null;
  return {
    ...{ id: "arrival", name: "The journey and the change of water", base: 1 },
    tell: "Ask the shop how the others of that delivery do.",
    for: [`some came on ${came.at(-1)!.on}`],
  };
}

function age({ kind: { life } }: LossScene): Draft | null {
  const first = life.before > 0 ? 0 : (life.events.find(({ kind }) => kind === "added")?.day ?? life.days);
  const years = (life.days - first) / 365.25;
  if (years < life.animal.lifespanYears.low) return null;
  return {
    ...{ id: "age", name: "Age", base: 0.5 },
    tell: "Nothing does: old ones go one by one over months, not several in a week.",
    for: ["the oldest have lived as long as some of their kind do"],
  };
}

function hidden({ kind: { life } }: LossScene): Draft | null {
  const hideout = hideoutOf(life.animal);
  if (hideout === "open" && life.animal.active !== "night") return null;
  return {
    ...{ id: "hidden", name: "Not dead, only out of sight", base: 1 },
    tell: "Count by torch two hours after lights-out, with a little food in the water.",
    for:
      hideout === "open"
        ? []
        : [hideout === "buried" ? "it lives in the sand" : "it lives in holes of the rock"],
  };
}

/** Asked first where snails die and nothing explains it. */
function sourceWater({ kind: { life }, facts }: LossScene, explained: boolean): Cause[] {
  if (!isMollusc(life.animal)) return [];
  const pure = facts.sourceWater.value === "purified" && facts.sourceWater.origin === "stated";
  return [
    {
      ...{ id: "source_water", name: "Source water: copper, zinc or chlorine from tap or pipes" },
      for: pure
        ? []
        : [
            facts.sourceWater.value === "purified"
              ? "nobody said what the source water is"
              : `the source water is ${facts.sourceWater.value}`,
          ],
      against: pure ? ["the source water is purified; its filters may still be spent"] : [],
      tell: "Test the source water for copper, and a purifier's outlet for what still passes (TDS).",
      weight: explained ? ASKED_ALL_THE_SAME : pure ? EXPLAINED : EXPLAINED + 2,
    },
  ];
}
