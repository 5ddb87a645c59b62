/**
 * Acclimation: from the bag's water and the tank's to stages of steps or drip, with what the bag's ammonia becomes as pH
 * rises, and the advice that follows. Rates and limits are common practice, no source; mixing and pH are arithmetic.
 */
import { supplyParameters } from "../../catalogue/index.ts";
import { readPh } from "../../contract/quantity/ph.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { readTemperature } from "../../contract/quantity/temperature.ts";
import { readVolume } from "../../contract/quantity/volume.ts";
import {
  type Acclimated,
  airedShare,
  floatMinutes,
  phOf,
  type Stage,
  stagesOf,
  unionisedShareOf,
} from "../../engine/care/acclimation.ts";
import { carbonateFrom } from "../../engine/seawater/carbonate.ts";
import { perKilogram } from "../../engine/seawater/composition.ts";
import { SEAWATER_SOURCES } from "../../engine/seawater/sources.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, linkTo, parametersOf, round3, spreadText, workedOut } from "../../engine/types/link.ts";
import { type Sentence, told } from "../sentence.ts";
import { CARBONATE_SOURCES } from "./carbonate.ts";
import { independently, inputOf } from "./spread.ts";
import type { AmountField, ChoiceField, Given, GivenAmount, Sum, SumAnswer } from "./sum.ts";
import { PH, SALINITY, TEMPERATURE } from "./tank-fields.ts";
import {
  ALKALINITY,
  onTotal,
  PH_SCALE,
  plainRule,
  readWith,
  TOTAL_AMMONIA,
  waterOf,
} from "./water-fields.ts";

/** Most change of salinity in an hour, and the step that may be left to the move itself, psu. Common practice, no source. */
const PACE = {
  low: { psuPerHour: 8, restPsu: 1.5 },
  medium: { psuPerHour: 4, restPsu: 1 },
  high: { psuPerHour: 2, restPsu: 0.5 },
} as const;

/** By how narrow the catalogue calls each group against salinity; corals are not in it. */
const ACCLIMATED_GROUPS = {
  fish: { label: "Fish", pace: "low" },
  hermit: { label: "Hermit crabs", pace: "low" },
  snail: { label: "Snails and conchs", pace: "medium" },
  crab: { label: "Crabs", pace: "medium" },
  coral: { label: "Corals", pace: "medium" },
  shrimp: { label: "Shrimps", pace: "high" },
  star: { label: "Stars and brittle stars", pace: "high" },
  urchin: { label: "Urchins", pace: "high" },
  cucumber: { label: "Sea cucumbers", pace: "high" },
  slug: { label: "Slugs", pace: "high" },
} as const satisfies Readonly<Record<string, { label: string; pace: keyof typeof PACE }>>;
type Group = keyof typeof ACCLIMATED_GROUPS;

const EVERY_MINUTES = 15;
const FLOAT = { least: 15, most: 45, withinC: 0.5, fold: 10 } as const;
/** From so many hours in the bag on it counts as long shipped, whatever was tested. */
const LONG_HOURS = 8;
/** A pH so much below the tank's is a bag that holds much CO2. */
const LOW_PH_BY = 0.5;
/** mg N in a mg of NH3. */
const N_PER_NH3 = 14.007 / 17.031;
const PH_ERROR = 0.1;

