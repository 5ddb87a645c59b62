/**
 * One invented tank through the whole engine: members, plan, the second reading of the rules, and a run of the balance
 * with its ledger on. What the tests assert of a few tanks, tools/random-tanks.ts counts over thousands.
 */
import { larderScene } from "../../src/answers/plan/plan-tank.ts";
import { animals, modelParameters } from "../../src/catalogue/index.ts";
import { careEvents } from "../../src/engine/ahead/care.ts";
import { finish } from "../../src/engine/ahead/forecast.ts";
import { standingOf, worldOf } from "../../src/engine/ahead/start.ts";
import { headsAt } from "../../src/engine/balance/pools.ts";
import type { GuardCount } from "../../src/engine/balance/positivity.ts";
import { ENSEMBLE_STEPS, run } from "../../src/engine/balance/run.ts";
import { closingError } from "../../src/engine/balance/test-kit/closing-error.ts";
import type { FigureScene } from "../../src/engine/larder/figures.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { RandomStream } from "../../src/engine/numeric/random.ts";
import { arrivals } from "../../src/engine/stocking/check.ts";
import { planFigures } from "../../src/engine/stocking/figures.ts";
import type { Solve } from "../../src/engine/stocking/linear-model.ts";
import { type Plan, planWaves } from "../../src/engine/stocking/plan.ts";
import { PRICES } from "../../src/engine/stocking/prices.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { recheck } from "./recheck.ts";

/** N and P of a run must be explained by its ledger to this share of all that was there or moved. */
const CLOSES_TO = 1e-9;
const RUN_DAYS = 90;

export interface BalanceRun {
  readonly closingN: number;
  readonly closingP: number;
  readonly guard: GuardCount;
  readonly steps: number;
}

export interface Judged {
  readonly plan: Plan;
  readonly balance: BalanceRun;
  /** What the second reading, the figures and the balance found wrong; empty is a pass. */
  readonly faults: readonly string[];
  readonly planMs: number;
}

export function planTank(facts: TankFacts, solve: Solve, members: number, seed: number): Plan {
  return finish(
    planWaves({
      facts,
      animals,
      members: drawMembers(facts, modelParameters, { count: members, seed }),
      solve,
      prices: PRICES,
      seed,
      withLimitCosts: false,
    }),
  );
}

export function judge(facts: TankFacts, solve: Solve, members: number, seed: number): Judged {
  const before = performance.now();
  const plan = planTank(facts, solve, members, seed);
  const planMs = performance.now() - before;
  const { run: balance, faults } = balanceOf(plan, facts, seed);
  const drawn = drawMembers(facts, modelParameters, { count: members, seed });
  return {
    plan,
    balance,
    planMs,
    faults: [
      ...recheck(plan, facts, animals),
      ...figureFaults(plan, larderScene(facts, drawn, 0)),
      ...faults,
    ],
  };
}

function figureFaults(plan: Plan, scene: FigureScene): string[] {
  return planFigures(plan, scene).flatMap(({ id, spread: { low, central, high } }) =>
    low >= 0 && low <= central && central <= high && Number.isFinite(high) ? [] : [`figure ${id} is broken`],
  );
}

/** One member, from its standing on the plan's day, with the usual care and the plan's arrivals. */
function balanceOf(plan: Plan, facts: TankFacts, seed: number): { run: BalanceRun; faults: string[] } {
  const [drawn] = drawMembers(facts, modelParameters, { count: 1, seed });
  const { member, state: start } = standingOf(drawn!, plan.kinds, facts);
  const world = worldOf(member, plan.kinds, facts.phScale, "drawn");
  const events = [...careEvents(facts, RUN_DAYS), ...arrivals(plan.drafts, plan.kinds)]
    .filter(({ t }) => t < RUN_DAYS)
    .sort((a, b) => a.t - b.t);
  const faults: string[] = [];
  const { state, ledger, guard, stepCount } = run(world, start, events, {
    days: RUN_DAYS,
    steps: ENSEMBLE_STEPS,
    keepLedger: true,
    rowEvery: 1,
    random: new RandomStream(seed, 1),
    onRow: (day, y) => {
      const pool = y.findIndex((value) => !(Number.isFinite(value) && value >= 0));
      if (pool !== -1) faults.push(`day ${day}: pool ${pool} is ${y[pool]}`);
      plan.kinds.forEach(({ animal }, s) => {
        if (!Number.isInteger(y[headsAt(s)]))
          faults.push(`day ${day}: ${y[headsAt(s)]} heads of ${animal.id}`);
      });
    },
  });
  const closing = (element: "N" | "P") => closingError(world, start, state, ledger!, element);
  const closingN = closing("N");
  const closingP = closing("P");
  if (!(closingN <= CLOSES_TO)) faults.push(`nitrogen closes to ${closingN}`);
  if (!(closingP <= CLOSES_TO)) faults.push(`phosphorus closes to ${closingP}`);
  return { run: { closingN, closingP, guard, steps: stepCount }, faults };
}
