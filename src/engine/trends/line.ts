/**
 * A robust line through readings: slope by all pairs, level by medians, outliers marked and left in, and many versions of
 * the line within its doubt, from which "n of 20" is counted. docs/model/trends.md#line
 */
import { normalQuantile } from "../numeric/normal.ts";
import { quantile, quantileOfSorted } from "../numeric/quantile.ts";
import { RandomStream } from "../numeric/random.ts";
import type { Spread } from "../types/estimate.ts";
import { type PairSlopes, pairSlopes, slopeAt } from "./pair-slopes.ts";
import { median, type Point } from "./series.ts";

/** z of the ends of a 90 % band. */
const Z95 = 1.6448536269514722;
/** Versions of the line; a count of 20 is a share of these. */
const VERSIONS = 200;
/** Neighbouring slopes that share one doubt of rounding. */
const SHARING = 20;
/** Scaled median deviations beyond which a reading is marked: 1 of 2,000 where errors are normal. */
export const OUTLIER_DEVIATIONS = 3.5;
/** From the median deviation to the standard deviation of a normal error. */
export const NORMAL_SCALE = 1.4826;
/** Fewer readings say nothing of how neighbours resemble each other. */
const SERIAL_FROM = 8;
const MOST_SERIAL = 0.8;

export interface Version {
  /** At the middle day. */
  readonly level: number;
  readonly perDay: number;
}

export interface Line {
  readonly perDay: Spread;
  /** Value of the line on its middle day. */
  readonly level: number;
  readonly middleDay: number;
  /** Robust standard deviation of the readings around the line. */
  readonly scatter: number;
  /** Entries that lie further off than chance would have it; they stay in the line, which they hardly move. */
  readonly outliers: readonly Point[];
  readonly versions: readonly Version[];
  readonly pairs: PairSlopes;
}

/** @param seed of the versions @returns null where no pair of readings bounds a slope */
export function lineOf(points: readonly Point[], step: number, seed: number): Line | null {
  const first = slopeAt(pairSlopes(points), 0);
  if (!Number.isFinite(first)) return null;
  const pairs = pairSlopes(points, serialFactor(residualsOf(points, first), OF_A_LINE));
  const central = slopeAt(pairs, 0);
  const middleDay = median(points.map(({ day }) => day));
  const level = levelOf(points, central, middleDay);
  const fitted = (day: number) => level + central * (day - middleDay);
  const deviations = points
    .filter(({ censored }) => censored === null)
    .map((p) => Math.abs(p.value - fitted(p.day)));
  const spread = deviations.length === 0 ? 0 : NORMAL_SCALE * median(deviations);
  const scatter = Math.max(spread, step / 2);
  return {
    perDay: { low: slopeAt(pairs, -Z95), central, high: slopeAt(pairs, Z95) },
    ...{ level, middleDay, scatter, pairs },
    outliers: points.filter((point) => gap(point, fitted(point.day)) > OUTLIER_DEVIATIONS * scatter),
    versions: versionsOf(points, { pairs, middleDay, level, central }, seed),
  };
}

/** How far a value lies from all that a reading allows. */
export const gap = ({ low, high }: Pick<Point, "low" | "high">, value: number): number =>
  Math.max(0, low - value, value - high);

/** Middle of what the bounds allow; one that is without end says nothing. */
function levelOf(points: readonly Point[], perDay: number, middleDay: number): number {
  const at = (bound: (point: Point) => number) =>
    midmean(points.map((point) => bound(point) - perDay * (point.day - middleDay)));
  const [low, high] = [at((point) => point.low), at((point) => point.high)];
  return Number.isFinite(high) ? (low + high) / 2 : low;
}

/** Mean of the middle half: as little moved by outliers as a median almost, and finer than the step of a test. */
function midmean(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  const cut = Math.floor(sorted.length / 4);
  let sum = 0;
  for (let i = cut; i < sorted.length - cut; i += 1) sum += sorted[i]!;
  return sum / (sorted.length - 2 * cut);
}