const GROUP: ChoiceField = {
  ...{
    name: "group",
    label: "What has come",
    hint: "Invertebrates are the narrow ones.",
    input: "choice",
    usual: null,
  },
  choices: Object.entries(ACCLIMATED_GROUPS).map(([text, { label }]) => ({ text, label })),
};
const WAY: ChoiceField = {
  ...{ name: "way", label: "How", hint: "", input: "choice", usual: "steps" },
  choices: [
    { text: "steps", label: "Steps: some out, as much tank water in" },
    { text: "drip", label: "Drip: tank water runs in, a larger vessel" },
  ],
};
const BAG_SALINITY: AmountField = {
  ...{
    name: "bag_salinity",
    label: "Salinity in the bag",
    hint: "Measured, not what the shop says.",
    input: "amount",
  },
  ...{ empty: "needed", read: readSalinity, example: "32 psu", units: ["psu"] },
};
const BAG_TEMPERATURE: AmountField = {
  ...{
    name: "bag_temperature",
    label: "Temperature in the bag",
    hint: "",
    input: "amount",
    empty: "optional",
  },
  ...{ read: readTemperature, example: "22 C", units: ["C", "F"] },
};
const BAG_PH: AmountField = {
  ...{
    name: "bag_ph",
    label: "pH in the bag",
    hint: "At once on opening: it rises in air.",
    input: "amount",
  },
  ...{ empty: "optional", read: readPh, example: "7.2", units: [] },
};
const BAG_VOLUME: AmountField = {
  ...{ name: "bag_volume", label: "Water in the bag", hint: "", input: "amount", read: readVolume },
  empty: { text: "1 L", how: "taken to be a litre" },
  ...{ example: "1 L", units: ["L", "US gal", "imp gal"] },
};
const HOURS: AmountField = {
  ...{
    name: "hours",
    label: "Hours in the bag",
    hint: "From packing to now.",
    input: "amount",
    empty: "optional",
  },
  read: readWith(plainRule("Hours in the bag", "h", ["hour", "hours", "hrs"], { min: 0, max: 240 }, "18 h")),
  ...{ example: "18 h", units: ["h"] },
};
const BAG_AMMONIA: AmountField = {
  ...TOTAL_AMMONIA,
  ...{ name: "bag_ammonia", label: "Total ammonia in the bag", empty: "optional" },
  fromTank: () => null,
};

interface Waters {
  readonly bag: Acclimated;
  readonly tank: Acclimated;
}

/** The values typed, in the order that the spreads go through. */
interface Read {
  readonly bagSalinity: GivenAmount;
  readonly salinity: GivenAmount;
  readonly temperature: GivenAmount;
  readonly bagPh: GivenAmount | null;
  readonly ph: GivenAmount | null;
  readonly alkalinity: GivenAmount;
  readonly tan: GivenAmount | null;
  readonly scale: "nbs" | "total";
}

function readGiven(given: Given): Read {
  return {
    bagSalinity: given.amount("bag_salinity"),
    salinity: given.amount("salinity"),
    temperature: given.amount("temperature"),
    bagPh: given.maybe("bag_ph"),
    ph: given.maybe("ph"),
    alkalinity: given.amount("alkalinity"),
    tan: given.maybe("bag_ammonia"),
    scale: given.choice("ph_scale") === "total" ? "total" : "nbs",
  };
}

/** The bag after it has floated: at the tank's temperature, closed, so that its pH is what it was. */
function watersAt(
  read: Read,
  bagS: number,
  s: number,
  t: number,
  bagPh: number | null,
  ph: number | null,
  tan: number | null,
): Waters {
  const of = (salinityPsu: number, reading: number | null, ammonia: number | null): Acclimated => {
    const water = waterOf(t, salinityPsu);
    const alkalinity = perKilogram(read.alkalinity.central, water);
    const dic =
      reading === null || bagPh === null || ph === null
        ? null
        : carbonateFrom({ alkalinity, ph: onTotal(reading, read.scale, water) }, water).dic;
    return {
      ...{ salinityPsu, temperatureC: t, tan: ammonia },
      ...{ alkalinity: dic === null ? null : alkalinity, dic },
    };
  };
  return { bag: of(bagS, bagPh, tan), tank: of(s, ph, 0) };
}

const centralWaters = (read: Read): Waters =>
  watersAt(
    read,
    read.bagSalinity.central,
    read.salinity.central,
    read.temperature.central,
    read.bagPh?.central ?? null,
    read.ph?.central ?? null,
    read.tan?.central ?? null,
  );

type Advised = "float" | "stages" | "transfer" | "bridge";

