/** Heads in some weeks' time, from those of today: nobody added, trouble may set in or end as its world has it. */
import { expm1 } from "../numeric/elementary.ts";
import type { Followed, LifeScene } from "./follow.ts";
import { type Grid, living, mixed, passed, settled } from "./grid.ts";

/** Weeks of a step. */
const STEP = 2;

/** Chance of each number of living heads after each of these weeks, all even, in their order. */
export function headsAhead(
  { hypothesis, grids }: Followed,
  scene: LifeScene,
  weeks: readonly number[],
): Float64Array[] {
  const { rates, life } = scene;
  const { lossPerDay, troublePerDay } = hypothesis;
  let now = grids.map(settled);
  const last = Math.max(...weeks);
  const found = new Map<number, Float64Array>();
  const setsIn = -expm1(-7 * STEP * rates.troubleSetsIn.central);
  const ends = -expm1(-7 * STEP * rates.troubleEnds.central);
  for (let week = STEP; week <= last; week += STEP) {
    const [usual, trouble] = now;
    if (usual !== undefined && trouble !== undefined) {
      now = [mixed(usual, 1 - setsIn, trouble, ends), mixed(trouble, 1 - ends, usual, setsIn)];
    }
    const aged = lossPerDay * scene.agedOn(life.days + 7 * (week - STEP / 2));
    now = now.map((grid, regime) => {
      const dies = -expm1(-7 * STEP * (aged + (regime === 0 ? 0 : (troublePerDay ?? 0))));
      return passed(grid, { lives: 1 - dies, hidden: dies, staysHidden: 1 });
    });
    if (weeks.includes(week)) found.set(week, sumOf(now));
  }
  return weeks.map((week) => found.get(week)!);
}

function sumOf(grids: readonly Grid[]): Float64Array {
  const [first, ...rest] = grids.map(living);
  return rest.reduce((sum, other) => sum.map((part, i) => part + other[i]!), first!);
}