/** How far the level could lie either way with four of five readings still true: rounding that no count of them mends. */
function roundingDoubt(points: readonly Point[], fitted: (day: number) => number): number {
  const off = (bound: (point: Point) => number) => points.map((point) => bound(point) - fitted(point.day));
  const highs = off(({ high }) => high).filter(Number.isFinite);
  if (highs.length === 0) return 0;
  return (
    Math.max(
      0,
      quantile(highs, 0.2) -
        quantile(
          off(({ low }) => low),
          0.8,
        ),
    ) / 2
  );
}

const middleValue = ({ low, high, value }: Point): number =>
  Number.isFinite(high) ? (low + high) / 2 : value;

const residualsOf = (points: readonly Point[], perDay: number): number[] => {
  const off = points.map((point) => middleValue(point) - perDay * point.day);
  const middle = median(off);
  return off.map((value) => value - middle);
};

/** What is fitted before neighbours are compared: level and slope. */
const OF_A_LINE = 2;

/**
 * Variance of a sum of readings against that of as many independent ones, by the likeness of neighbours' ranks: a reading
 * that resembles the one before tells less than a new one.
 * @param fitted how many coefficients the residuals were freed of
 */
export function serialFactor(residuals: readonly number[], fitted: number): number {
  const n = residuals.length;
  if (n < SERIAL_FROM) return 1;
  const ranks = ranksOf(residuals);
  const mean = (n + 1) / 2;
  let product = 0;
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    squares += (ranks[i]! - mean) ** 2;
    if (i > 0) product += (ranks[i]! - mean) * (ranks[i - 1]! - mean);
  }
  if (squares === 0) return 1;
  // What is fitted makes neighbours look less alike than they are (for the mean alone: Kendall 1954).
  const plain = product / squares;
  const likeness = Math.min(
    MOST_SERIAL,
    Math.max(0, plain + (fitted + (fitted + 2) * Math.max(0, plain)) / n),
  );
  return (1 + likeness) / (1 - likeness);
}

function ranksOf(values: readonly number[]): Float64Array {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const ranks = new Float64Array(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1]!] === values[order[from]!]) to += 1;
    for (let i = from; i <= to; i += 1) ranks[order[i]!] = (from + to) / 2 + 1;
    from = to + 1;
  }
  return ranks;
}

interface Middle {
  readonly pairs: PairSlopes;
  readonly middleDay: number;
  readonly level: number;
  readonly central: number;
}

/** Slopes evenly over their confidence; levels by drawing the readings anew, each as likely as the next. */
function versionsOf(
  points: readonly Point[],
  { pairs, middleDay, level, central }: Middle,
  seed: number,
): Version[] {
  const random = new RandomStream(seed);
  const n = points.length;
  const about = points.map((point) => middleValue(point) - level - central * (point.day - middleDay));
  let doubt = 0;
  return Array.from({ length: VERSIONS }, (_, version): Version => {
    const slope = slopeAt(pairs, normalQuantile((version + 0.5) / VERSIONS));
    const perDay = Number.isFinite(slope) ? slope : central;
    // Levels are drawn apart from slopes: at the middle day the two are about independent.
    const drawn = Array.from({ length: n }, () => about[Math.floor(random.uniform() * n)]!);
    if (version % SHARING === 0) doubt = roundingDoubt(points, (day) => level + perDay * (day - middleDay));
    return { level: level + midmean(drawn) + (2 * random.uniform() - 1) * doubt, perDay };
  });
}

/** The line's value on a day: 5, 50 and 95 % of its versions. */
export function lineOn({ versions, middleDay }: Line, day: number): Spread {
  const values = Float64Array.from(
    versions,
    ({ level, perDay }) => level + perDay * (day - middleDay),
  ).sort();
  return {
    low: quantileOfSorted(values, 0.05),
    central: quantileOfSorted(values, 0.5),
    high: quantileOfSorted(values, 0.95),
  };
}

/** Versions that rise, of 20; one that is level counts half. */
export function risingOf20({ versions }: Line): number {
  const up = versions.reduce((sum, { perDay }) => sum + (perDay > 0 ? 1 : perDay === 0 ? 0.5 : 0), 0);
  return Math.round((up / versions.length) * 20);
}
