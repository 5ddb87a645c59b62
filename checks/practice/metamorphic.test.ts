/** What must follow when a tank changes, whatever its figures: more of this, not less of that. */
import { beforeAll, describe, expect, test } from "vitest";
import { animals, modelParameters } from "../../src/catalogue/index.ts";
import { drawMembers, type Member } from "../../src/engine/larder/members.ts";
import { type SupplyScene, supplyOf } from "../../src/engine/larder/supply.ts";
import type { Solve } from "../../src/engine/stocking/linear-model.ts";
import type { Plan } from "../../src/engine/stocking/plan.ts";
import { PRICES } from "../../src/engine/stocking/prices.ts";
import { type Candidate, Programme } from "../../src/engine/stocking/programme.ts";
import { SHELVES, type ShelfId } from "../../src/engine/types/shelf.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { loadSolver } from "../../src/solver/highs.ts";
import { Chance } from "../kit/chance.ts";
import { firstTank } from "../kit/first-tank.ts";
import { randomTank } from "../kit/tanks.ts";
import { planTank } from "../stocking/judge.ts";

const MEMBERS = 24;
const TANKS = 60;
const FILM: readonly ShelfId[] = ["film_glass", "film_rock", "film_sand", "hair_algae"];

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

const seeds = Array.from({ length: TANKS }, (_, seed) => seed);
const membersOf = (facts: TankFacts, seed: number) => drawMembers(facts, modelParameters, { count: 8, seed });
const scene: SupplyScene = { daysAhead: 60, sightings: {}, residents: [], grazed: true };
const withInputs = (member: Member, inputs: Partial<Member["inputs"]>): Member => ({
  ...member,
  inputs: { ...member.inputs, ...inputs },
});
const ROUNDING = 1e-9;

describe("more of what feeds a shelf never lowers it", () => {
  test("half as much light again, at the same nutrients", () => {
    for (const seed of seeds) {
      for (const member of membersOf(randomTank(seed), seed)) {
        const { parG, parR, parS } = member.inputs;
        const dim = supplyOf(member, scene);
        const bright = supplyOf(
          withInputs(member, { parG: 1.5 * parG, parR: 1.5 * parR, parS: 1.5 * parS }),
          scene,
        );
        const film = (of: typeof dim) => FILM.reduce((sum, shelf) => sum + of.supply[shelf], 0);
        expect(film(bright)).toBeGreaterThanOrEqual(film(dim) * (1 - ROUNDING));
        // Where nitrogen caps them all, better lit surfaces take from the others; else each gains or stays.
        if (bright.nutrientCap < 1) continue;
        for (const shelf of FILM)
          expect(bright.supply[shelf]).toBeGreaterThanOrEqual(dim.supply[shelf] * (1 - ROUNDING));
      }
    }
  });
  test("half as much feed again, at the same nutrients", () => {
    for (const seed of seeds) {
      for (const member of membersOf(randomTank(seed), seed)) {
        const less = supplyOf(member, scene).supply;
        const more = supplyOf(withInputs(member, { feed: 1.5 * member.inputs.feed }), scene).supply;
        for (const shelf of SHELVES) expect(more[shelf]).toBeGreaterThanOrEqual(less[shelf] * (1 - ROUNDING));
      }
    }
  });
});

test("a mouth more never leaves more uneaten", () => {
  const eaters = animals.filter(({ group, role }) => group !== "fish" && group !== "pod" && role === "crew");
  for (const seed of seeds) {
    const chance = new Chance(seed, 3);
    const kinds = [...new Set([chance.pick(eaters), chance.pick(eaters), chance.pick(eaters)])];
    const amounts = Object.fromEntries(SHELVES.map((shelf) => [shelf, chance.between(0, 20)])) as Record<
      ShelfId,
      number
    >;
    const uneaten = (heads: readonly number[]): number => {
      const candidates = kinds.map(
        (animal, i): Candidate => ({
          ...{ animal, already: heads[i]!, cap: heads[i]!, groupMin: 1, wished: 0, byHand: "if_need_be" },
        }),
      );
      const programme = new Programme({
        ...{ candidates, supply: { pessimistic: amounts, central: amounts }, prices: PRICES },
        ...{ warmth: 1, handFedMost: 1e6 },
      });
      const answer = programme.read(solve(programme.model))!;
      return SHELVES.reduce((sum, shelf) => sum + PRICES.uneaten[shelf] * answer.uneaten[shelf], 0);
    };
    const heads = kinds.map(() => chance.whole(0, 6));
    const before = uneaten(heads);
    kinds.forEach((_, grown) => {
      expect(uneaten(heads.map((n, i) => (i === grown ? n + 1 : n)))).toBeLessThanOrEqual(before + 1e-6);
    });
  }
});

const headsOf = ({ waves }: Plan): number =>
  waves.flatMap((wave) => wave.animals).reduce((sum, { count }) => sum + count, 0);

const EXTENSIVE = [
  ...["waterL", "displayL", "glassM2", "litRockM2", "sandM2", "rockKg"],
  ...["feedGPerDay", "handFedMgCPerDay", "fishWetG"],
] as readonly (keyof TankFacts)[];

/** The same tank twice over, as if a second stood beside it and shared its water. */
function twice(facts: TankFacts): TankFacts {
  const doubled = Object.fromEntries(
    EXTENSIVE.map((field) => {
      const estimate = facts[field] as TankFacts["waterL"];
      const { low, central, high } = estimate;
      return [field, { ...estimate, low: 2 * low, central: 2 * central, high: 2 * high }];
    }),
  );
  return { ...facts, ...doubled, present: facts.present.map((row) => ({ ...row, count: 2 * row.count })) };
}

test.each([76, 113, 151])("twice a tank of %d L bears at least as many animals", (litres) => {
  const facts = firstTank(litres, 60);
  const one = headsOf(planTank(facts, solve, MEMBERS, 1));
  expect(headsOf(planTank(twice(facts), solve, MEMBERS, 1))).toBeGreaterThanOrEqual(one);
});

describe("the unit of entry does not matter", () => {
  const metric = firstTank(30 * 3.785411784, 60, {
    water_l: 113.56235352,
    rock: { start: "dry", rock_kg: 9.97903214, caves: true, secured: false },
    temperature_c: 25.5,
    salinity_psu: 35,
    floor: { kind: "sand", depth_mm: 38.1, grain: "fine" },
  });
  const customary = firstTank(30 * 3.785411784, 60, {
    water_l: "30 US gal",
    rock: { start: "dry", rock_kg: "22 lb", caves: true, secured: false },
    temperature_c: "77.9 F",
    salinity_psu: "35 ppt",
    floor: { kind: "sand", depth_mm: "1.5 in", grain: "fine" },
  });
  test("gallons, pounds, Fahrenheit and inches are the same facts", () => {
    for (const field of [
      "waterL",
      "displayL",
      "rockKg",
      "temperatureC",
      "salinityPsu",
      "sandDepthMm",
    ] as const)
      expect(customary[field].central).toBeCloseTo(metric[field].central, 9);
  });
  test("and the same plan", () => {
    const kindsOf = (facts: TankFacts) =>
      planTank(facts, solve, MEMBERS, 1).waves.map(({ day, animals: bought }) => [
        day,
        bought.map(({ animal, count }) => `${count} ${animal.id}`),
      ]);
    expect(kindsOf(customary)).toEqual(kindsOf(metric));
  });
});
