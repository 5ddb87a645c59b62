/** Dated care of a tank file: it has no daybook, so no chore was logged; its dated readings stand for tests. */
import { type Almanac, almanacOf } from "../../answers/almanac/almanac.ts";
import type { AlmanacScene } from "../../answers/almanac/scene.ts";
import { adviceFor } from "../../answers/bench/next.ts";
import { recordAnswersOf } from "../../answers/record-answers.ts";
import { recordFromReadings } from "../../answers/start-up/with-start-up.ts";
import { shownIn } from "../../answers/units-shown.ts";
import type { TankFacts } from "../../engine/types/tank.ts";

export function almanacOfFile(
  facts: TankFacts,
  answers: Pick<AlmanacScene, "larder" | "waves" | "flows">,
  today: string,
): Almanac {
  const record = recordFromReadings(facts);
  const shown = shownIn(undefined);
  const { trends, heads, advice: lists } = recordAnswersOf({ facts, record, today }, shown);
  const known = { facts, record, latest: [], today, answeredOn: null, waves: answers.waves, lists };
  const { standing } = adviceFor(known);
  return almanacOf({ facts, record, today, trends, heads, shown, ...answers, advice: standing });
}