function work(given: Given): SumAnswer {
  const read = readGiven(given);
  const group = given.choice("group") as Group;
  const way = given.choice("way") === "drip" ? "drip" : "steps";
  const pace = PACE[ACCLIMATED_GROUPS[group].pace];
  const bagL = given.amount("bag_volume");
  const { bag, tank } = centralWaters(read);
  const stages = stagesOf({ bag, tank, bagL: bagL.central, way, ...pace, everyMinutes: EVERY_MINUTES });
  const figures = figuresFor({ given, read, group, stages, pace, bagL });
  const { find } = figures;
  const hours = given.maybe("hours");
  const limit = find("limit").spread.central;
  const aired = figures.maybe("aired");
  const tested = aired !== null && aired.spread.central > limit;
  const lowPh = read.bagPh !== null && read.ph !== null && read.ph.central - read.bagPh.central >= LOW_PH_BY;
  const long = (hours !== null && hours.central >= LONG_HOURS) || lowPh;
  const quick = tested || (long && read.tan === null);
  const advised: Advised = stages.length === 0 ? (quick ? "transfer" : "float") : quick ? "bridge" : "stages";
  return {
    kind: "answer",
    lead: leadOf(advised, figures),
    rows: figures.shown.map((figure) => ({
      label: figure.label.slice(0, 1).toUpperCase() + figure.label.slice(1),
      value: [told(spreadText(figure.spread, figure.unit), figure.id)],
    })),
    tables: stages.length === 0 ? [] : [tableOf(stages, way, read.tan !== null)],
    cautions: [
      "Never pour the bag's water into the tank: it may hold copper, medicine or parasites. Throw it down the drain, not into the wild.",
      "Gloves and goggles where something stings, bites or has spines; wash hands after.",
    ],
    notes: notesOf(advised, { read, long, lowPh, way }),
    wouldChange: [
      read.tan === null
        ? "A test of ammonia in the bag, on opening."
        : read.bagPh === null
          ? "The pH of the bag, on opening."
          : "The salinity of the bag, measured by the same instrument as the tank's.",
    ],
    figures: figures.all,
  };
}

function leadOf(advised: Advised, { find }: Figures): Sentence {
  const floating = told(`${round3(find("float").spread.central)} minutes`, find("float").id);
  switch (advised) {
    case "float":
      return ["Float the closed bag ", floating, ", then move the animal: the waters are near enough."];
    case "transfer":
      return ["Float the closed bag ", floating, ", open it and move the animal at once: no long drip."];
    case "bridge":
      return [
        ...["Float ", floating, ", then move it at once into clean water of the bag's salinity; "],
        told(`${round3(find("minutes").spread.central)} minutes`, find("minutes").id),
        " of stages there.",
      ];
    case "stages":
      return [
        ...["Float ", floating, ", then bring it to the tank's water over "],
        told(`${round3(find("minutes").spread.central)} minutes`, find("minutes").id),
        ".",
      ];
  }
}

function notesOf(
  advised: Advised,
  { read, long, lowPh, way }: { read: Read; long: boolean; lowPh: boolean; way: "steps" | "drip" },
): string[] {
  return [
    ...(advised === "bridge"
      ? [
          "Clean water of the bag's salinity: tank water with purified water in it, as warm as the tank and aired. In it the stages go on without the bag's ammonia.",
        ]
      : []),
    ...(long
      ? [
          lowPh
            ? "The bag's pH is low: CO2 has kept its ammonia harmless. Once open, pH rises and the ammonia turns poisonous within minutes."
            : "Long in the bag: its pH is likely low and its ammonia high. Once it is open the ammonia turns poisonous.",
        ]
      : []),
    ...(read.bagPh === null || read.ph === null
      ? ["Without both pH readings nothing is said of un-ionised ammonia over the stages."]
      : []),
    ...(read.tan === null ? ["Ammonia of the bag was not tested: shares are told, no amounts."] : []),
    way === "drip"
      ? "A drip fills a larger vessel: aerate it, keep it warm, and throw its water away."
      : "At each step take the water out first and throw it away, then put as much tank water in.",
    "Lights of the tank low on that day; release in the dark half, invertebrates on rock or sand and never dropped.",
    "Alkalinity of the bag is taken as the tank's; rates and rests are common practice, no source.",
  ];
}

