import { expect, test } from "vitest";
import { animalById, animals, supplyParameters } from "../../catalogue/index.ts";
import { headRates } from "./rates.ts";
import { hideoutOf, hourOf, seenOf } from "./seen.ts";

const rates = headRates(supplyParameters);
const how = (hours: number | null, torch: boolean | null = true, food: boolean | null = null) => ({
  ...{ hoursFromLightsOut: hours, torch, foodOffered: food, lightHours: 9 },
});
const animal = (id: string) => animalById.get(id)!;
const chanceOf = (id: string, ...args: Parameters<typeof how>): number => {
  const seen = seenOf(animal(id), how(...args), rates);
  if (seen.kind !== "chance") throw new Error("says only at least so many");
  return seen.chance.central;
};

test("hours since lights-out: day, the first hour of the night, night, not said", () => {
  expect([-3, -9, 15, 16, 24].map((hours) => hourOf(how(hours)))).toEqual([
    ...["day", "day", "day", "day", "early_night"],
  ]);
  expect([0, 0.5, 1, 14, -12].map((hours) => hourOf(how(hours)))).toEqual([
    ...["early_night", "early_night", "night", "night", "night"],
  ]);
  expect(hourOf(how(null))).toBe("not_said");
});

test("by day, or without an hour, no kind of the night or of the sand is declared missing", () => {
  for (const one of animals) {
    if (one.active !== "night" && hideoutOf(one) !== "buried") continue;
    for (const hours of [-4, null]) {
      for (const food of [true, false])
        expect(seenOf(one, how(hours, true, food), rates).kind, one.id).toBe("at_least");
    }
  }
});

test("torch, food and the hour raise the chance; sand and crevices lower it", () => {
  expect(chanceOf("trochus-snail", 2, true)).toBeGreaterThan(chanceOf("trochus-snail", 2, false));
  expect(chanceOf("trochus-snail", 2, true)).toBeGreaterThan(chanceOf("trochus-snail", 0.5, true));
  expect(chanceOf("nassarius-snail", 2, true, true)).toBeGreaterThan(
    chanceOf("nassarius-snail", 2, true, false),
  );
  // Grazers do not come for meat.
  expect(chanceOf("trochus-snail", 2, true, true)).toBe(chanceOf("trochus-snail", 2, true, false));
  expect(chanceOf("trochus-snail", 2)).toBeGreaterThan(chanceOf("emerald-crab", 2));
  expect(chanceOf("emerald-crab", 2)).toBeGreaterThan(chanceOf("sand-sifting-star", 2));
  expect(chanceOf("clownfish", -2)).toBeGreaterThan(chanceOf("clownfish", 3));
});

test("food turns the odds of a sand snail by the stated factor", () => {
  const odds = (p: number) => p / (1 - p);
  expect(
    odds(chanceOf("nassarius-snail", 2, true, true)) / odds(chanceOf("nassarius-snail", 2, true)),
  ).toBeCloseTo(rates.foodOdds.central, 9);
});
