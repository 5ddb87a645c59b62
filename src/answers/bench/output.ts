/** The ranked list of one tank as `next --json` prints it. */
import type { NextOutput } from "../../contract/output/next.ts";
import type { Advice } from "../advice.ts";
import { plain } from "../sentence.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import type { RankedAdvice } from "./next.ts";

const adviceOut = (advice: Advice): NextOutput["advice"][number] => ({
  ...{ id: advice.id, about: advice.about, urgency: advice.urgency, weight: advice.weight },
  ...{ do: plain(advice.do), why: advice.why.map(plain), by_when: plain(advice.byWhen), by: advice.by },
  ...{ would_change: plain(advice.wouldChange), wait: advice.wait.words },
});

export const nextOutputOf = (
  tank: NextOutput["tank"],
  { standing, declined }: RankedAdvice,
  withPlan: boolean,
): NextOutput => ({
  schema: "grazewell.next/1",
  engine: ENGINE_VERSION,
  tank,
  with_plan: withPlan,
  advice: standing.map(adviceOut),
  declined: declined.map(({ advice, reason, on, entry }) => ({
    ...adviceOut(advice),
    ...{ reason, declined_on: on, entry },
  })),
  statement: STATEMENT,
});