function tableOf(
  stages: readonly Stage[],
  way: "steps" | "drip",
  tested: boolean,
): SumAnswer["tables"][number] {
  const id = (name: string): string => figureId.sum("acclimation", name);
  const known = stages.some(({ water }) => phOf(water) !== null);
  const litres = (value: number): string =>
    value < 1 ? `${Math.round(1000 * value)} mL` : `${round3(value)} L`;
  return {
    title: way === "drip" ? "Drip, stage by stage" : "Step by step",
    columns: [
      "minutes",
      ...(way === "drip" ? ["litres a minute", "in the vessel"] : ["out", "tank water in"]),
      "salinity",
      ...(known ? ["pH (total scale)"] : []),
      ...(known && tested ? ["un-ionised ammonia"] : []),
    ],
    rows: stages.map(({ minute, outL, inL, litresPerMinute, volumeL, water }) => {
      const ph = phOf(water);
      const share = unionisedShareOf(water);
      return [
        [told(String(minute), id("minutes"))],
        ...(way === "drip"
          ? [[told(round3(litresPerMinute), id("tank_water"))], [told(litres(volumeL), id("tank_water"))]]
          : [[told(litres(outL), id("tank_water"))], [told(litres(inL), id("tank_water"))]]),
        [told(`${round3(water.salinityPsu)} psu`, id("gap"))],
        ...(ph === null ? [] : [[told(ph.toFixed(2), id("aired_share"))]]),
        ...(share === null || water.tan === null
          ? []
          : [[told(`${round3(share * water.tan)} mg N/L`, id("peak"))]]),
      ];
    }),
  };
}

interface Figures {
  readonly all: readonly Figure[];
  /** Those that stand in a row. */
  readonly shown: readonly Figure[];
  readonly find: (name: string) => Figure;
  readonly maybe: (name: string) => Figure | null;
}

interface FigureScene {
  readonly given: Given;
  readonly read: Read;
  readonly group: Group;
  readonly stages: readonly Stage[];
  readonly pace: (typeof PACE)[keyof typeof PACE];
  readonly bagL: GivenAmount;
}

