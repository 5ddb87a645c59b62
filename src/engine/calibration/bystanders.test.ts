import { expect, test } from "vitest";
import { scores } from "../numeric/draws.ts";
import { bystanders, takenByCoincidence } from "./bystanders.ts";
import { assimilated } from "./smoother.ts";

const MEMBERS = 160;

/** Thirty observations of thirty scores that no bystander has to do with, each good to half a standard deviation. */
function pass(members: number, seed: number, off = 0) {
  const predicted = Array.from({ length: 30 }, (_, i) => scores(`predicted ${i}`, members, seed));
  const before = bystanders(members, seed);
  const errors = predicted.map((_, i) => Float64Array.from(predicted, (__, j) => (i === j ? 0.25 : 0)));
  const observed = Float64Array.from(predicted, (_, i) => (i % 2 === 0 ? off : -off));
  const after = assimilated({
    ...{ scores: before, predicted, observed, errors, times: 1, noise: "test", seed },
  });
  return takenByCoincidence(after);
}

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
const SEEDS = [1, 2, 3, 4, 5, 6];

test("few members narrow what nothing tells of, by about half the directions seen over the members", () => {
  // 24 of 160: 0.15 of the variance.
  const times = mean(SEEDS.map((seed) => pass(MEMBERS, seed)));
  expect(times).toBeGreaterThan(1.05);
  expect(times).toBeLessThan(1.12);
});

test("they lead it astray as well, the farther the more was observed that nobody expected", () => {
  const times = [0, 1, 2].map((off) => mean(SEEDS.map((seed) => pass(MEMBERS, seed, off))));
  expect(times[1]!).toBeGreaterThan(times[0]! + 0.03);
  expect(times[2]!).toBeGreaterThan(times[1]! + 0.1);
});

test("many members narrow it hardly at all", () => expect(pass(8000, 1)).toBeLessThan(1.01));

test("bystanders that are wide enough get nothing back, and lose nothing", () => {
  const wide = bystanders(50, 1).map((row) => row.map((score) => 3 * score));
  expect(takenByCoincidence(wide)).toBe(1);
});
