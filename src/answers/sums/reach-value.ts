/** What it takes to bring a level to another by changing water: in one change, in several, by a share, continuously. */
import { changesUntil, leftAt, shareOfEach, volumesUntil } from "../../engine/care/changes/dilution.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { CHANGE, careFigures, readLevel, rowOf, shareOf, TIMES, WORK } from "./change-parts.ts";
import { middle, refusal } from "./parts.ts";
import { cornersOf, inputOf } from "./spread.ts";
import type { AmountField, Given, GivenAmount, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { WATER } from "./tank-fields.ts";
import { LARGE } from "./water-change.ts";

const level = (name: string, label: string, example: string): AmountField => ({
  ...{ name, label, hint: "The number alone, the same unit in every field.", input: "amount" },
  ...{ empty: "needed", read: readLevel, example, units: [] },
});

const figure = careFigures("reach-value");

export const REACH_VALUE: Sum = {
  id: "reach-value",
  group: "changes",
  name: "Changes to reach a value",
  question: "How much water must be changed to bring something to a value?",
  fields: [
    WATER,
    level("now", "Level now", "40"),
    level("target", "Level wanted", "10"),
    {
      ...level("fresh", "Level in the new water", "0"),
      empty: { text: "0", how: "new water that holds none of it" },
    },
    { ...TIMES, label: "In how many changes", empty: { text: "4", how: "one a week for a month" } },
    { ...CHANGE, label: "Or changed each time", empty: { text: "10 %", how: "a usual change" } },
  ],
  examples: [
    { water: "100 L", now: "40", target: "10", fresh: "0" },
    { water: "300 L", now: "7", target: "8", fresh: "11", times: "5", change: "30 L" },
  ],
  work,
};

function work(given: Given): SumAnswer | SumRefusal {
  const [water, now, target] = [given.amount("water"), given.amount("now"), given.amount("target")];
  const [fresh, change, times] = [given.amount("fresh"), given.amount("change"), given.amount("times")];
  const left = leftAt(now.central, fresh.central, target.central);
  if (left === null)
    return refusal(
      [
        `Changes with this water end at ${fresh.central}, never at ${target.central}. New water must lie beyond the level wanted.`,
      ],
      "fresh",
    );
  if (left === 1) return refusal(["It is there already: nothing needs doing."], "target");
  if (left === 0)
    return refusal(
      [
        `Only with all water changed would it be ${target.central}: take a level a little away from the new water's.`,
      ],
      "target",
    );
  const n = Math.round(times.central);
  const inputs = [
    inputOf("level now", now),
    inputOf("level wanted", target),
    inputOf("level in the new water", fresh),
    inputOf("water", water),
  ];
  const of = (work: (left: number, waterL: number) => number): Spread =>
    spreadOf([now, fresh, target, water], work);
  const put = (
    name: string,
    label: string,
    unit: string,
    formula: string,
    spread: Spread,
    more = inputs,
  ): Figure =>
    figure({
      ...{ name, label, unit, formula, spread, at: "dilution", inputs: more, references: [WORK.mixing] },
      wouldChange: ["the level in the new water", "the level wanted"],
    });
  const one = put(
    "one",
    "share in one change",
    "%",
    "(now − wanted) ÷ (now − new water)",
    of((y) => 100 * (1 - y)),
  );
  const oneL = put(
    "one_litres",
    "litres in one change",
    "L",
    "share × water",
    of((y, w) => (1 - y) * w),
  );
  const withTimes = [...inputs, inputOf("changes", times)];
  const each = put(
    "each",
    `litres of each of ${n} changes`,
    "L",
    "water × (1 − (share left)^(1 ÷ changes))",
    of((y, w) => w * shareOfEach(y, n)),
    withTimes,
  );
  const all = put(
    "all",
    `litres of ${n} changes together`,
    "L",
    "changes × litres each",
    of((y, w) => n * w * shareOfEach(y, n)),
    withTimes,
  );
  const share = shareOf(change.central, change.unit, water.central);
  const count = put(
    "count",
    "changes of that size",
    "",
    "ln(share left) ÷ ln(1 − share), rounded up",
    of((y, w) => Math.ceil(changesUntil(y, shareOf(change.central, change.unit, w)) - 1e-9)),
    [...inputs, inputOf("changed each time", change)],
  );
  const through = put(
    "continuous",
    "litres in and out at once",
    "L",
    "−water × ln(share left)",
    of((y, w) => w * volumesUntil(y)),
  );
  return {
    kind: "answer",
    lead: ["One change of ", middle(one), " does it, or ", middle(count), " of ", percent(share), " each."],
    rows: [
      rowOf("In one change", one),
      rowOf("that is", oneL),
      rowOf(n === 1 ? "In a single change, litres" : `In ${n} equal changes, each`, each),
      rowOf(n === 1 ? "Together" : `Those ${n} together`, all),
      rowOf(`Changes of ${percent(share)} each`, count),
      rowOf("In and out at once, mixed all the while", through),
    ],
    tables: [],
    cautions: one.spread.central > 30 ? [LARGE] : [],
    notes: [
      "Nothing is made or taken up meanwhile: where it keeps rising, see nitrate against changes.",
      "A fall of nitrate or phosphate by much within days is a change too: corals and algae answer to it.",
    ],
    wouldChange: [
      "The level in the new water: the nearer it is to the level wanted, the more must be changed.",
    ],
    figures: [one, oneL, each, all, count, through],
  };
}

const percent = (share: number): string => `${Math.round(1000 * share) / 10} %`;

/** Over the corners of what was typed; a corner that changes cannot reach is left out of the band. */
function spreadOf(amounts: readonly GivenAmount[], work: (left: number, waterL: number) => number): Spread {
  const middleValue = work(
    leftAt(...(amounts.slice(0, 3).map(({ central }) => central) as [number, number, number])) ?? 1,
    amounts[3]?.central ?? 1,
  );
  return cornersOf(amounts, ([now = 0, fresh = 0, target = 0, waterL = 1]) => {
    const left = leftAt(now, fresh, target);
    return left === null || left === 0 ? middleValue : work(left, waterL);
  });
}
