/** What one, several or a continuous water change does to any level: beside the same litres changed in other ways. */
import { mixed, oldLeft, oldLeftContinuous } from "../../engine/care/changes/dilution.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { CHANGE, careFigures, readLevel, rowOf, shareOf, TIMES, WORK } from "./change-parts.ts";
import { middle, number } from "./parts.ts";
import { cornersOf, inputOf } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer } from "./sum.ts";
import { WATER } from "./tank-fields.ts";

const NOW: AmountField = {
  ...{ name: "now", label: "Level now", input: "amount", empty: "needed" },
  hint: "Of anything dissolved that is not made or used up meanwhile; not pH. The number alone.",
  ...{ read: readLevel, example: "40", units: [] },
};

const FRESH: AmountField = {
  ...{ name: "fresh", label: "Level in the new water", input: "amount" },
  hint: "The number alone, in the same unit.",
  empty: { text: "0", how: "new water that holds none of it" },
  ...{ read: readLevel, example: "0", units: [] },
};

const figure = careFigures("water-change");
/** Steps that are told one by one. */
const MOST_STEPS = 12;
const CONTINUOUS = "continuous";

export const WATER_CHANGE: Sum = {
  id: "water-change",
  group: "changes",
  name: "What a water change does",
  question: "What is left of something after one change, many small ones, or a continuous one?",
  fields: [
    WATER,
    NOW,
    FRESH,
    CHANGE,
    TIMES,
    {
      ...{ name: "way", label: "How it is changed", hint: "", input: "choice", usual: "one_by_one" },
      choices: [
        { text: "one_by_one", label: "One after the other, mixed in between" },
        { text: CONTINUOUS, label: "In and out at once, the same litres in all" },
      ],
    },
  ],
  examples: [
    { water: "100 L", now: "40", fresh: "2", change: "10 %", times: "5" },
    { water: "55 US gal", now: "0.3", change: "20 L", times: "2", way: CONTINUOUS },
    { water: "95-105 L", now: "35-45", fresh: "0", change: "50 %" },
  ],
  work,
};

function work(given: Given): SumAnswer {
  const [water, now, fresh] = [given.amount("water"), given.amount("now"), given.amount("fresh")];
  const [change, times] = [given.amount("change"), given.amount("times")];
  const n = Math.round(times.central);
  const continuous = given.choice("way") === CONTINUOUS;
  const inputs = [
    inputOf("level now", now),
    inputOf("level in the new water", fresh),
    inputOf("changed each time", change),
    inputOf("water", water),
    inputOf("changes", times),
  ];
  const spreadBy = (left: (share: number) => number) =>
    cornersOf([now, fresh, change, water], ([a = 0, b = 0, c = 0, w = 1]) =>
      mixed(a, b, left(shareOf(c, change.unit, w))),
    );
  const level = (name: string, label: string, formula: string, left: (share: number) => number): Figure =>
    figure({
      ...{ name, label, spread: spreadBy(left), unit: "", at: "dilution", formula, inputs },
      references: [WORK.mixing],
      wouldChange: ["how much is changed each time", "what the new water brings"],
    });
  const byTurns = (share: number) => oldLeft(share, n);
  const atOnce = (share: number) => oldLeftContinuous(n * share);
  const after = level(
    "after",
    "level after it",
    continuous
      ? "new water + (level now − new water) × e^−(litres changed ÷ water)"
      : "new water + (level now − new water) × (1 − share)^changes",
    continuous ? atOnce : byTurns,
  );
  const left = figure({
    ...{ name: "left", label: "share of the old water still there", unit: "%", at: "dilution" },
    spread: cornersOf([change, water], ([c = 0, w = 1]) => {
      const share = shareOf(c, change.unit, w);
      return 100 * (continuous ? atOnce(share) : byTurns(share));
    }),
    formula: continuous ? "e^−(litres changed ÷ water)" : "(1 − share)^changes",
    ...{ inputs, references: [WORK.mixing] },
  });
  const litres = figure({
    ...{ name: "litres", label: "new water in all", unit: "L", at: "dilution" },
    spread: cornersOf([change, water], ([c = 0, w = 1]) => n * shareOf(c, change.unit, w) * w),
    ...{ formula: "changes × litres each time", inputs, references: [WORK.mixing] },
  });
  const whole = n * shareOf(change.central, change.unit, water.central);
  const other = continuous
    ? level(
        "otherwise",
        "the same litres one after the other",
        "new water + difference × (1 − share)^changes",
        byTurns,
      )
    : level(
        "otherwise",
        "the same litres in and out at once",
        "new water + difference × e^−(litres ÷ water)",
        atOnce,
      );
  const once =
    !continuous && n > 1 && whole <= 1
      ? level(
          "once",
          "the same litres in one change",
          "new water + difference × (1 − all litres ÷ water)",
          (share) => 1 - n * share,
        )
      : null;
  const steps = continuous || n < 2 ? [] : stepsOf(n, level);
  const words = continuous
    ? "Changed in and out at once it comes to "
    : n === 1
      ? "After the change it is "
      : `After ${n} changes it is `;
  return {
    kind: "answer",
    lead: [words, middle(after), "."],
    rows: [
      rowOf("Level after it", after),
      rowOf("Old water still there", left),
      rowOf("New water in all", litres),
      rowOf(continuous ? "The same litres one after the other" : "The same litres in and out at once", other),
      ...(once === null ? [] : [rowOf("The same litres in one change", once)]),
    ],
    tables:
      steps.length === 0
        ? []
        : [
            {
              title: "Change by change",
              columns: ["Change", "Level after it"],
              rows: steps.map((step, i) => [[String(i + 1)], [number(step)]]),
            },
          ],
    cautions: shareOf(change.central, change.unit, water.central) > 0.3 ? [LARGE] : [],
    notes: [
      "For what mixes and stays: nitrate, phosphate, salts, alkalinity, calcium. Not for pH, un-ionised ammonia or specific gravity: these follow from the mixture.",
      "Nothing is made or taken up meanwhile, and the water is mixed before the next change.",
    ],
    wouldChange: [
      "A larger share each time: one large change clears more than many small ones of the same litres.",
    ],
    figures: [after, left, litres, other, ...(once === null ? [] : [once]), ...steps],
  };
}

/** What a change of more than this does to animals is not only dilution; common practice, no source. */
export const LARGE =
  "More than about 30 % at once: match temperature and salinity within what the animals bear, and watch them; smaller changes over some days ask less of them.";

function stepsOf(
  n: number,
  level: (name: string, label: string, formula: string, left: (share: number) => number) => Figure,
): Figure[] {
  return Array.from({ length: Math.min(n, MOST_STEPS) }, (_, i) =>
    level(
      `step_${i + 1}`,
      `level after change ${i + 1}`,
      "new water + (level now − new water) × (1 − share)^changes",
      (share) => oldLeft(share, i + 1),
    ),
  );
}
