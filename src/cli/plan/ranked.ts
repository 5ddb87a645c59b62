/** The ranked list of a kept tank, as its bench shows it: the plan is that of the ensemble which learned from the daybook. */
import { adviceFor, type RankedAdvice } from "../../answers/bench/next.ts";
import { learnedOf } from "../../answers/learned/learned.ts";
import type { EnsembleChoice } from "../../answers/plan/plan-tank.ts";
import { wavesOutputOf } from "../../answers/plan/waves-output.ts";
import type { LoadedTank } from "../../server/route.ts";
import type { Io } from "../io.ts";
import { planOf, progressOf } from "./plan-of.ts";

/** @param choice null: at once, from answers and daybook alone */
export async function rankedFor(
  loaded: LoadedTank,
  choice: EnsembleChoice | null,
  io: Io,
): Promise<RankedAdvice> {
  const { benchScene } = await import("../../server/bench-scene.ts");
  if (choice === null) return adviceFor(benchScene(loaded, null, io.today));
  const { facts } = learnedOf(loaded.facts, loaded.record, progressOf(io));
  const plan = await planOf(facts, choice, io);
  return adviceFor(benchScene(loaded, wavesOutputOf(plan, facts, choice, null), io.today));
}
