/** What a tank takes a day of alkalinity or calcium, told from its readings, with what was dosed meanwhile counted. */
import { readPlain } from "../../contract/quantity/plain.ts";
import { type Demand, demandOf, LEAST_DAYS, LEAST_SPAN_DAYS } from "../../engine/care/demand.ts";
import { CALCIUM_PER_MEQ, doseEffect } from "../../engine/seawater/dosing.ts";
import type { ReagentId } from "../../engine/seawater/reagents.ts";
import { daysFrom, seriesOf } from "../../engine/trends/series.ts";
import { exact, round3, workedOut } from "../../engine/types/link.ts";
import type { ReadingSeen } from "../../engine/types/record.ts";
import { dateWords } from "../words.ts";
import {
  DKH,
  GRAMS,
  PURITY,
  purityOf,
  RAISED,
  reagentField,
  reagentInput,
  reagentOf,
} from "./dose-fields.ts";
import { figuresOf, linkTo, middle, refusal, row, stated, times } from "./parts.ts";
import type {
  AmountField,
  Dated,
  FromTank,
  Given,
  SeriesField,
  Sum,
  SumAnswer,
  SumRefusal,
  SumTank,
} from "./sum.ts";
import { WATER } from "./tank-fields.ts";
import { ALKALINITY, CALCIUM } from "./water-fields.ts";

type What = "alkalinity" | "calcium";
const QUANTITY = { alkalinity: "alkalinity_meq_per_l", calcium: "calcium_mg_per_l" } as const;
const USUAL: Readonly<Record<What, ReagentId>> = {
  ...{ alkalinity: "sodium_bicarbonate", calcium: "calcium_chloride_2" },
};
/** Readings of the record that are put into the field: older ones tell of another tank. */
const RECENT_DAYS = 45;
const SEED = 20261127;

/** The tank's own readings, one a line, in the unit they are told in. */
const readingsOf =
  (what: What) =>
  ({ record, today }: SumTank): FromTank | null => {
    const seen = record.observations.filter(
      (one): one is ReadingSeen =>
        one.kind === "reading" &&
        one.quantity === QUANTITY[what] &&
        one.censored === null &&
        -daysFrom(today, one.on) <= RECENT_DAYS,
    );
    const [first] = seen;
    if (first === undefined) return null;
    const { unit, factor } = RAISED[what];
    const lines = seen.map(
      ({ on, value }) => `${on} ${Number((value.central * factor).toPrecision(4))} ${unit}`,
    );
    return { text: lines.join("\n"), how: `${seen.length} readings since ${dateWords(first.on)}` };
  };

/** Water changes of the record whose share was told, one a line. */
const changesOf = ({ record, today }: SumTank): FromTank | null => {
  const lines = record.happenings.flatMap((one) =>
    one.kind === "chore" &&
    one.chore === "water_change" &&
    one.share !== null &&
    -daysFrom(today, one.on) <= RECENT_DAYS
      ? [`${one.on} ${Number((100 * one.share).toPrecision(3))} %`]
      : [],
  );
  const how = `${lines.length} water ${lines.length === 1 ? "change" : "changes"} in the daybook`;
  return lines.length === 0 ? null : { text: lines.join("\n"), how };
};

/** What a change of water of known level did: its share of the step from what was there, read off between readings. */
function exchanged(readings: readonly Dated[], changes: readonly Dated[], level: number, factor: number) {
  return changes.map(({ on, value }) => ({
    on,
    rise: (value.central / 100) * factor * (level - levelOn(readings, on)),
  }));
}

function levelOn(readings: readonly Dated[], on: string): number {
  const after = readings.findIndex((reading) => reading.on >= on);
  const [before, next] = [readings[after - 1] ?? readings.at(-1), readings[after] ?? readings.at(-1)];
  if (before === undefined || next === undefined || after <= 0) return next?.value.central ?? 0;
  const span = daysFrom(before.on, next.on);
  const part = span === 0 ? 0 : daysFrom(before.on, on) / span;
  return before.value.central + part * (next.value.central - before.value.central);
}

