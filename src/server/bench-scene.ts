/** What a tank's ranked list is made from, and the list in which one piece of advice would stand. */
import { adviceFor, type BenchScene, type RankedAdvice } from "../answers/bench/next.ts";
import { recordAnswersOf } from "../answers/record-answers.ts";
import type { TankAnswers } from "../answers/tank-answers.ts";
import { shownIn } from "../answers/units-shown.ts";
import { knownTank } from "./round/known-tank.ts";
import type { LoadedTank, PageContext } from "./route.ts";

/** Trends, heads and growths bring their advice in `lists`. `waves` null: before the plan is there. */
export function benchScene(tank: LoadedTank, waves: BenchScene["waves"], today: string): BenchScene {
  const { facts, record, document } = tank;
  const lists = recordAnswersOf({ facts, record, today }, shownIn(document.preferences)).advice;
  return { ...knownTank(tank, today), waves, lists };
}

/** Waits for the plan only where the advice is not among what is known without it. */
export async function rankedWith(
  id: string,
  tank: LoadedTank,
  { answers: source, today }: Pick<PageContext, "answers" | "today">,
): Promise<{ readonly answers: TankAnswers | null; readonly ranked: RankedAdvice }> {
  const ready = source.ready(tank.facts, undefined, tank.record);
  const ranked = adviceFor(benchScene(tank, ready?.waves ?? null, today));
  if (ready !== null || isAmong(ranked, id)) return { answers: ready, ranked };
  const answers = await source.of(tank.facts, undefined, undefined, tank.record);
  return { answers, ranked: adviceFor(benchScene(tank, answers.waves, today)) };
}

export const isAmong = ({ standing, declined }: RankedAdvice, id: string): boolean =>
  standing.some((advice) => advice.id === id) || declined.some(({ advice }) => advice.id === id);
