/** The planning that every answer shares: members of the ensemble, the plan, the larder of a day, their figures. */
import { animals, modelParameters } from "../../catalogue/index.ts";
import {
  type FigureScene,
  pessimisticFigure,
  supplyFigure,
  totalFigure,
} from "../../engine/larder/figures.ts";
import { larderOf } from "../../engine/larder/larder.ts";
import { centralMember, drawMembers, type Member } from "../../engine/larder/members.ts";
import { supplyOf } from "../../engine/larder/supply.ts";
import { planFigures } from "../../engine/stocking/figures.ts";
import type { Solve } from "../../engine/stocking/linear-model.ts";
import { type Plan, planWaves } from "../../engine/stocking/plan.ts";
import { PRICES } from "../../engine/stocking/prices.ts";
import { companyOf, isCrew } from "../../engine/stocking/waves.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { SHELVES } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Progress } from "../progress.ts";

export interface EnsembleChoice {
  readonly members: number;
  readonly seed: number;
}
export const DEFAULT_ENSEMBLE: EnsembleChoice = { members: 200, seed: 1 };

export function membersOf(facts: TankFacts, { members, seed }: EnsembleChoice): Member[] {
  return drawMembers(facts, modelParameters, { count: members, seed });
}

/** What planning needs besides the tank. */
export interface Means {
  readonly solve: Solve;
  readonly progress: Progress;
}

export function planTank(
  facts: TankFacts,
  choice: EnsembleChoice,
  { solve, progress }: Means,
  withLimitCosts = false,
): Plan {
  const work = planWaves({
    facts,
    animals,
    members: membersOf(facts, choice),
    solve,
    prices: PRICES,
    seed: choice.seed,
    withLimitCosts,
  });
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    const { doing, done, of } = step.value;
    progress(doing, done / of);
  }
}

/** The larder of a day, with what its workings need. */
export function larderScene(facts: TankFacts, members: readonly Member[], daysAhead: number): FigureScene {
  const residents = companyOf(facts, animals)
    .filter(({ animal, planned }) => !planned && isCrew(animal))
    .map(({ animal, count }) => ({ animal, heads: count }));
  const scene = { daysAhead, sightings: facts.sightings, residents, grazed: residents.length > 0 };
  return {
    facts,
    table: modelParameters,
    larder: larderOf(members, scene),
    middle: supplyOf(centralMember(facts, modelParameters), scene),
  };
}

export function larderFigures(scene: FigureScene): Figure[] {
  return [
    ...SHELVES.map((shelf) => supplyFigure(shelf, scene)),
    ...SHELVES.map((shelf) => pessimisticFigure(shelf, scene)),
    totalFigure(scene),
  ];
}

export function allFigures(plan: Plan, facts: TankFacts, scene: FigureScene): Figure[] {
  return [...larderFigures(scene), ...planFigures(plan, facts)];
}
