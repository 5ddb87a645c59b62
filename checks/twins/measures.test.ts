import { expect, test } from "vitest";
import { heldOfHeads } from "./measures.ts";

const within = (chances: readonly number[], truth: number) => heldOfHeads([{ chances, truth }]).within;

test("whole heads: a truth counts as far as its own step lies between 10 and 90 %", () => {
  // Steps: none 0 to 0.05, one 0.05 to 0.25, two 0.25 to 0.85, three 0.85 to 1.
  const chances = [0.05, 0.2, 0.6, 0.15];
  expect(within(chances, 0)).toBe(0);
  expect(within(chances, 1)).toBeCloseTo(0.75);
  expect(within(chances, 2)).toBe(1);
  expect(within(chances, 3)).toBeCloseTo(1 / 3);
  expect(within(chances, 4)).toBe(0);
});

test("an honest forecast of whole heads holds four truths in five", () => {
  const chances = [0.05, 0.2, 0.6, 0.15];
  const share = chances.reduce((sum, chance, truth) => sum + chance * within(chances, truth), 0);
  expect(share).toBeCloseTo(0.8, 12);
});
