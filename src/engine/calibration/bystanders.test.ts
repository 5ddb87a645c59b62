import { expect, test } from "vitest";
import { scores } from "../numeric/draws.ts";
import { bystanders, takenByCoincidence } from "./bystanders.ts";
import { assimilated } from "./smoother.ts";

const MEMBERS = 160;

/** Thirty observations of thirty scores that no bystander has to do with, each good to half a standard deviation. */
function pass(members: number, seed: number) {
  const predicted = Array.from({ length: 30 }, (_, i) => scores(`predicted ${i}`, members, seed));
  const before = bystanders(members, seed);
  const errors = predicted.map((_, i) => Float64Array.from(predicted, (__, j) => (i === j ? 0.25 : 0)));
  const after = assimilated({
    ...{ scores: before, predicted, observed: new Float64Array(30), errors, times: 1, noise: "test", seed },
  });
  return takenByCoincidence(before, after);
}

test("few members narrow what nothing tells of, by about half the directions seen over the members", () => {
  const times = [1, 2, 3, 4, 5, 6].map((seed) => pass(MEMBERS, seed));
  const mean = times.reduce((sum, one) => sum + one, 0) / times.length;
  expect(mean).toBeGreaterThan(1.05);
  expect(mean).toBeLessThan(1.2);
});

test("many members narrow it hardly at all", () => expect(pass(8000, 1)).toBeLessThan(1.01));

test("a pass that widened them gives nothing back and takes nothing", () => {
  const before = bystanders(50, 1);
  const after = before.map((row) => row.map((score) => 3 * score));
  expect(takenByCoincidence(before, after)).toBe(1);
});
