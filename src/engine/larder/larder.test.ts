import { describe, expect, test } from "vitest";
import { animalById, modelParameters } from "../../catalogue/index.ts";
import { RATION_MG_C, SHELVES } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import { pessimisticFigure, supplyFigure, totalFigure } from "./figures.ts";
import { larderOf } from "./larder.ts";
import { centralMember, drawMembers } from "./members.ts";
import { mouthsOf } from "./mouths.ts";
import { type SupplyScene, supplyOf } from "./supply.ts";
import { referenceTank } from "./test-kit/reference-tank.ts";

const scene = (changes: Partial<SupplyScene> = {}): SupplyScene => ({
  daysAhead: 0,
  sightings: {},
  residents: [],
  grazed: false,
  ...changes,
});
const membersOf = (facts: TankFacts) => drawMembers(facts, modelParameters, { count: 100, seed: 1 });

describe("members", () => {
  test("the same seed gives the same members, another seed others", () => {
    const facts = referenceTank();
    const again = drawMembers(facts, modelParameters, { count: 20, seed: 3 });
    expect(drawMembers(facts, modelParameters, { count: 20, seed: 3 })).toEqual(again);
    expect(drawMembers(facts, modelParameters, { count: 20, seed: 4 })).not.toEqual(again);
  });

  test("an exact fact is the same in every member; a band's median comes back", () => {
    const facts = referenceTank();
    const volumes = membersOf(facts).map(({ inputs }) => inputs.V);
    expect(new Set(volumes)).toEqual(new Set([113]));
    const light = membersOf(facts)
      .map(({ inputs }) => inputs.parR)
      .sort((a, b) => a - b);
    expect(light[50]! / facts.parRock.central).toBeCloseTo(1, 1);
  });

  test("frozen food counts by its carbon: as much C, N and P a day whatever the water in it", () => {
    const dry = centralMember(referenceTank(), modelParameters).inputs;
    const frozen = centralMember(
      referenceTank({
        feedGPerDay: exact(2),
        feedCMgPerG: exact(42),
        feedNMgPerG: exact(7.7),
        feedPMgPerG: exact(0.9),
      }),
      modelParameters,
    ).inputs;
    expect(frozen.feed * frozen.feedC).toBeCloseTo(dry.feed * dry.feedC, 9);
    expect(frozen.feed * frozen.feedN).toBeCloseTo(dry.feed * dry.feedN, 9);
    expect(frozen.feed).toBeCloseTo(dry.feed, 9);
  });

  test("shares of one whole leave something for the rest in every member", () => {
    for (const { parameters: p, sizing } of drawMembers(referenceTank(), modelParameters, {
      count: 500,
      seed: 2,
    })) {
      for (const sum of [
        p.domW + p.crumbW,
        p.domK + p.crumbK,
        p.domD + p.refD,
        p.fC + p.gC,
        p.fN + p.gN,
        p.fP + p.gP,
      ]) {
        expect(sum).toBeLessThan(0.96);
      }
      expect(sizing.detSand + sizing.detCrevice).toBeLessThan(0.96);
    }
  });

  test("a missing parameter is named", () => {
    expect(() => centralMember(referenceTank(), new Map())).toThrow(/no parameter "epsFilm"/);
  });
});

