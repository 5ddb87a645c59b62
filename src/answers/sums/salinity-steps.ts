/** Salinity corrected in daily steps, as small as the most delicate animal of the tank asks. */
import { animalById } from "../../catalogue/index.ts";
import { readMeasure } from "../../contract/quantity/measure.ts";
import { convertible } from "../../contract/quantity/plain.ts";
import { readSalinity } from "../../contract/quantity/salinity.ts";
import { salinitySteps } from "../../engine/care/changes/exchange.ts";
import { saltToRaise } from "../../engine/care/changes/salt.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { round3 } from "../../engine/types/link.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { careFigures, readOtherWater, rowOf, WORK } from "./change-parts.ts";
import { middle, number, refusal } from "./parts.ts";
import { cornersOf, inputOf } from "./spread.ts";
import type { AmountField, FromTank, Given, Sum, SumAnswer, SumRefusal, SumTank } from "./sum.ts";
import { SALINITY, TEMPERATURE, WATER } from "./tank-fields.ts";

/** psu a day that animals are commonly moved by, by how they bear changes; common practice, no source. */
const PER_DAY = { low: 1.5, medium: 1, high: 0.5 } as const;
/** Where nobody said who lives there: invertebrates are the narrow ones. */
const USUAL_PER_DAY = 0.5;
/** Salinity of reef water that all but strangers bear; common practice, no source. */
const REEF = { low: 33, high: 36 };
/** Salt water to raise with, where none was said. */
const STRONG_PSU = 40;
const MOST_STEPS = 20;

const livesHere = ({ facts }: SumTank): Animal[] =>
  facts.present.flatMap(({ id, count }) => (count > 0 ? (animalById.get(id) ?? []) : []));

/** The slowest that anyone who lives there asks for. */
function slowest(tank: SumTank): FromTank | null {
  const animals = livesHere(tank);
  const [first] = animals.toSorted(
    (a, b) => PER_DAY[a.salinityPsu.sensitivity] - PER_DAY[b.salinityPsu.sensitivity],
  );
  if (first === undefined) return null;
  const { sensitivity } = first.salinityPsu;
  const corals = tank.facts.corals.value && sensitivity !== "high";
  const words = { high: "badly", medium: "fairly", low: "well" }[sensitivity];
  return {
    text: `${corals ? USUAL_PER_DAY : PER_DAY[sensitivity]} psu`,
    how: corals
      ? "for the corals; common practice, no source"
      : `${first.commonName}, which bears changes ${words}; common practice, no source`,
  };
}

/** The narrowest range of those that live there, and who sets each end. */
function narrowest(tank: SumTank | null) {
  const animals = tank === null ? [] : livesHere(tank);
  const low = animals.toSorted((a, b) => b.salinityPsu.low - a.salinityPsu.low)[0] ?? null;
  const high = animals.toSorted((a, b) => a.salinityPsu.high - b.salinityPsu.high)[0] ?? null;
  return {
    low: low?.salinityPsu.low ?? REEF.low,
    high: high?.salinityPsu.high ?? REEF.high,
    who:
      low === null || high === null
        ? "most reef animals"
        : [...new Set([low.commonName, high.commonName])].join(" and "),
  };
}

const STEP_RULE = convertible({
  ...{ label: "Change of salinity a day", quantity: "mass", unit: "g", example: "0.5 psu" },
  hard: { min: 0.05, max: 5 },
});
const stepRule = {
  ...STEP_RULE,
  ...{ unit: "psu", spellings: { psu: ["psu"], ppt: ["psu"] }, offered: ["psu"], plain: ["psu"] },
  toCanonical: (value: number) => value,
};

const PER_DAY_FIELD: AmountField = {
  ...{ name: "per_day", label: "At most so much a day", hint: "", input: "amount" },
  empty: {
    text: `${USUAL_PER_DAY} psu`,
    how: "for invertebrates, the narrow ones; common practice, no source",
  },
  ...{ read: (text, context) => readMeasure(text, stepRule, context), example: "0.5 psu", units: ["psu"] },
  fromTank: slowest,
};

const figure = careFigures("salinity-steps");

export const SALINITY_STEPS: Sum = {
  id: "salinity-steps",
  group: "changes",
  name: "Salinity by steps",
  question: "How do I bring salinity to a value without harm to the animals?",
  fields: [
    WATER,
    { ...SALINITY, label: "Salinity now" },
    {
      ...{ name: "target", label: "Salinity wanted", hint: "", input: "amount" },
      empty: { text: "35 psu", how: "seawater" },
      ...{ read: readSalinity, example: "35 psu", units: SALINITY.units },
    },
    {
      ...{ name: "other", label: "Salinity of the water put in", input: "amount", empty: "optional" },
      hint: `Left empty: purified water to lower it, ${STRONG_PSU} psu to raise it.`,
      ...{ read: readOtherWater, example: "40 psu", units: SALINITY.units },
    },
    PER_DAY_FIELD,
    { ...TEMPERATURE, empty: { text: "25 C", how: "taken to be a reef's" } },
  ],
  examples: [
    { water: "200 L", salinity: "32 psu", target: "35 psu" },
    { water: "55 US gal", salinity: "1.0285 sg 25/25", target: "35 psu", per_day: "1 psu" },
    { water: "200 L", salinity: "33 psu", target: "35 psu", other: "38 psu", temperature: "77 F" },
  ],
  work,
};

