/** All figures of a tank, put together and named: larder, plan, weeks ahead, facts, and another course beside them. */
import { pessimisticFigure, supplyFigure, totalFigure } from "../../engine/larder/figures.ts";
import { mouthFigures } from "../../engine/larder/mouth-figures.ts";
import { planFigures } from "../../engine/stocking/figures.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import { warmthOf } from "../../engine/stocking/waves.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { SHELVES } from "../../engine/types/shelf.ts";
import type { LaidLarder } from "../larder.ts";
import { animalFact } from "./confidence.ts";
import { tankFigures } from "./tank-facts.ts";

/** The larder and the facts that it stands on. */
export function larderFigures({ facts, scene, mouths }: LaidLarder): Figure[] {
  return [
    ...SHELVES.map((shelf) => supplyFigure(shelf, scene)),
    ...SHELVES.map((shelf) => pessimisticFigure(shelf, scene)),
    totalFigure(scene),
    ...mouthFigures(mouths, warmthOf(facts), scene),
    ...tankFigures(facts),
  ];
}

/** The same with the plan. */
export function tankAndPlanFigures(laid: LaidLarder, plan: Plan): Figure[] {
  return once([...larderFigures(laid), ...planFigures(plan, laid.scene)]);
}

/** One figure an id: what one needs is told by larder and plan alike. */
const once = (figures: readonly Figure[]): Figure[] => [
  ...new Map(figures.map((figure) => [figure.id, figure])).values(),
];

/** Facts of animals that figures link to, and those that these are worked out from. */
export function linkedFacts(figures: readonly Figure[]): Figure[] {
  const found = new Map<string, Figure>();
  const follow = (from: readonly Figure[]): void => {
    for (const { figure: link } of from.flatMap(({ working }) => working.inputs)) {
      if (link === undefined || found.has(link)) continue;
      const fact = animalFact(link);
      if (fact === null || figures.some(({ id }) => id === link)) continue;
      found.set(link, fact);
      follow([fact]);
    }
  };
  follow(figures);
  return [...found.values()];
}
