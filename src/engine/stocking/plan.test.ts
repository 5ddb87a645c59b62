import { expect, test } from "vitest";
import { animals, modelParameters } from "../../catalogue/index.ts";
import { loadSolver } from "../../solver/highs.ts";
import { drawMembers } from "../larder/members.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import type { Solve } from "./linear-model.ts";
import { type Plan, planWaves } from "./plan.ts";
import { PRICES } from "./prices.ts";

const real = await loadSolver();

function planned(solve: Solve): Plan {
  const facts = referenceTank({});
  const members = drawMembers(facts, modelParameters, { count: 20, seed: 1 });
  const work = planWaves({ facts, animals, members, solve, prices: PRICES, seed: 1, withLimitCosts: false });
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

test("a plan is not called proven when one solve of many was not settled", () => {
  let solves = 0;
  const plan = planned((model) => {
    solves += 1;
    return real(model);
  });
  expect(plan.proven).toBe(true);
  expect(solves).toBeGreaterThan(1);
  let left = solves;
  const tired = planned((model) => {
    left -= 1;
    return left === 0 ? { status: "failed", why: "no plan found in time" } : real(model);
  });
  expect(tired.proven).toBe(false);
});
