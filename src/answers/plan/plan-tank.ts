/** The planning that every answer shares: members of the ensemble, the plan, the larder of a day, their figures. */
import { animals, modelParameters } from "../../catalogue/index.ts";
import type { FigureScene } from "../../engine/larder/figures.ts";
import { type Larder, larderOf } from "../../engine/larder/larder.ts";
import { centralMember, drawMembers, type Member } from "../../engine/larder/members.ts";
import { supplyOf } from "../../engine/larder/supply.ts";
import type { Solve } from "../../engine/stocking/linear-model.ts";
import { type Plan, planWaves } from "../../engine/stocking/plan.ts";
import { PRICES } from "../../engine/stocking/prices.ts";
import { weigher } from "../../engine/stocking/unknowns.ts";
import { companyOf, isCrew } from "../../engine/stocking/waves.ts";
import { SHELVES, type ShelfId } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TABLE } from "../figures/table.ts";
import type { Progress } from "../progress.ts";

export interface EnsembleChoice {
  readonly members: number;
  readonly seed: number;
}
export const DEFAULT_ENSEMBLE: EnsembleChoice = { members: 200, seed: 1 };

/** Drawn once for each tank as read: larder, plan and weeks ahead ask for the same. */
const DRAWN = new WeakMap<TankFacts, Map<string, Member[]>>();

export function membersOf(facts: TankFacts, { members, seed }: EnsembleChoice): Member[] {
  const known = DRAWN.get(facts) ?? new Map<string, Member[]>();
  DRAWN.set(facts, known);
  const key = `${members} ${seed}`;
  const drawn = known.get(key) ?? drawMembers(facts, modelParameters, { count: members, seed });
  known.set(key, drawn);
  return drawn;
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
  outlookDays?: number,
): Plan {
  const work = planWaves({
    facts,
    animals,
    members: membersOf(facts, choice),
    solve,
    prices: PRICES,
    seed: choice.seed,
    withLimitCosts,
    outlookDays,
  });
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    const { doing, done, of } = step.value;
    progress(doing, done / of);
  }
}

/** The crew that lives there today, row by row. */
export const crewThere = (facts: TankFacts) =>
  companyOf(facts, animals)
    .filter(({ animal, planned }) => !planned && isCrew(animal))
    .map(({ animal, count }) => ({ animal, heads: count }));

/** The larder of a day, with what its workings need. */
export function larderScene(facts: TankFacts, members: readonly Member[], daysAhead: number): FigureScene {
  const residents = crewThere(facts);
  const scene = { daysAhead, sightings: facts.sightings, residents, grazed: residents.length > 0 };
  const larder = larderOf(members, scene);
  return {
    facts,
    table: TABLE,
    larder,
    middle: supplyOf(centralMember(facts, modelParameters), scene),
    heaviest: heaviestOf(larder, members, facts),
  };
}

/** What goes with most of the spread of each shelf and of the whole. */
function heaviestOf(
  { parts }: Larder,
  members: readonly Member[],
  facts: TankFacts,
): NonNullable<FigureScene["heaviest"]> {
  const weigh = weigher(members, facts);
  const ofShelf = (shelf: ShelfId) => weigh(parts.map(({ supply }) => supply[shelf]));
  const total = weigh(parts.map(({ supply }) => SHELVES.reduce((sum, shelf) => sum + supply[shelf], 0)));
  return {
    ...(Object.fromEntries(SHELVES.map((shelf) => [shelf, ofShelf(shelf)])) as Record<ShelfId, string[]>),
    total,
  };
}
