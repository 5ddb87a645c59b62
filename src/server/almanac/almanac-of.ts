/** Dated care of a loaded tank, as page, file and feed have it: one scene for all of them. */
import { type Almanac, almanacOf } from "../../answers/almanac/almanac.ts";
import { adviceFor } from "../../answers/bench/next.ts";
import { recordAnswersOf } from "../../answers/record-answers.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { shownIn } from "../../answers/units-shown.ts";
import { benchScene } from "../bench-scene.ts";
import type { LoadedTank } from "../route.ts";

export type AlmanacAnswers = Pick<TankAnswers, "larder" | "waves"> & Pick<Partial<TankAnswers>, "flows">;

export function almanacFor(tank: LoadedTank, answers: AlmanacAnswers, today: string): Almanac {
  const { facts, record, document } = tank;
  const shown = shownIn(document.preferences);
  const { trends, heads } = recordAnswersOf({ facts, record, today }, shown);
  const { standing } = adviceFor(benchScene(tank, answers.waves, today));
  return almanacOf({
    ...{ facts, record, today, trends, heads, larder: answers.larder, waves: answers.waves },
    ...{ flows: answers.flows ?? null, advice: standing, shown },
  });
}