function work(given: Given, tank: SumTank | null): SumAnswer | SumRefusal {
  const [water, now, target] = [given.amount("water"), given.amount("salinity"), given.amount("target")];
  const [perDay, temperature, typed] = [
    given.amount("per_day"),
    given.amount("temperature"),
    given.maybe("other"),
  ];
  const [from, to] = [now.central, target.central];
  if (Math.abs(to - from) < 0.05)
    return refusal(
      ["It is there already, as near as an instrument can tell: nothing needs doing."],
      "target",
    );
  const rises = to > from;
  const other = typed?.central ?? (rises ? STRONG_PSU : 0);
  if (rises ? other <= to : other >= to)
    return refusal(
      [
        `Water of ${round3(other)} psu can't bring it to ${round3(to)}: it must be ${rises ? "saltier" : "fresher"} than that.`,
      ],
      "other",
    );
  const t = celsius(temperature.central);
  const stepsOf = (litres: number) => salinitySteps(litres, t, from, to, other, perDay.central);
  const steps = stepsOf(water.central);
  const inputs = [
    inputOf("water", water),
    inputOf("salinity now", now),
    inputOf("salinity wanted", target),
    typed === null
      ? { label: "salinity of the water put in", value: `${round3(other)} psu`, origin: "assumed" as const }
      : inputOf("salinity of the water put in", typed),
    inputOf("at most a day", perDay),
  ];
  const references = [WORK.millero, WORK.eos80];
  const put = (
    name: string,
    label: string,
    unit: string,
    formula: string,
    of: (litres: number) => number,
  ): Figure =>
    figure({
      ...{ name, label, unit, formula, at: "steps-of-salinity", inputs, references },
      spread: cornersOf([water], ([litres = 1]) => of(litres)),
      wouldChange: ["how much a day", "the salinity of the water put in"],
    });
  const days = put(
    "days",
    "days that it takes",
    "d",
    "difference ÷ most a day, rounded up",
    (l) => stepsOf(l).length,
  );
  const all = put("litres", "water put in altogether", "L", "sum of the days' litres", (l) =>
    stepsOf(l).reduce((sum, { inL }) => sum + inL, 0),
  );
  const shown = steps.slice(0, MOST_STEPS);
  const each = shown.map((_, i) => ({
    out: put(
      `out_${i + 1}`,
      `litres taken out on day ${i + 1}`,
      "L",
      "mass of the water × (before − after) ÷ (before − water put in)",
      (l) => stepsOf(l)[i]?.outL ?? 0,
    ),
    to: put(`to_${i + 1}`, `salinity after day ${i + 1}`, "psu", "equal steps", () => steps[i]?.to ?? to),
  }));
  const salt = rises
    ? figure({
        ...{
          name: "salt",
          label: "pure sea salt that the tank gains",
          unit: "g",
          at: "salt",
          inputs,
          references,
        },
        spread: cornersOf(
          [water],
          ([litres = 1]) =>
            1000 * saltToRaise(litres, t, practicalSalinity(from), practicalSalinity(to)).saltKg,
        ),
        formula: "water in it × g of salt a kg wanted ÷ (1000 − the same), less the salt in it",
      })
    : null;
  const range = narrowest(tank);
  const outside = to < range.low || to > range.high;
  return {
    kind: "answer",
    lead: ["It takes ", middle(days), ": each day one change, then wait for the next."],
    rows: [
      rowOf("Days", days),
      rowOf(`Water of ${round3(other)} psu in all`, all),
      ...(salt === null ? [] : [rowOf("Pure sea salt that comes in by it, about", salt)]),
    ],
    tables: [
      {
        title: "Day by day",
        columns: ["Day", "Take out, and put in as much", "Salinity after it"],
        rows: each.map(({ out, to: after }, i) => [[String(i + 1)], [number(out)], [number(after)]]),
      },
    ],
    cautions: [
      ...(outside
        ? [
            `${round3(to)} psu lies outside ${range.low} to ${range.high}, what ${range.who} live in by the catalogue: aim inside it.`,
          ]
        : []),
      "Read salinity with an instrument that was checked, before the first step and before each further one; stop where animals close, gape or lie still.",
      ...(tank !== null && tank.facts.medicines.length > 0
        ? ["Medicine is in the water: ask the vet or the maker before water is changed."]
        : []),
    ],
    notes: [
      `${rises ? "Up" : "Down"} by at most ${round3(perDay.central)} psu a day: common practice, no source. Slower is better for snails, stars, urchins and corals; down is borne better by fish than by them.`,
      "Never salt into the tank itself: dissolve it outside, and put it in where the flow is.",
      ...(rises
        ? ["Or top up what evaporates with salt water for some days: as slow, and no water is taken out."]
        : []),
      ...(steps.length > MOST_STEPS ? [`Only the first ${MOST_STEPS} days are listed.`] : []),
    ],
    wouldChange: ["A second reading with another instrument: an instrument off by 1 psu moves all of it."],
    figures: [
      days,
      all,
      ...(salt === null ? [] : [salt]),
      ...each.flatMap(({ out, to: after }) => [out, after]),
    ],
  };
}
