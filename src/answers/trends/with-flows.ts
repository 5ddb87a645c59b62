/** A tank's answers with the flows behind its nitrate and phosphate, from what the daybook has taught where it has. */
import type { TankFacts } from "../../engine/types/tank.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { workingOutputOf } from "../working.ts";
import { flowsFor } from "./flows.ts";

export function withFlows(answers: TankAnswers, facts: TankFacts): TankAnswers {
  const taught = answers.taught ?? null;
  const { output, figures } = flowsFor(taught === null ? facts : { ...facts, learned: taught });
  const own = Object.fromEntries(figures.map((figure) => [figure.id, workingOutputOf(figure, []).figure!]));
  return { ...answers, flows: output, workings: { ...answers.workings, ...own } };
}
