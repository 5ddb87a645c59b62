/**
 * Invented tanks through the whole engine: none crashes it, every plan passes a second reading of the rules, every
 * balance closes. The same over thousands: `node tools/random-tanks.ts --count 2000`, docs/reports/random-tanks.md.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { animals } from "../../src/catalogue/index.ts";
import type { Solve } from "../../src/engine/stocking/linear-model.ts";
import type { Plan } from "../../src/engine/stocking/plan.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { loadSolver } from "../../src/solver/highs.ts";
import { randomTank } from "../kit/tanks.ts";
import { judge, planTank } from "./judge.ts";
import { recheck } from "./recheck.ts";

/** Few, so that the whole stays under a minute: the rules do not depend on the number of members. */
const MEMBERS = 8;
const TANKS = 100;
const IN_ONE_TEST = 20;

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

test("the same seed invents the same tank", () => {
  expect(randomTank(7)).toEqual(randomTank(7));
  expect(randomTank(7)).not.toEqual(randomTank(8));
});

describe("plans of invented tanks pass the second reading, their balances close", () => {
  test.each(
    Array.from({ length: TANKS / IN_ONE_TEST }, (_, i) => [i * IN_ONE_TEST, (i + 1) * IN_ONE_TEST - 1]),
  )("seeds %d to %d", (from, to) => {
    for (let seed = from; seed <= to; seed += 1) {
      const { faults } = judge(randomTank(seed), solve, MEMBERS, seed);
      expect(faults, `tank of seed ${seed}`).toEqual([]);
    }
  });
});

/** The judge itself on trial: a plan spoilt in one place must be found out. */
describe("the second reading finds what is wrong", () => {
  const facts = randomTank(12);
  let plan: Plan;
  beforeAll(() => {
    plan = planTank(facts, solve, MEMBERS, 12);
  });
  const faultsOf = (spoilt: Plan, changed: Partial<TankFacts> = {}) =>
    recheck(spoilt, { ...facts, ...changed }, animals).join("\n");
  const bought = ({ waves }: Plan) => waves[0]!.animals[0]!.animal;

  test("the plan as it is passes", () => expect(faultsOf(plan)).toBe(""));
  test("a hundred times the animals starve and crowd", () => {
    const waves = plan.waves.map((wave) => ({
      ...wave,
      animals: wave.animals.map((one) => ({ ...one, count: one.count * 100 })),
    }));
    expect(faultsOf({ ...plan, waves })).toMatch(/lacks .* mg C[\s\S]*/);
    expect(faultsOf({ ...plan, waves })).toMatch(/want more than/);
  });
  test("half an animal", () => {
    const waves = plan.waves.map((wave) => ({
      ...wave,
      animals: wave.animals.map((one) => ({ ...one, count: one.count + 0.5 })),
    }));
    expect(faultsOf({ ...plan, waves })).toMatch(/brings .*\.5 /);
  });
  test.each<[string, Partial<TankFacts>, RegExp]>([
    ["a puffer planned", { planned: [{ id: "pufferfish", count: 1, on: null }] }, /beside pufferfish/],
    ["medicine", { medicines: ["copper"] }, /medicine/],
    ["trouble", { trouble: "a fish is gasping" }, /trouble/],
    ["an empty shop", { stockList: [] }, /not in stock/],
    ["cold water", { temperatureC: { ...facts.temperatureC, central: 9 } }, /lives not at 9 C/],
    ["fresh water", { salinityPsu: { ...facts.salinityPsu, central: 4 } }, /lives not at 4 psu/],
    ["a cup of water", { displayL: { ...facts.displayL, central: 0.3 } }, /wants .* L/],
    ["a tank of this morning", { ageDays: { ...facts.ageDays, central: -1000 } }, /wants an age of/],
  ])("%s", (_, changed, fault) => expect(faultsOf(plan, changed)).toMatch(fault));
  test("an animal bought and refused at once", () => {
    const refused = [...plan.refused, { animal: bought(plan), status: "never" as const, reasons: [] }];
    expect(faultsOf({ ...plan, refused })).toMatch(/left out of it[\s\S]*for no reason/);
  });
  test("an animal forgotten", () => {
    expect(faultsOf({ ...plan, refused: plan.refused.slice(1) })).toMatch(/has 0 places/);
  });
  test("waves the wrong way round", () => {
    expect(faultsOf({ ...plan, waves: [...plan.waves].reverse() })).toMatch(
      /before the one before has ended/,
    );
  });
});