function demandSum(what: What, examples: Sum["examples"]): Sum {
  const id = `${what}-demand`;
  const name = what === "alkalinity" ? "Alkalinity" : "Calcium";
  const figure = figuresOf(id);
  const { read } = what === "alkalinity" ? ALKALINITY : CALCIUM;
  const readings: SeriesField = {
    ...{ name: "readings", label: `Readings of ${what}`, input: "series", empty: "needed", read },
    hint: `At least ${LEAST_DAYS} days, read with the same test at the same hour.`,
    example: what === "alkalinity" ? "2026-05-01 8.2 dKH" : "2026-05-01 420 mg/L",
    fromTank: readingsOf(what),
  };
  const dosed: SeriesField = {
    ...{
      name: "dosed",
      label: "Grams dosed on single days",
      input: "series",
      empty: "optional",
      read: GRAMS.read,
    },
    hint: "Of the dry salt; of a solution, its mL times its grams in a mL.",
    example: "2026-05-03 5 g",
  };
  const changed: SeriesField = {
    ...{ name: "changed", label: "Water changed, in per cent", input: "series", empty: "optional" },
    ...{ hint: "Counted where the level of the new water is told.", example: "2026-05-05 10 %" },
    read: (text, context) => readPlain("percent", text, context),
    fromTank: changesOf,
  };
  const newWater: AmountField = {
    ...{
      name: "new_water",
      label: `${name} of the new water`,
      hint: "",
      input: "amount",
      empty: "optional",
      read,
    },
    ...(what === "alkalinity"
      ? { example: "7 dKH", units: ["dKH", "meq/L", "mg/L as CaCO3"] }
      : { example: "420 mg/L", units: ["mg/L"] }),
  };
  const everyDay: AmountField = {
    ...{
      ...GRAMS,
      name: "every_day",
      label: "Grams dosed every day",
      hint: "Between the first reading and the last.",
    },
    empty: "optional",
  };
  return {
    ...{ id, group: "dosing", name: `Demand of ${what}`, examples },
    question: `How much ${what} does my tank take a day?`,
    fields: [
      readings,
      WATER,
      everyDay,
      dosed,
      changed,
      newWater,
      reagentField(what, USUAL[what], "reagent", "Salt that was dosed", true),
      PURITY,
    ],
    work: (given) => work(given, { what, name, figure }),
  };
}

interface Which {
  readonly what: What;
  readonly name: string;
  readonly figure: ReturnType<typeof figuresOf>;
}

