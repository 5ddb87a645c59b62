/**
 * How often water must be changed so that what comes in does not take a nutrient over its limit. A change swaps a share of
 * the water; between changes the level rises evenly. Limits: what new water brings besides is not reckoned, nor what
 * a nutrient does to growths on the way. Equations: docs/model/almanac.md#water.
 */

export interface Income {
  /** Level now and how it went, per day, over the days looked at: changes and all. */
  readonly level: number;
  readonly perDay: number;
  /** Shares of the water changed within those days. */
  readonly shares: readonly number[];
  readonly days: number;
  readonly newWater: number;
}

/** What the level would rise by a day if no water were changed, in its unit. */
export function incomePerDay({ level, perDay, shares, days, newWater }: Income): number {
  const taken = shares.reduce((sum, share) => sum + share * Math.max(0, level - newWater), 0);
  return days <= 0 ? perDay : perDay + taken / days;
}

export interface Held {
  readonly limit: number;
  readonly newWater: number;
  /** Share of the water in one change, 0 to 1. */
  readonly share: number;
  readonly income: number;
}

/** The level just before a change, once it has settled. */
export const peakBeforeChange = (
  { newWater, share, income }: Omit<Held, "limit">,
  everyDays: number,
): number => newWater + (Math.max(0, income) * everyDays) / share;

/** Days between changes at which that level is the limit; infinite where nothing comes in. */
export function longestBetweenChanges({ limit, newWater, share, income }: Held): number {
  if (limit <= newWater) return 0;
  return income <= 0 ? Number.POSITIVE_INFINITY : (share * (limit - newWater)) / income;
}

/** Days until the level meets the limit if no water is changed meanwhile; 0 where it is beyond it. */
export function daysToLimit(level: number, limit: number, income: number): number {
  if (level >= limit) return 0;
  return income <= 0 ? Number.POSITIVE_INFINITY : (limit - level) / income;
}
