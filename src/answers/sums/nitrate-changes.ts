/** Nitrate against regular water changes: where it settles, on which way, and how much must be changed to hold a level. */
import { readNitrate } from "../../contract/quantity/nutrients.ts";
import { readPlain } from "../../contract/quantity/plain.ts";
import {
  courseOfChanges,
  settlesAt,
  settlesContinuous,
  shareToSettle,
} from "../../engine/care/changes/dilution.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { round3 } from "../../engine/types/link.ts";
import { CHANGE, careFigures, rowOf, shareOf, WORK } from "./change-parts.ts";
import { nitrateRise } from "./nitrate-rise.ts";
import { middle, number } from "./parts.ts";
import { cornersOf, inputOf } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer } from "./sum.ts";
import { latestOf, WATER } from "./tank-fields.ts";
import { LARGE } from "./water-change.ts";

const UNITS = ["mg/L as NO3", "mg/L as N"];
const NOW: AmountField = {
  ...{ name: "now", label: "Nitrate now", hint: "", input: "amount", empty: "needed" },
  ...{ read: readNitrate, example: "20 mg/L as NO3", units: UNITS },
  fromTank: latestOf("no3_mg_n_per_l", "mg/L as N"),
};
const FRESH: AmountField = {
  ...{ name: "fresh", label: "Nitrate in the new water", hint: "", input: "amount" },
  empty: { text: "0 mg/L as NO3", how: "purified water holds next to none" },
  ...{ read: readNitrate, example: "0 mg/L as NO3", units: UNITS },
  fromTank: ({ facts: { newWaterNo3NMgPerL: fresh } }) =>
    fresh.origin === "assumed" ? null : { text: `${round3(fresh.central)} mg/L as N`, how: fresh.how },
};
const RISE: AmountField = {
  ...{ name: "rise", label: "Rise in a day, without changes", input: "amount", empty: "needed" },
  hint: "Two tests some days apart with no change between: their difference, by the days.",
  ...{ read: readNitrate, example: "0.5 mg/L as NO3", units: UNITS, fromTank: nitrateRise },
};
const TARGET: AmountField = {
  ...{ name: "target", label: "Most it should be", hint: "", input: "amount" },
  empty: { text: "10 mg/L as NO3", how: "a level that many keep to; common practice, no source" },
  ...{ read: readNitrate, example: "10 mg/L as NO3", units: UNITS },
};
const EVERY: AmountField = {
  ...{ name: "every", label: "Days from change to change", hint: "", input: "amount" },
  empty: { text: "7 d", how: "once a week" },
  ...{ read: (text, context) => readPlain("days", text, context), example: "7 d", units: ["d"] },
  fromTank: ({ facts: { waterChangeEveryDays: days } }) =>
    days.origin === "assumed" ? null : { text: `${round3(days.central)} d`, how: days.how },
};
const SHARE: AmountField = {
  ...CHANGE,
  empty: { text: "10 %", how: "a usual change" },
  fromTank: ({ facts: { waterChangeFraction: share } }) =>
    share.origin === "assumed" ? null : { text: `${round3(100 * share.central)} %`, how: share.how },
};

const figure = careFigures("nitrate-changes");
const STEPS = 10;

export const NITRATE_CHANGES: Sum = {
  id: "nitrate-changes",
  group: "changes",
  name: "Nitrate against changes",
  question: "Where does nitrate settle with these changes, and how much would hold it lower?",
  fields: [WATER, NOW, RISE, FRESH, SHARE, EVERY, TARGET],
  examples: [
    { water: "200 L", now: "30 mg/L as NO3", rise: "0.5 mg/L as NO3", change: "15 %", every: "7 d" },
    {
      water: "200 L",
      now: "5 mg/L as N",
      rise: "0.2-0.9 mg/L as NO3",
      target: "5 mg/L as NO3",
      change: "20 L",
    },
  ],
  work,
};

