/** A tank planned for a command: the solver is loaded only here, and long work says how far it is. */
import { type EnsembleChoice, planTank } from "../../answers/plan/plan-tank.ts";
import type { Progress } from "../../answers/progress.ts";
import type { Solve } from "../../engine/stocking/linear-model.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";

/** Words go out after this long, and then as the work moves on. */
const SHOW_PROGRESS_AFTER_MS = 500;

export function progressOf(io: Io): Progress {
  const began = performance.now();
  return (doing, share) => {
    if (performance.now() - began > SHOW_PROGRESS_AFTER_MS)
      io.progress(`${doing} ... ${Math.round(100 * share)} %`);
  };
}

/** The solver, loaded only where a plan is asked for. */
export async function loadedSolver(): Promise<Solve> {
  const { loadSolver } = await import("../../solver/highs.ts");
  return loadSolver();
}

export async function planOf(
  facts: TankFacts,
  choice: EnsembleChoice,
  io: Io,
  withLimitCosts = false,
): Promise<Plan> {
  const solve = await loadedSolver();
  const plan = planTank(facts, choice, { solve, progress: progressOf(io) }, withLimitCosts);
  io.progress(null);
  return plan;
}
