/** Worked examples of range extension papers through the function that the larder uses; its efficiency against theirs. */
import { describe, expect, test } from "vitest";
import { animalById, modelParameters, supplyParameters } from "../../src/catalogue/index.ts";
import { larderOf } from "../../src/engine/larder/larder.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { headsShelfAloneFeeds, stockingRate, usableGrowth } from "../../src/engine/larder/stocking-rate.ts";
import { firstTank } from "../kit/first-tank.ts";

describe("published stocking rates", () => {
  // White & McGinty, Stocking Rate Decisions, Texas extension B-5036: lb per acre; as read, see rng.residue_example.
  const texas = { grown: 1200, residue: 750, usableShare: 0.5 };
  test("supply 1200, residue 750, half of the rest: 225 lb usable an acre", () => {
    expect(usableGrowth(texas)).toBe(225);
  });
  test("at 17.64 lb an animal-unit day: 12.8 animal-unit days an acre", () => {
    const printed = supplyParameters.get("rng.residue_example")!.spread.central;
    expect(stockingRate({ ...texas, demandPerHead: 17.64 })).toBeCloseTo(printed, 1);
  });
  test("a quarter less growth bears a third of the animals: the residue does not shrink with the year", () => {
    const usual = stockingRate({ ...texas, demandPerHead: 17.64 });
    expect(stockingRate({ ...texas, grown: 900, demandPerHead: 17.64 }) / usual).toBeCloseTo(1 / 3, 12);
  });
  test("less growth than residue bears nobody", () => {
    expect(stockingRate({ ...texas, grown: 700, demandPerHead: 17.64 })).toBe(0);
  });
  // Georgia extension allotment note: a demand of 19.2 lb is met by 64 lb of forage at 30 % (continuous stocking).
  test("30 % of 64 lb feeds the one head that eats 19.2 lb", () => {
    expect(stockingRate({ grown: 64, residue: 0, usableShare: 0.3, demandPerHead: 19.2 })).toBeCloseTo(1, 9);
  });
});

test("heads that a shelf alone feeds are whole, and burn more in warmer water", () => {
  const trochus = animalById.get("trochus-snail")!;
  const need = trochus.breakEvenIntakeMgCPerDay;
  expect(headsShelfAloneFeeds(3.99 * need, trochus, 1)).toBe(3);
  expect(headsShelfAloneFeeds(3.99 * need, trochus, 2)).toBe(1);
  expect(headsShelfAloneFeeds(0.9 * need, trochus, 1)).toBe(0);
});

describe("harvest efficiency of film, against what ranges and reefs are said to have", () => {
  const { parts } = larderOf(drawMembers(firstTank(113, 90), modelParameters, { count: 200, seed: 1 }), {
    daysAhead: 120,
    sightings: {},
    residents: [],
    grazed: true,
  });
  const shares = parts
    .map(({ supply, growth, grownIn, nutrientCap }) => {
      const grown = growth.film_rock * grownIn * nutrientCap;
      return supply.film_rock / grown;
    })
    .sort((a, b) => a - b);
  const median = shares[shares.length >> 1]!;

  test("the middle run's share lies in the band proposed for film on reachable surfaces", () => {
    const { low, high } = supplyParameters.get("grz.harvest_eff_film")!.spread;
    expect(median).toBeGreaterThanOrEqual(low);
    expect(median).toBeLessThanOrEqual(high);
  });
  test("it is more than continuous grazing of a range takes, and no more than close rationing of grass does", () => {
    expect(median).toBeGreaterThan(supplyParameters.get("rng.harvest_efficiency")!.spread.low);
    expect(median).toBeLessThanOrEqual(supplyParameters.get("rng.harvest_efficiency_intensive")!.spread.high);
  });
  test("every run takes a share: never less than nothing, never all", () => {
    expect(shares.at(0)).toBeGreaterThanOrEqual(0);
    expect(shares.at(-1)).toBeLessThan(1);
  });
});
