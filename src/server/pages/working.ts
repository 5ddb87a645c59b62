/**
 * Working of one figure of a tank: as a page, or as a part that opens over another. Facts and what the daybook says are
 * known at once; figures of the larder, the plan and the weeks ahead wait for the engine.
 */
import { orderingOf } from "../../answers/errands/ordering.ts";
import { feedingWorking } from "../../answers/feeding/working.ts";
import { tankFigures } from "../../answers/figures/tank-facts.ts";
import { recordAnswersOf } from "../../answers/record-answers.ts";
import type { RecordScene } from "../../answers/record-scene.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { shownIn } from "../../answers/units-shown.ts";
import { type WorkingFigure, workingOf, workingOutputOf } from "../../answers/working.ts";
import { troubleWorking } from "../../answers/wrong/working.ts";
import type { Figure } from "../../engine/types/figure.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { to } from "../../web/page.ts";
import { workingPage } from "../../web/pages/working.tsx";
import { almanacFor } from "../almanac/almanac-of.ts";
import type { LoadedTank, PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";
import { ofTank } from "./of-tank.ts";

const PATH = "/tanks/:tank/working/:figure";

const ofEngine = answeredPage({
  path: PATH,
  here: null,
  what: "Working",
  address: (tank, { params }) => to.working(tank, params["figure"] ?? ""),
  draw: ({ loaded, answers, request, today }) => {
    const id = request.params["figure"] ?? "";
    const figure =
      workingOf(answers, id) ??
      orderWorking(answers, loaded, id) ??
      almanacWorking(answers, loaded, today, id);
    if (figure === null) return { kind: "not_found", what: "figure of that name in this tank" };
    return workingPage({ head: loaded.head, figure, asOf: answers.waves.tank.as_of });
  },
});

/** Of an order: it goes by the plan and the daybook both. */
function orderWorking(answers: TankAnswers, { record, facts }: LoadedTank, id: string): WorkingFigure | null {
  return workingAmong(orderingOf(answers, record, facts.shop)?.figures ?? [], id);
}

/** Of dated care, whichever part it comes from. */
function almanacWorking(
  answers: TankAnswers,
  tank: LoadedTank,
  today: string,
  id: string,
): WorkingFigure | null {
  return id.startsWith("care.") ? workingAmong(almanacFor(tank, answers, today).figures, id) : null;
}

/** Of a fact that the keeper told, a reading or a head count: they stand behind the numbers of a bad day. */
const factWorking = (facts: TankFacts, id: string): WorkingFigure | null =>
  id.startsWith("tank.") ? workingAmong(tankFigures(facts), id) : null;

function workingAmong(figures: readonly Figure[], id: string): WorkingFigure | null {
  const figure = figures.find((one) => one.id === id);
  return figure === undefined ? null : workingOutputOf(figure, []).figure;
}

/** Numbers of care that are made when asked for. */
const ofCare = (scene: RecordScene, id: string): WorkingFigure | null =>
  troubleWorking(scene, id) ?? feedingWorking(scene, id);

export const WORKING_ROUTES: readonly PageRoute[] = [
  {
    method: "GET",
    path: PATH,
    answer: ofTank(async (tank, request, context) => {
      const { facts, record, head, document } = tank;
      const id = request.params["figure"] ?? "";
      const scene = { facts, record, today: context.today };
      const { workings } = recordAnswersOf(scene, shownIn(document.preferences));
      const figure = Object.hasOwn(workings, id)
        ? workings[id]
        : (factWorking(facts, id) ?? ofCare(scene, id));
      if (figure === undefined || figure === null) return await ofEngine.answer(request, context);
      return { kind: "page", page: workingPage({ head, figure, asOf: facts.asOf }) };
    }),
  },
];
