/**
 * How much nitrate a tank makes a day beyond what it uses up itself: from its tests and its usual changes where there are
 * enough, else from its food. docs/model/water-changes.md, "Rise from tests". mg/L as NO3.
 */
import { pairSlopes, slopeAt } from "../../engine/trends/pair-slopes.ts";
import { round3 } from "../../engine/types/link.ts";
import { ATOMIC_MASS, MOLAR_MASS } from "../../engine/units/masses.ts";
import type { FromTank, SumTank } from "./sum.ts";

const NO3_PER_N = MOLAR_MASS.nitrate / ATOMIC_MASS.N;
const DAY_MS = 86_400_000;
/** Tests of so many days, at least so many of them over so long: fewer tell little. Judgement. */
const WITHIN_DAYS = 60;
const LEAST_TESTS = 5;
const LEAST_DAYS = 21;
/** Ends of a 90 % interval. */
const Z90 = 1.645;

/**
 * Share of the food's nitrogen that comes to stand in the water as nitrate, where sand, algae and animals take the rest:
 * judgement. The model's own course for a tank stands on its page of weeks ahead.
 */
const AS_NITRATE = { low: 0.1, high: 0.7 };

export const nitrateRise = (tank: SumTank): FromTank | null => riseFromTests(tank) ?? riseFromFood(tank);

/** What the level rose by, and what the changes took meanwhile. */
function riseFromTests({ facts, record, today }: SumTank): FromTank | null {
  const seen = record.observations.flatMap((one) =>
    one.kind === "reading" && one.quantity === "no3_mg_n_per_l" && one.censored === null
      ? [{ ...one.value, day: (Date.parse(one.on) - Date.parse(today)) / DAY_MS }]
      : [],
  );
  const late = seen.filter(({ day }) => day >= -WITHIN_DAYS);
  const days = (late.at(-1)?.day ?? 0) - (late[0]?.day ?? 0);
  if (late.length < LEAST_TESTS || days < LEAST_DAYS) return null;
  // Middles: the step of the kit is in the scatter already.
  const slopes = pairSlopes(late.map(({ day, central }) => ({ day, low: central, high: central })));
  const levels = late.map(({ central }) => central).sort((a, b) => a - b);
  const level = levels[Math.floor(levels.length / 2)] ?? 0;
  const { waterChangeFraction: share, waterChangeEveryDays: every, newWaterNo3NMgPerL: fresh } = facts;
  const taken = (share.central / every.central) * Math.max(0, level - fresh.central);
  const [low, high] = [-Z90, Z90].map((z) => NO3_PER_N * Math.max(0, taken + slopeAt(slopes, z)));
  if (low === undefined || high === undefined || !(high > 0)) return null;
  return {
    text: `${round3(low)}-${round3(high)} mg/L as NO3`,
    how: `from ${late.length} tests in ${Math.round(days)} days and what its usual changes took`,
  };
}

function riseFromFood({ facts: { feedGPerDay, feedNMgPerG, waterL } }: SumTank): FromTank | null {
  if (feedGPerDay.origin === "assumed" || feedGPerDay.central === 0) return null;
  const all = (NO3_PER_N * feedGPerDay.central * feedNMgPerG.central) / waterL.central;
  return {
    text: `${round3(all * AS_NITRATE.low)}-${round3(all * AS_NITRATE.high)} mg/L as NO3`,
    how: "a tenth to seven tenths of the nitrogen in its food; judgement",
  };
}
