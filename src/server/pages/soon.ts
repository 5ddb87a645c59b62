/** Answers of twenty runs where they are known or come at once; a page does not wait longer for them. */
import { DEFAULT_ENSEMBLE } from "../../answers/plan/plan-tank.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { PLAN_PART_RUNS } from "../../web/pages/plan-part.tsx";
import type { AnswerSource } from "../route.ts";

export const TWENTY_RUNS = { ...DEFAULT_ENSEMBLE, members: PLAN_PART_RUNS };
/** A page that comes later than this feels late. */
const WAIT_MS = 300;

export async function soon(answers: AnswerSource, facts: TankFacts): Promise<TankAnswers | null> {
  const known = answers.ready(facts, TWENTY_RUNS);
  if (known !== null) return known;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), WAIT_MS);
  });
  // What went wrong is told to who asks for the part itself.
  const worked = answers.of(facts, TWENTY_RUNS).catch(() => null);
  const first = await Promise.race([worked, late]);
  clearTimeout(timer);
  return first;
}
