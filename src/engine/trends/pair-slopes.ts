/**
 * The slope of a series by all pairs of its readings: Theil's and Sen's median slope with Sen's interval (Sen 1968), for
 * readings that are intervals after Akritas, Murphy and LaValley (1995): of every pair the least and the greatest slope
 * that it allows, pooled; the slope is the pool's median, at which Kendall's S of the residuals is nought.
 * No reading by itself moves it far. Limits: readings are taken as independent but for `serial`. docs/model/trends.md#slope
 */

export interface Observed {
  readonly day: number;
  readonly low: number;
  readonly high: number;
}

export interface PairSlopes {
  /** Least and greatest slopes of all pairs of different days, sorted: two a pair. */
  readonly pool: Float64Array;
  /** Kendall's S: pairs that surely rise less those that surely fall. */
  readonly s: number;
  /** Standard deviation of S if nothing but chance ordered the readings, ties and overlaps counted (Daniels 1944). */
  readonly sd: number;
}

/** Bounds of two neighbouring steps of a kit are met by rounding: this close they touch. */
const TOUCH = 1e-9;

/** @param serial how much wider the variance is, as neighbouring readings resemble each other; 1: not at all */
export function pairSlopes(points: readonly Observed[], serial = 1): PairSlopes {
  const n = points.length;
  const pool: number[] = [];
  let s = 0;
  const valueRows = new Float64Array(n);
  const dayRows = new Float64Array(n);
  let valueSquares = 0;
  let daySquares = 0;
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      const [a, b] = [points[i]!, points[j]!];
      const later = Math.sign(b.day - a.day);
      const higher = order(a, b);
      s += later * higher;
      valueRows[i] = valueRows[i]! + higher;
      valueRows[j] = valueRows[j]! - higher;
      dayRows[i] = dayRows[i]! + later;
      dayRows[j] = dayRows[j]! - later;
      valueSquares += 2 * higher * higher;
      daySquares += 2 * later * later;
      if (later === 0) continue;
      const [from, to] = later > 0 ? [a, b] : [b, a];
      const days = to.day - from.day;
      pool.push((to.low - from.high) / days, (to.high - from.low) / days);
    }
  }
  const apart = (rows: Float64Array, squares: number) =>
    rows.reduce((sum, row) => sum + row * row, 0) - squares;
  const variance =
    n < 3
      ? 0
      : (apart(valueRows, valueSquares) * apart(dayRows, daySquares)) / (n * (n - 1) * (n - 2)) +
        (valueSquares * daySquares) / (2 * n * (n - 1));
  return { pool: Float64Array.from(pool).sort(), s, sd: Math.sqrt(variance * serial) };
}

/** 1 where b surely lies above a, -1 below, 0 where the two may be the same. Bounds may touch. */
export function order(a: Observed, b: Observed): number {
  const near = TOUCH * (1 + Math.abs(a.low) + Math.abs(b.low));
  const [middleA, middleB] = [a.low + a.high, b.low + b.high];
  if (b.low >= a.high - near && middleB > middleA + near) return 1;
  if (a.low >= b.high - near && middleA > middleB + near) return -1;
  return 0;
}

/**
 * The slope at which S lies `z` standard deviations from nought: 0 gives the slope itself, -1.645 and 1.645 the ends of
 * a 90 % interval. Between two slopes of the pool it is interpolated as Gilbert (1987, section 16.5) does.
 */
export function slopeAt({ pool, sd }: PairSlopes, z: number): number {
  const pairs = pool.length / 2;
  if (pairs === 0) return Number.NaN;
  if (z === 0) return middle(pool[pairs - 1]!, pool[pairs]!);
  const at = z < 0 ? pairs + z * sd : pairs + z * sd + 2;
  return middle(between(pool, at - 1), between(pool, at));
}

/** The pool at a place counted from 1, between two of them in proportion. */
function between(pool: Float64Array, at: number): number {
  const place = Math.min(pool.length, Math.max(1, at));
  const below = Math.floor(place);
  const [low, high] = [pool[below - 1]!, pool[Math.min(below, pool.length - 1)]!];
  const part = place - below;
  if (part === 0 || low === high || low === Number.NEGATIVE_INFINITY) return low;
  return low + part * (high - low);
}

const middle = (a: number, b: number): number => (a === b ? a : (a + b) / 2);
