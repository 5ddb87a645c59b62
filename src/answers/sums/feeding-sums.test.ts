/** Sums of feeding: units of entry do not matter, two portions hold what both hold, a small hand check. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { FISH_FOOD } from "./fish-food.ts";
import { readSum, type SumText } from "./given.ts";
import { PORTION } from "./portion.ts";
import type { Sum } from "./sum.ts";

const CONTEXT = { preferences: NO_PREFERENCES, today: "2026-11-27", tank: null };

function values(sum: Sum, typed: SumText): Record<string, number> {
  const read = readSum(sum, typed, CONTEXT);
  if (!read.ok) throw new Error(read.doubts.map(({ message }) => message.text).join("\n"));
  const { figures } = sum.work(read.given, null);
  return Object.fromEntries(figures.map(({ id, spread }) => [id.split(".").at(-1)!, spread.central]));
}

const grams = fc.integer({ min: 1, max: 300 }).map((hundredths) => hundredths / 100);
const foods = fc.constantFrom(
  "dry_pellet",
  "dry_flake",
  "frozen_artemia",
  "frozen_mysis",
  "seafood_mix",
  "nori",
);

describe("a portion", () => {
  test("in grams, milligrams or ounces, in litres or gallons: the same", () => {
    fc.assert(
      fc.property(grams, foods, (g, food) => {
        const one = values(PORTION, { amount: `${g} g/day`, food, water: "100 L" });
        const mg = values(PORTION, { amount: `${g * 1000} mg/day`, food, water: "100 L" });
        const oz = values(PORTION, {
          amount: `${g / 28.349523125} oz/day`,
          food,
          water: `${100 / 3.785411784} US gal`,
        });
        for (const key of Object.keys(one)) {
          expect(mg[key]).toBeCloseTo(one[key]!, 9);
          expect(oz[key]).toBeCloseTo(one[key]!, 6);
        }
      }),
    );
  });

  test("two portions hold what both hold", () => {
    fc.assert(
      fc.property(grams, grams, foods, (a, b, food) => {
        const of = (g: number) => values(PORTION, { amount: `${g} g/day`, food, water: "400 L" });
        const [one, other, both] = [of(a), of(b), of(a + b)];
        for (const key of Object.keys(both)) expect(one[key]! + other[key]!).toBeCloseTo(both[key]!, 9);
      }),
    );
  });

  test("3 g of mysis in 180 L, by hand: 16 mg N a gram, 62.0/14.0 to nitrate", () => {
    const { nitrogen, nitrate } = values(PORTION, {
      food: "frozen_mysis",
      amount: "3 g/day",
      water: "180 L",
    });
    expect(nitrogen).toBeCloseTo(48, 9);
    expect(nitrate).toBeCloseTo((48 * (62.004 / 14.007)) / 180, 3);
  });

  test("a pinch is read as the band it is, cubes ask for their weight", () => {
    expect(values(PORTION, { amount: "a pinch", water: "100 L" })["nitrogen"]).toBeCloseTo(0.12 * 77, 9);
    const asked = readSum(PORTION, { amount: "2 cubes", food: "frozen_mysis", water: "100 L" }, CONTEXT);
    expect(asked.ok ? "" : asked.doubts[0]!.message.text).toMatch(/weight on the pack/);
  });
});

describe("food for fish", () => {
  test("twice the fish, twice the food; the three amounts in order", () => {
    fc.assert(
      fc.property(grams, foods, (g, food) => {
        const one = values(FISH_FOOD, { fish: `${10 * g} g`, food, temperature: "25 C" });
        const two = values(FISH_FOOD, { fish: `${20 * g} g`, food, temperature: "77 F" });
        for (const key of Object.keys(one)) expect(two[key]).toBeCloseTo(2 * one[key]!, 6);
        expect(one["upkeep"]!).toBeLessThan(one["usual"]!);
        expect(one["usual"]!).toBeLessThan(one["most"]!);
      }),
    );
  });

  test("warmer fish need more for upkeep alone", () => {
    const of = (temperature: string) => values(FISH_FOOD, { fish: "30 g", temperature });
    expect(of("28 C")["upkeep"]! / of("25 C")["upkeep"]!).toBeCloseTo(2.4 ** 0.3, 6);
    expect(of("28 C")["usual"]).toBeCloseTo(of("25 C")["usual"]!, 9);
  });
});