function figuresFor({ given, read, group, stages, pace, bagL }: FigureScene): Figures {
  const { label } = ACCLIMATED_GROUPS[group];
  const salinities = [
    inputOf("salinity in the bag", read.bagSalinity),
    inputOf("salinity of the tank", read.salinity),
  ];
  const temperature = inputOf("temperature of the tank", read.temperature);
  const bagT = given.maybe("bag_temperature");
  const gap: Figure = make({
    ...{ name: "gap", label: "salinity still to go", unit: "psu", formula: "tank less bag" },
    spread: independently([read.bagSalinity, read.salinity], ([bag = 0, tank = 0]) => tank - bag),
    inputs: salinities,
  });
  const limits = [
    workedOut("what has come", label.toLowerCase()),
    workedOut("most change of salinity", `${pace.psuPerHour} psu an hour: common practice, no source`),
    workedOut("left to the move itself", `${pace.restPsu} psu: common practice, no source`),
  ];
  const minutes = make({
    ...{ name: "minutes", label: "minutes of mixing", unit: "min" },
    formula: "stages of 15 minutes, as many as keep within the rate, until the rest is left",
    spread: independently([read.bagSalinity, read.salinity], ([bag = 0, tank = 0]) =>
      Math.max(0, (60 * (Math.abs(tank - bag) - pace.restPsu)) / pace.psuPerHour) === 0
        ? 0
        : EVERY_MINUTES *
          Math.ceil((Math.abs(tank - bag) - pace.restPsu) / ((pace.psuPerHour * EVERY_MINUTES) / 60) - 1e-9),
    ),
    inputs: [linkTo(gap), ...limits],
    judged: true,
  });
  const used = make({
    ...{ name: "tank_water", label: "tank water that it takes", unit: "L" },
    formula: "what goes in over all stages",
    spread: exact(stages.reduce((sum, { inL }) => sum + inL, 0)),
    inputs: [linkTo(gap), linkTo(minutes), inputOf("water in the bag", bagL)],
    judged: true,
  });
  const floating = make({
    ...{ name: "float", label: "minutes of floating, closed", unit: "min" },
    formula: "until the bag is within 0.5 C of the tank, the gap falling to a third in 10 minutes; 15 to 45",
    spread: exact(
      bagT === null
        ? FLOAT.least
        : Math.round(
            Math.min(
              FLOAT.most,
              Math.max(
                FLOAT.least,
                floatMinutes(Math.abs(bagT.central - read.temperature.central), FLOAT.withinC, FLOAT.fold),
              ),
            ),
          ),
    ),
    inputs: [temperature, ...(bagT === null ? [] : [inputOf("temperature in the bag", bagT)])],
    judged: true,
  });
  const chronic = supplyParameters.get("tox.NH3_chronic");
  const limit = make({
    ...{ name: "limit", label: "un-ionised ammonia that a day should not pass", unit: "mg N/L" },
    formula: "the parameter's middle, as nitrogen",
    spread: exact(N_PER_NH3 * (chronic?.spread.central ?? 0.035)),
    ...{ inputs: [], parameters: ["tox.NH3_chronic"], judged: true },
  });
  const ammonia = ammoniaFigures(read, stages, limit);
  const all = [gap, minutes, used, floating, ...ammonia, limit];
  const find = (name: string): Figure => {
    const found = all.find(({ id }) => id === figureId.sum("acclimation", name));
    if (found === undefined) throw new TypeError(`Cannot tell of acclimation: no figure ${name}`);
    return found;
  };
  return {
    all,
    shown: all,
    find,
    maybe: (name) => all.find(({ id }) => id === figureId.sum("acclimation", name)) ?? null,
  };
}

/** Shares of the ammonia that are un-ionised, and amounts where it was tested; none without both pH readings. */
function ammoniaFigures(read: Read, stages: readonly Stage[], limit: Figure): Figure[] {
  const { bagPh, ph, tan } = read;
  if (bagPh === null || ph === null) return [];
  const doubt = (amount: GivenAmount): Spread =>
    amount.low === amount.high
      ? { low: amount.central - PH_ERROR, central: amount.central, high: amount.central + PH_ERROR }
      : amount;
  const phs = [doubt(bagPh), doubt(ph)] as const;
  const inputs: WorkingInput[] = [
    inputOf("pH in the bag", bagPh),
    inputOf("pH of the tank", ph),
    inputOf("alkalinity, of both", read.alkalinity),
    inputOf("temperature of the tank", read.temperature),
  ];
  const references = ["clegg-whitfield-1995" as const, ...CARBONATE_SOURCES];
  const watersWith = (bag: number, tank: number): Waters =>
    watersAt(
      read,
      read.bagSalinity.central,
      read.salinity.central,
      read.temperature.central,
      bag,
      tank,
      tan?.central ?? null,
    );
  const shareIn = make({
    ...{ name: "share", label: "un-ionised share of the bag's ammonia, closed", unit: "%" },
    formula: "by the bag's own pH, at the tank's temperature",
    spread: percent(
      independently(phs, ([bag = 0, tank = 0]) => unionisedShareOf(watersWith(bag, tank).bag) ?? 0, 0.15),
    ),
    ...{ inputs, references },
  });
  const shareAired = make({
    ...{ name: "aired_share", label: "the same once the bag is open and aired", unit: "%" },
    formula: "by the tank's pH, before any of it is diluted: CO2 goes in minutes",
    spread: percent(
      independently(
        phs,
        ([bag = 0, tank = 0]) => {
          const waters = watersWith(bag, tank);
          return airedShare(waters.bag, waters.tank) ?? 0;
        },
        0.15,
      ),
    ),
    ...{ inputs, references },
  });
  if (tan === null) return [shareIn, shareAired];
  const amount = (share: Figure): Spread => ({
    low: (share.spread.low * tan.low) / 100,
    central: (share.spread.central * tan.central) / 100,
    high: (share.spread.high * tan.high) / 100,
  });
  const tested = inputOf("total ammonia in the bag", tan);
  const peak = stages.reduce((most, { water }) => {
    const share = unionisedShareOf(water);
    return share === null || water.tan === null ? most : Math.max(most, share * water.tan);
  }, 0);
  return [
    shareIn,
    shareAired,
    make({
      ...{ name: "closed", label: "un-ionised ammonia in the closed bag", unit: "mg N/L" },
      ...{ formula: "total ammonia x its share", spread: amount(shareIn), inputs: [tested, linkTo(shareIn)] },
    }),
    make({
      ...{ name: "aired", label: "the same once it is open and aired", unit: "mg N/L" },
      ...{ formula: "total ammonia x its share", spread: amount(shareAired) },
      inputs: [tested, linkTo(shareAired), linkTo(limit)],
    }),
    ...(stages.length === 0
      ? []
      : [
          make({
            ...{ name: "peak", label: "most of it over the stages, if no CO2 left into air", unit: "mg N/L" },
            formula:
              "alkalinity, carbon and ammonia mixed by volume at each stage, pH solved, the greatest kept",
            spread: exact(peak),
            inputs: [tested, ...inputs],
            references,
          }),
        ]),
  ];
}

