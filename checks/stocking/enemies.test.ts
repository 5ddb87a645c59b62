/** Kinds that eat each other stay apart: in one wave or in two, among wishes, and beside what the keeper plans. */
import { beforeAll, expect, test } from "vitest";
import type { Solve } from "../../src/engine/stocking/linear-model.ts";
import type { Plan } from "../../src/engine/stocking/plan.ts";
import { loadSolver } from "../../src/solver/highs.ts";
import { firstTank } from "../kit/first-tank.ts";
import { planTank } from "./judge.ts";

const MEMBERS = 16;
let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

const planned = (ageDays: number, changes: Readonly<Record<string, unknown>>): Plan =>
  planTank(firstTank(151, ageDays, { keeper_experience: "experienced", ...changes }), solve, MEMBERS, 1);
const ids = ({ waves }: Plan): string[] =>
  waves.flatMap(({ animals }) => animals.map(({ animal }) => animal.id));
const wishes = (plan: Plan) => plan.wishes.map(({ animal, status }) => [animal.id, status]);

test("of two wishes that would eat each other the first stands, and there is a plan", () => {
  const plan = planned(90, { wishes: ["coral-banded-shrimp", "peppermint-shrimp"] });
  expect(wishes(plan)).toEqual([
    ["coral-banded-shrimp", "in_plan"],
    ["peppermint-shrimp", "refused"],
  ]);
  expect(plan.spare.find(({ animal }) => animal.id === "peppermint-shrimp")?.why).toMatch(
    /would not both live/,
  );
});

test("a wish that is still too young is kept free of its prey in the waves before", () => {
  // The large blue hermit comes at 60 days; blue-legs and ceriths, which it eats, would fit at 42.
  const plan = planned(42, { wishes: ["electric-blue-hermit"] });
  expect(wishes(plan)).toEqual([["electric-blue-hermit", "in_plan"]]);
  expect(plan.waves[0]!.day).toBe(0);
  for (const prey of ["blue-leg-hermit", "dwarf-cerith", "florida-cerith", "astraea-snail"])
    expect(ids(plan)).not.toContain(prey);
});

test("heads that the keeper plans count for how many get on", () => {
  const coming = [{ animal: "coral-banded-shrimp", count: 2, on: "2027-06-01" }];
  const plan = planned(90, { animals_planned: coming, wishes: ["coral-banded-shrimp"] });
  expect(ids(plan)).not.toContain("coral-banded-shrimp");
});
