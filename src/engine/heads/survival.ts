/**
 * Survival of heads whose end is known: Kaplan and Meier's product with Greenwood's error, and a constant rate of loss
 * with its exact interval. A feared loss ends what is known without a death; a head nobody found dead counts as living, so
 * that this is the least that was lost: the living now are reckoned in kind.ts. docs/model/heads.md, "Known ends".
 */
import { exp } from "../numeric/elementary.ts";
import type { Spread } from "../types/estimate.ts";
import { ARRIVAL_DAYS } from "./follow.ts";
import type { Life } from "./life.ts";

/** How long one head is known of, and whether its death ended that. */
export interface Known {
  readonly days: number;
  readonly died: boolean;
}

export interface SurvivalStep {
  readonly days: number;
  readonly atRisk: number;
  readonly deaths: number;
  /** Share that lives beyond these days. */
  readonly share: number;
  readonly standardError: number;
  /** 95 % band on the log scale, as tables print it; null once nobody is left. */
  readonly band: { readonly low: number; readonly high: number } | null;
}

const Z975 = 1.959963984540054;

/** One row for each day on which somebody died. */
export function kaplanMeier(lives: readonly Known[]): SurvivalStep[] {
  const days = [...new Set(lives.filter(({ died }) => died).map((one) => one.days))].sort((a, b) => a - b);
  let share = 1;
  let greenwood = 0;
  return days.map((day) => {
    const atRisk = lives.filter((one) => one.days >= day).length;
    const deaths = lives.filter((one) => one.died && one.days === day).length;
    share *= 1 - deaths / atRisk;
    greenwood += deaths / (atRisk * (atRisk - deaths));
    const ofLog = Math.sqrt(greenwood);
    const band =
      share > 0 ? { low: share * exp(-Z975 * ofLog), high: Math.min(1, share * exp(Z975 * ofLog)) } : null;
    return { days: day, atRisk, deaths, share, standardError: share > 0 ? share * ofLog : 0, band };
  });
}

/** Share that lives beyond so many days: the last step before or on them. */
export const shareAt = (steps: readonly SurvivalStep[], days: number): number =>
  steps.filter((step) => step.days <= days).at(-1)?.share ?? 1;

/** Deaths over the days that heads were known to live, with the exact 90 % interval of a Poisson count. */
export function lossRate(
  lives: readonly Known[],
): { readonly deaths: number; readonly headDays: number; readonly perDay: Spread } | null {
  const deaths = lives.filter(({ died }) => died).length;
  const headDays = lives.reduce((sum, { days }) => sum + days, 0);
  if (headDays === 0) return null;
  const { low, high } = poissonBand(deaths, 0.05);
  return {
    ...{ deaths, headDays },
    perDay: { low: low / headDays, central: deaths / headDays, high: high / headDays },
  };
}

/** Means between which a count of that size is no surprise: each tail has `tail`. Exact. */
export function poissonBand(count: number, tail: number): { low: number; high: number } {
  return {
    low: count === 0 ? 0 : rootOf((mean) => 1 - poissonUpTo(count - 1, mean) - tail, count),
    high: rootOf((mean) => tail - poissonUpTo(count, mean), count + 1),
  };
}

/** Chance of at most `count` where `mean` are expected. */
function poissonUpTo(count: number, mean: number): number {
  let term = exp(-mean);
  let sum = term;
  for (let i = 1; i <= count; i += 1) {
    term *= mean / i;
    sum += term;
  }
  return sum;
}

/** Where a rising function passes nought, by halving. */
function rootOf(rising: (mean: number) => number, about: number): number {
  let low = 0;
  let high = 2 * about + 10;
  for (let i = 0; i < 200 && high - low > 1e-12 * high; i += 1) {
    const middle = (low + high) / 2;
    if (rising(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Heads of a kind as known ends, arrivals that died within 72 hours left out. Whom a loss took is not known: it is taken
 * off those that came last where they came within three days, else off those that came first.
 */
export function knownEnds({ before, events, days }: Life): Known[] {
  const lots: { readonly came: number; left: number }[] = before > 0 ? [{ came: 0, left: before }] : [];
  const ends: Known[] = [];
  const take = (day: number, count: number, died: boolean): void => {
    const fresh = lots.filter(({ came }) => day - came <= ARRIVAL_DAYS && came > 0).toReversed();
    let left = count;
    for (const lot of [...(died ? fresh : []), ...lots]) {
      const taken = Math.min(left, lot.left);
      lot.left -= taken;
      left -= taken;
      if (died && fresh.includes(lot)) continue;
      for (let i = 0; i < taken; i += 1) ends.push({ days: day - lot.came, died });
    }
  };
  for (const event of events) {
    if (event.kind === "added") lots.push({ came: event.day, left: event.count });
    if (event.kind === "found") take(event.day, event.count, true);
    if (event.kind === "feared" || event.kind === "moved_out") take(event.day, event.count, false);
  }
  for (const { came, left } of lots) {
    for (let i = 0; i < left; i += 1) ends.push({ days: days - came, died: false });
  }
  return ends;
}