function work(given: Given, { what, name, figure }: Which): SumAnswer | SumRefusal {
  const readings = given.series("readings");
  const today = readings.at(-1)?.on ?? "2000-01-01";
  const { unit, factor } = RAISED[what];
  const of = reagentOf(given);
  const purity = purityOf(given);
  if (purity.central <= 0) return refusal(["A purity of nought holds no salt."], "purity");
  const litres = given.amount("water");
  const riseOf = (grams: number) => {
    const effect = doseEffect(of, grams, purity.central, litres.central);
    return what === "alkalinity" ? DKH * effect.alkalinityMeqPerL : effect.calciumMgPerL;
  };
  const changes = given.series("changed");
  const level = given.maybe("new_water");
  const byChanges = level === null ? [] : exchanged(readings, changes, level.central, factor);
  const dosed = given.series("dosed");
  const everyDay = given.maybe("every_day");
  const seen = readings.map(
    ({ on, value }): ReadingSeen => ({
      ...{ kind: "reading", quantity: QUANTITY[what], value, on, entry: on },
      ...{ censored: null, step: null, flag: null },
    }),
  );
  const demand = demandOf({
    series: seriesOf(seen, today, { factor, offset: 0 }),
    dosed: [...dosed.map(({ on, value }) => ({ on, rise: riseOf(value.central) })), ...byChanges].map(
      ({ on, rise }) => ({ day: daysFrom(today, on), rise }),
    ),
    everyDay: everyDay === null ? 0 : riseOf(everyDay.central),
    seed: SEED,
  });
  if (demand.kind === "not_enough") return refusal([fewWords(demand)], "readings");
  const inputs = [
    stated("water", litres, "L"),
    workedOut("readings", `${demand.days} days within ${demand.spanDays}`),
    reagentInput(of),
  ];
  const drift = figure({
    ...{
      name: "drift",
      label: "the readings themselves moved, a day",
      unit,
      at: "demand",
      spread: demand.drift,
    },
    formula: "median slope of all pairs of readings",
    inputs: [workedOut("readings", `${demand.days} days within ${demand.spanDays}`)],
    wouldChange: ["more readings"],
  });
  const meanwhile = figure({
    ...{
      name: "dosed",
      label: level === null ? "dosed meanwhile, a day" : "dosed and brought by new water, a day",
      unit,
      at: "demand",
      spread: exact(demand.dosedPerDay),
    },
    ...{
      formula:
        "all that was dosed or came with new water from the first reading to the last, over the days between",
      inputs,
    },
    sources: ["iupac-weights"],
  });
  const taken = figure({
    ...{ name: "demand", label: `${what} taken a day`, unit, at: "demand", spread: demand.perDay },
    formula: "the doses taken off the readings; then the median slope of all pairs, turned about",
    inputs: [linkTo(drift), linkTo(meanwhile)],
    wouldChange: ["more readings, further apart", "the volume of water"],
  });
  const beside =
    what === "calcium"
      ? []
      : [
          figure({
            ...{ name: "calcium", label: "calcium that goes with it, a day", unit: "mg/L", at: "demand" },
            spread: times(demand.perDay, CALCIUM_PER_MEQ / DKH),
            formula: "an atom of calcium for two equivalents, as chalk is made of",
            ...{ inputs: [linkTo(taken)], sources: ["iupac-weights"] },
          }),
        ];
  const between = changes.filter(({ on }) => on >= (readings[0]?.on ?? "") && on < today).length;
  const isTold = demand.perDay.low > 0;
  return {
    kind: "answer",
    lead: isTold
      ? [`The tank takes `, middle(taken), ` of ${what} a day.`]
      : [`From these readings a demand can't be told from none: `, middle(taken), " a day."],
    rows: [row(taken), row(drift), row(meanwhile), ...beside.map((one) => row(one))],
    ...{ tables: [], cautions: [] },
    notes: [
      "The range is a 90 % interval of the slope; the median slope of all pairs, so that one bad reading moves it little.",
      "A dose of the day of a reading is taken to come after it.",
      ...(level !== null
        ? [
            "Each water change counts as its share of the step from the level that day, read off between the readings.",
          ]
        : between > 0
          ? [
              `${between} water change${between === 1 ? "" : "s"} fell between these readings: what new water brought or took is in the demand. With its level told it is taken out.`,
            ]
          : ["A water change between the readings counts as demand or supply, unless told above."]),
      ...(demand.perDay.high < 0
        ? [
            `${name} rises by itself: top-up with hard water, rock that dissolves, or a dose that is not counted.`,
          ]
        : []),
    ],
    wouldChange: [`A reading every third day for two weeks more would narrow it.`],
    figures: [taken, drift, meanwhile, ...beside],
  };
}

const fewWords = ({ days, spanDays }: Extract<Demand, { kind: "not_enough" }>): string =>
  `Not enough data: ${days} ${days === 1 ? "day" : "days"} with a reading, over ${round3(spanDays)} days; it takes ${LEAST_DAYS} days with readings over at least ${LEAST_SPAN_DAYS}.`;

export const DEMAND_SUMS: readonly Sum[] = [
  demandSum("alkalinity", [
    {
      readings:
        "2026-05-01 8.6 dKH\n2026-05-04 8.2 dKH\n2026-05-07 8.1 dKH\n2026-05-10 7.7 dKH\n2026-05-13 7.5 dKH\n2026-05-16 7.2 dKH",
      ...{ water: "200 L", every_day: "2 g", dosed: "2026-05-08 6 g" },
    },
    { readings: "2026-05-01 8.1 dKH\n2026-05-03 8.0 dKH", water: "200 L" },
  ]),
  demandSum("calcium", [
    {
      readings:
        "2026-05-01 430 mg/L\n2026-05-05 425 mg/L\n2026-05-09 420 mg/L\n2026-05-13 415 mg/L\n2026-05-17 405 mg/L",
      water: "50 US gal",
    },
  ]),
];
