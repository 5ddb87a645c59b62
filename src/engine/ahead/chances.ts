/**
 * What an ensemble of runs says about one limit or one kind of animal: in how many of 20 runs, and from when on.
 * Counts are shares of all members in twentieths, so that grains and quantiles agree.
 */
import { exp } from "../numeric/elementary.ts";
import { bandOf } from "../numeric/quantile.ts";
import type { Spread } from "../types/estimate.ts";
import { acrossMembers, ofTwenty, type Sheaf } from "./forecast.ts";

/** A kind counts as alive while at least this share of its heads is. */
const ALIVE_SHARE = 0.5;

export interface Crossing {
  /** Runs of 20 that are above the limit on some day after the first. */
  readonly of20: number;
  /** Runs of 20 that are above it on the day of the plan. */
  readonly alreadyOf20: number;
  /** Week in which a run that crosses does so first, over those runs; null where fewer than one in 20 does. */
  readonly firstWeek: Spread | null;
}

/** @param peaks greatest values of each week; week 0 is the start */
export function crossing(peaks: Sheaf, limit: number): Crossing {
  const { weeks, values } = peaks;
  const members = values.length / weeks;
  const first: number[] = [];
  let already = 0;
  for (let m = 0; m < members; m += 1) {
    const run = values.subarray(m * weeks, (m + 1) * weeks);
    if (run[0]! > limit) already += 1;
    const week = run.findIndex((value, w) => w > 0 && value > limit);
    if (week > 0) first.push(week);
  }
  return {
    of20: ofTwenty(first.length / members),
    alreadyOf20: ofTwenty(already / members),
    firstWeek: ofTwenty(first.length / members) > 0 ? bandOf(first) : null,
  };
}

/** Runs of 20 that are above a limit in one week. */
export function aboveOf20(sheaf: Sheaf, week: number, limit: number): number {
  const values = acrossMembers(sheaf, week);
  return ofTwenty(values.filter((value) => value > limit).length / values.length);
}

/** Runs of 20 in which at least half of the heads are alive in one week. */
export const aliveOf20 = (heads: Sheaf, week: number, came: number): number => {
  const all = headsInAll(heads, came);
  return ofTwenty(aliveShare(acrossMembers(heads, week), all));
};

/** Heads that a run began with, and those that came; runs differ where deaths may have gone unseen. */
const headsInAll = (heads: Sheaf, came: number): number[] =>
  Array.from(acrossMembers(heads, 0), (first) => first + came);

/** Of the runs in which any were there at all. */
function aliveShare(now: Float64Array, all: readonly number[]): number {
  const there = all.filter((heads) => heads > 0).length;
  const alive = all.filter((heads, m) => heads > 0 && now[m]! >= heads * ALIVE_SHARE).length;
  return there === 0 ? 0 : alive / there;
}

export interface Survival {
  /** Runs of 20 in which at least half of the heads are alive. */
  readonly aliveOf20: number;
  /** The same if nothing but age took any. */
  readonly agedOf20: number;
  /** Share of runs in which half are alive, against what age alone would leave; at most 1. */
  readonly fedShare: number;
  /** Runs of 20 that hunger or poison costs it, beyond those that age would. */
  readonly starvesOf20: number;
}

/**
 * @param came heads that came since the start, without those that left again
 * @param deathRate of age alone, 1/d
 * @param days since the last of them came
 */
export function survivalOf(
  heads: Sheaf,
  week: number,
  { came, deathRate, days }: { came: number; deathRate: number; days: number },
): Survival {
  const all = headsInAll(heads, came);
  const there = all.filter((count) => count > 0);
  // Who is not there can't starve.
  if (there.length === 0) return { aliveOf20: 0, agedOf20: 0, fedShare: 1, starvesOf20: 0 };
  const alive = aliveShare(acrossMembers(heads, week), all);
  const lives = exp(-deathRate * days);
  const byAge = new Map([...new Set(there)].map((count) => [count, halfAliveByAge(count, lives)]));
  const aged = there.reduce((sum, count) => sum + byAge.get(count)!, 0) / there.length;
  const fedShare = Math.min(1, alive / aged);
  return {
    aliveOf20: ofTwenty(alive),
    agedOf20: ofTwenty(aged),
    fedShare,
    starvesOf20: ofTwenty(1 - fedShare),
  };
}

/** Chance that at least half of `heads` live when each lives with chance `p`. */
export function halfAliveByAge(heads: number, p: number): number {
  if (p >= 1) return 1;
  let chance = 0;
  let term = (1 - p) ** heads; // exactly none alive; then each next count from the one before
  for (let alive = 0; alive <= heads; alive += 1) {
    if (alive >= heads * ALIVE_SHARE) chance += term;
    term *= ((heads - alive) / (alive + 1)) * (p / (1 - p));
  }
  return Math.min(1, Math.max(chance, 1e-9));
}
