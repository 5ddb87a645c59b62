/** A tank's answers with a holiday worked out from the same facts, as the daybook has taught them. */
import type { TankFacts } from "../../engine/types/tank.ts";
import { withConfidence } from "../figures/confidence.ts";
import type { EnsembleChoice } from "../plan/plan-tank.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { workingOutputOf } from "../working.ts";
import { holidayOf } from "./holiday.ts";
import type { HolidaySpan } from "./packing.ts";

export function withHoliday(
  answers: TankAnswers,
  facts: TankFacts,
  choice: EnsembleChoice,
  span: HolidaySpan,
): TankAnswers {
  const taught = answers.taught ?? null;
  const { output, figures } = holidayOf(
    taught === null ? facts : { ...facts, learned: taught },
    span,
    choice,
  );
  const own = withConfidence(figures).map((figure) => [figure.id, workingOutputOf(figure, []).figure!]);
  return { ...answers, holiday: output, workings: { ...answers.workings, ...Object.fromEntries(own) } };
}