const percent = ({ low, central, high }: Spread): Spread => ({
  low: Math.max(0, 100 * low),
  central: 100 * central,
  high: Math.min(100, 100 * high),
});

interface Parts {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly formula: string;
  readonly spread: Spread;
  readonly inputs: readonly WorkingInput[];
  readonly parameters?: readonly string[];
  readonly references?: readonly (keyof typeof SEAWATER_SOURCES)[];
  readonly judged?: boolean;
}

function make({
  name,
  label,
  unit,
  formula,
  spread,
  inputs,
  parameters = [],
  references = [],
  judged,
}: Parts): Figure {
  const { low, central, high } = spread;
  return {
    ...{ id: figureId.sum("acclimation", name), label, unit, spread: { low, central, high } },
    working: {
      ...{ formulaKey: "arrivals.md#acclimation", formula, inputs, animals: [] },
      parameters: parametersOf(parameters, supplyParameters),
      references: references.map((key) => SEAWATER_SOURCES[key]),
      confidence: judged === true ? "judgement" : "computed",
      wouldChange: ["salinity and pH of the bag, measured on opening", "a test of its ammonia"],
    },
  };
}

export const ACCLIMATION: Sum = {
  id: "acclimation",
  group: "arrivals",
  name: "Acclimation",
  question: "How is an animal brought from its bag into the tank's water?",
  fields: [
    ...[GROUP, WAY, BAG_SALINITY, SALINITY, BAG_TEMPERATURE, TEMPERATURE, BAG_PH],
    { ...PH, label: "pH of the tank", empty: "optional" },
    PH_SCALE,
    {
      ...ALKALINITY,
      label: "Alkalinity of the tank",
      empty: { text: "2.5 meq/L", how: "taken to be near the sea's" },
    },
    ...[BAG_VOLUME, HOURS, BAG_AMMONIA],
  ],
  examples: [
    {
      ...{ group: "shrimp", bag_salinity: "32 psu", bag_temperature: "22 C", bag_ph: "7.1", hours: "20 h" },
      ...{
        bag_volume: "0.8 L",
        bag_ammonia: "2 mg/L as N",
        salinity: "35 psu",
        temperature: "25 C",
        ph: "8.2",
      },
    },
    {
      group: "snail",
      way: "drip",
      bag_salinity: "32 psu",
      salinity: "35 psu",
      temperature: "25 C",
      hours: "2 h",
    },
    { group: "fish", bag_salinity: "34.5 psu", salinity: "35 psu", temperature: "77 F" },
  ],
  work,
};