describe("supply", () => {
  const member = centralMember(referenceTank(), modelParameters);

  test("no light, no film; no feed, no leftovers; no sand, nothing on sand", () => {
    const dark = supplyOf({ ...member, inputs: { ...member.inputs, light: 0 } }, scene());
    expect(dark.supply.film_glass + dark.supply.film_rock + dark.supply.film_sand).toBe(0);
    const unfed = supplyOf({ ...member, inputs: { ...member.inputs, feed: 0 } }, scene());
    expect(unfed.supply.uneaten_feed).toBe(0);
    const bare = supplyOf({ ...member, inputs: { ...member.inputs, As: 0 } }, scene());
    expect(bare.supply.film_sand + bare.supply.detritus_sand).toBe(0);
  });

  test("a young tank makes less; what is seen overrules its age", () => {
    const young = { ...member, ageDays: 10 };
    const old = { ...member, ageDays: 100 };
    expect(supplyOf(young, scene()).supply.film_rock).toBeLessThan(
      0.1 * supplyOf(old, scene()).supply.film_rock,
    );
    expect(supplyOf(young, scene({ sightings: { diatoms: "covered" } })).grownIn).toBeGreaterThanOrEqual(0.7);
    expect(supplyOf(old, scene({ sightings: { film_glass: "none" } })).grownIn).toBeLessThanOrEqual(0.1);
    expect(supplyOf(old, scene({ sightings: { film_glass: "none" }, grazed: true })).grownIn).toBeGreaterThan(
      0.9,
    );
  });

  test("little nitrogen shrinks all algae alike", () => {
    const poor = supplyOf(
      {
        ...member,
        inputs: { ...member.inputs, feedN: 1 },
        nutrients: { ...member.nutrients, no3MgNPerL: 0.2, tanMgNPerL: 0.005 },
      },
      scene(),
    );
    expect(poor.nutrientCap).toBeLessThan(1);
    expect(poor.nutrientCap).toBeGreaterThan(0);
  });

  test("bubble algae come from sightings alone", () => {
    expect(supplyOf(member, scene()).supply.bubble_algae).toBe(0);
    const seen = (cover: "trace" | "patches") =>
      supplyOf(member, scene({ sightings: { bubble_algae: cover } })).supply.bubble_algae;
    expect(seen("patches")).toBeCloseTo(10 * seen("trace"), 9);
  });
});

describe("larder", () => {
  const facts = referenceTank();
  const members = membersOf(facts);
  const larder = larderOf(members, scene());

  test("the pessimistic supply lies below the middle, and a quarter of the members below it", () => {
    for (const shelf of SHELVES) {
      const { pessimistic, supply } = larder.shelves[shelf];
      expect(pessimistic).toBeLessThanOrEqual(supply.central);
      const below = larder.parts.filter((part) => part.supply[shelf] < pessimistic - 1e-12).length;
      expect(below).toBeLessThanOrEqual(25);
    }
  });

  test("the reference tank at six weeks lies near the figures of the model's design", () => {
    // Design runs of the sizing (113 L, 0.2 g pellet a day, 0.25 m2 sand): pessimistic and middle, mg C/d.
    const design = {
      film_rock: [11, 21],
      film_glass: [5, 11],
      detritus_sand: [8, 14],
      uneaten_feed: [2.7, 5.7],
    } as const;
    for (const [shelf, [low, middle]] of Object.entries(design)) {
      const { pessimistic, supply } = larder.shelves[shelf as keyof typeof design];
      expect(pessimistic / low, shelf).toBeGreaterThan(0.5);
      expect(pessimistic / low, shelf).toBeLessThan(2);
      expect(supply.central / middle, shelf).toBeGreaterThan(0.6);
      expect(supply.central / middle, shelf).toBeLessThan(1.7);
    }
  });

  test("every shelf's figure has a formula, inputs with an origin, parameters with a range", () => {
    const given = { facts, table: modelParameters, larder, middle: larder.parts[0]! };
    for (const shelf of SHELVES) {
      const figure = supplyFigure(shelf, given);
      expect(figure.working.inputs.length, shelf).toBeGreaterThan(0);
      expect(figure.working.parameters.length, shelf).toBeGreaterThan(0);
      for (const { spread } of figure.working.parameters) expect(spread.low).toBeLessThan(spread.high);
      expect(pessimisticFigure(shelf, given).working.inputs[0]!.figure).toBe(figure.id);
    }
    expect(totalFigure(given).working.inputs).toHaveLength(SHELVES.length);
  });
});

test("one trochus is about one mouth of one ration", () => {
  const [mouth] = mouthsOf([{ animal: animalById.get("trochus-snail")!, heads: 1 }], 1);
  expect(mouth!.needMgC / RATION_MG_C).toBeCloseTo(0.91, 2);
  expect(Object.values(mouth!.byShelfMgC).reduce((sum, part) => sum + part, 0)).toBeCloseTo(
    mouth!.needMgC,
    9,
  );
});

const exact = (value: number) => ({
  low: value,
  central: value,
  high: value,
  origin: "stated" as const,
  how: "typed",
});