function work(given: Given): SumAnswer {
  const amounts = [
    given.amount("water"),
    given.amount("now"),
    given.amount("rise"),
    given.amount("fresh"),
  ] as const;
  const [water, now, rise, fresh] = amounts;
  const [change, every, target] = [given.amount("change"), given.amount("every"), given.amount("target")];
  const inputs = [
    inputOf("rise in a day", rise),
    inputOf("nitrate in the new water", fresh),
    inputOf("changed each time", change),
    inputOf("days from change to change", every),
    inputOf("water", water),
  ];
  type Of = (at: {
    rise: number;
    fresh: number;
    share: number;
    days: number;
    now: number;
    water: number;
    target: number;
  }) => number;
  const spreadOf = (of: Of) =>
    cornersOf(
      [water, now, rise, fresh, change, every, target],
      ([w = 1, n = 0, r = 0, f = 0, c = 0, d = 1, t = 0]) =>
        of({ rise: r, fresh: f, share: shareOf(c, change.unit, w), days: d, now: n, water: w, target: t }),
    );
  const put = (
    name: string,
    label: string,
    formula: string,
    of: Of,
    unit = "mg/L NO3",
    more = inputs,
  ): Figure =>
    figure({
      ...{ name, label, unit, formula, at: "steady-rise", spread: spreadOf(of), inputs: more },
      references: [WORK.mixing],
      wouldChange: ["the rise in a day", "how much is changed"],
    });
  const highest = put(
    "settles",
    "nitrate just before a change, in the long run",
    "new water + rise between changes ÷ share changed",
    (x) => settlesAt(x.fresh, x.rise * x.days, x.share).before,
  );
  const lowest = put(
    "settles_after",
    "nitrate just after a change, in the long run",
    "the same × (1 − share), and the new water's own",
    (x) => settlesAt(x.fresh, x.rise * x.days, x.share).after,
  );
  const through = put(
    "continuous",
    "nitrate where the same litres run through all the time",
    "new water + rise in a day ÷ share a day",
    (x) => settlesContinuous(x.fresh, x.rise, x.share / x.days),
  );
  const withTarget = [...inputs, inputOf("most it should be", target)];
  const shareFor = shareToSettle(fresh.central, rise.central * every.central, target.central);
  const needed =
    shareFor === null
      ? null
      : put(
          "needed",
          "share to change each time to hold it there",
          "rise between changes ÷ (most wanted − new water), at most all",
          (x) => 100 * Math.min(1, shareToSettle(x.fresh, x.rise * x.days, x.target) ?? 1),
          "%",
          withTarget,
        );
  const litres =
    needed === null
      ? null
      : put(
          "needed_litres",
          "litres each time to hold it there",
          "that share × water",
          (x) => x.water * Math.min(1, shareToSettle(x.fresh, x.rise * x.days, x.target) ?? 1),
          "L",
          withTarget,
        );
  const steps = Array.from({ length: STEPS }, (_, i) =>
    put(
      `step_${i + 1}`,
      `nitrate just before change ${i + 1}`,
      "level before the last change, mixed, with the rise since",
      (x) => courseOfChanges(x.now, x.fresh, x.rise * x.days, x.share, i + 1).at(-1)?.before ?? x.now,
      "mg/L NO3",
      [...inputs, inputOf("nitrate now", now)],
    ),
  );
  const days = every.central;
  return {
    kind: "answer",
    lead: ["With these changes nitrate settles near ", middle(highest), " just before each."],
    rows: [
      rowOf("In the long run, just before a change", highest),
      rowOf("just after one", lowest),
      rowOf("The same litres, running through all the time", through),
      ...(needed === null || litres === null
        ? []
        : [rowOf(`To stay at ${round3(target.central)} mg/L, each time`, needed), rowOf("that is", litres)]),
    ],
    tables: [
      {
        title: "On the way there",
        columns: ["Day", "Just before the change"],
        rows: steps.map((step, i) => [[String(Math.round(days * (i + 1)))], [number(step)]]),
      },
    ],
    cautions: (shareFor ?? 1) > 0.3 ? [LARGE] : [],
    notes: [
      ...(needed === null
        ? ["No change at this pace holds it there: feed less, change more often, or remove it another way."]
        : []),
      "The rise is taken to stay as it is; less food, algae that are taken out or a refugium lower it.",
      "Not part of it: what sand and rock take up. What the model expects of this tank stands under Weeks ahead.",
    ],
    wouldChange: ["The rise in a day, tested twice with no change between."],
    figures: [
      highest,
      lowest,
      through,
      ...(needed === null || litres === null ? [] : [needed, litres]),
      ...steps,
    ],
  };
}
