import { expect, test } from "vitest";
import { betaBinomial, binomial, choose } from "./chances.ts";

test("ways to choose and binomial chances", () => {
  expect(choose(5, 2)).toBe(10);
  expect(choose(49, 6)).toBe(13_983_816);
  expect(choose(3, 4)).toBe(0);
  expect(binomial(2, 5, 0.3)).toBeCloseTo(0.3087, 12);
  expect(binomial(0, 0, 0.3)).toBe(1);
});

test("beta-binomial: sums to one, has its mean, and comes to the binomial as strength grows", () => {
  const all = Array.from({ length: 9 }, (_, k) => betaBinomial(k, 8, 0.6, 10));
  expect(all.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 12);
  expect(all.reduce((sum, p, k) => sum + k * p, 0)).toBeCloseTo(4.8, 12);
  expect(betaBinomial(3, 8, 0.6, 1e9)).toBeCloseTo(binomial(3, 8, 0.6), 6);
});

test("a beta-binomial with both shapes 1 gives every count the same chance", () => {
  for (let k = 0; k <= 6; k += 1) expect(betaBinomial(k, 6, 0.5, 2)).toBeCloseTo(1 / 7, 12);
});
