/**
 * Whether a quantity rose up to a day and fell after it, or fell and rose: a start-up's ammonia and nitrite do, and no
 * straight line has it. Kendall's S before the day less Kendall's S after it (Mack and Wolfe 1981), of readings as
 * intervals, so what a kit can't tell apart says nothing. docs/model/trends.md#turns
 *
 * Told only where either side by itself is a trend that chance makes less than 1 time in 20, both together beyond chance
 * over all days asked, and the smaller side moves at least three tenths of the larger. Error rate: held by simulation in
 * turn.test.ts. Limits: of two peaks in the window the clearer one; the day is that of the readings about the top.
 */
import { normalQuantile } from "../numeric/normal.ts";
import { gap, NORMAL_SCALE, serialFactor } from "./line.ts";
import { order } from "./pair-slopes.ts";
import { median, type Point } from "./series.ts";

/** Days with readings on either side: fewer come in any order by chance. */
const SIDE_DAYS = 4;
const SIDE_CHANCE = 0.05;
/** More readings have to be surer: neighbours that resemble each other look like a fall the longer they are. */
const SIDE_CHANCE_OF_MANY = 0.02;
const TOGETHER_CHANCE = 0.01;
/** A dip of less than this part of the rise is a wobble on it. */
const LEAST_PART = 0.3;
/** Either side moves the reading by so many steps of its test, and so many standard deviations of what is left, at least. */
const LEAST_STEPS = 2;
const LEAST_DEVIATIONS = 2.5;
/** Up to here the chance of S is counted, not approximated. */
const COUNTED_TO = 9;
/** Level, slope before and slope after. */
const OF_A_TURN = 3;

export interface Turn {
  readonly shape: "peak" | "trough";
  /** The day of the top, or the middle of the days that can't be told from it. */
  readonly day: number;
  /** First day of the last readings, four or more, that can't be told from each other: it moves no more. Null: it does. */
  readonly settledDay: number | null;
  /** First day with a reading of the line since: the last one about the top. */
  readonly sinceDay: number;
  /** Days with readings before and after. */
  readonly before: number;
  readonly after: number;
  /** Kendall's S of both sides, in its standard deviations where nothing but chance ordered the readings. */
  readonly deviations: number;
  /** Days and shapes that were asked about. */
  readonly asked: number;
}

/** @param points one a day, oldest first @param step of the test */
export function turnOf(points: readonly Point[], step: number): Turn | null {
  const n = points.length;
  if (n < 2 * SIDE_DAYS) return null;
  const before = sums(points);
  const after = sums(points.toReversed());
  const asked = 2 * (n - 2 * SIDE_DAYS + 1);
  const found = Array.from({ length: n - 2 * SIDE_DAYS + 1 }, (_, i) => i + SIDE_DAYS).flatMap((at) => {
    // Backwards in time a fall is a rise.
    const [left, right] = [before[at]!, after[n - at]!];
    if (left.s * right.s <= 0) return [];
    const sign = Math.sign(left.s);
    const [first, last] = [points.slice(0, at), points.slice(at)];
    const off = [...leftOf(first, sign), ...leftOf(last, -sign)];
    return [
      { at, left, right, sign, first, last, off, squares: off.reduce((sum, one) => sum + one * one, 0) },
    ];
  });
  const best = found.toSorted((a, b) => a.squares - b.squares || z(b.left, b.right) - z(a.left, a.right))[0];
  if (best === undefined) return null;
  const { at, left, right, sign, first, last, off } = best;
  const alike = serialFactor(off, OF_A_TURN);
  const deviations = z(left, right) / Math.sqrt(alike);
  if (!beyondChance(left, alike) || !beyondChance(right, alike)) return null;
  if (deviations < -normalQuantile(TOGETHER_CHANCE / asked)) return null;
  const [up, down] = [sign * movedBy(first), -sign * movedBy(last)];
  const scatter = NORMAL_SCALE * median(off.map(Math.abs));
  const least = Math.max(LEAST_STEPS * step, LEAST_DEVIATIONS * scatter, LEAST_PART * Math.max(up, down));
  if (Math.min(up, down) < least) return null;
  const [from, to] = topOf(points, at, sign);
  const settled = settledFrom(points);
  return {
    shape: sign > 0 ? "peak" : "trough",
    day: Math.round((points[from]!.day + points[to]!.day) / 2),
    sinceDay: points[to]!.day,
    settledDay: settled !== null && settled > to ? points[settled]!.day : null,
    ...{ before: at, after: n - at, deviations, asked },
  };
}

interface Sum {
  readonly n: number;
  readonly s: number;
  readonly variance: number;
}

const z = (left: Sum, right: Sum): number =>
  (Math.abs(left.s + right.s) - 1) / Math.sqrt(left.variance + right.variance || 1);

/** Kendall's S of the first so many points, and its variance with ties counted (Daniels 1944), for every such number. */
function sums(points: readonly Point[]): readonly Sum[] {
  const made: Sum[] = [{ n: 0, s: 0, variance: 0 }];
  const rows = new Float64Array(points.length);
  let s = 0;
  let squares = 0;
  for (let k = 0; k < points.length; k += 1) {
    for (let j = 0; j < k; j += 1) {
      const higher = order(points[j]!, points[k]!);
      s += higher;
      rows[j] = rows[j]! + higher;
      rows[k] = rows[k]! - higher;
      squares += 2 * higher * higher;
    }
    const n = k + 1;
    let apart = -squares;
    for (let j = 0; j < n; j += 1) apart += rows[j]! ** 2;
    const daySquares = n * (n - 1);
    const daysApart = (n * (n * n - 1)) / 3 - daySquares;
    const variance =
      n < 3 ? 0 : (apart * daysApart) / (n * (n - 1) * (n - 2)) + (squares * daySquares) / (2 * n * (n - 1));
    made.push({ n, s, variance });
  }
  return made;
}

/** One side by itself: few readings counted over all their orders, as if none were tied; many by the normal law. */
function beyondChance({ n, s, variance }: Sum, alike: number): boolean {
  if (n > COUNTED_TO)
    return Math.abs(s) - 1 >= -normalQuantile(SIDE_CHANCE_OF_MANY) * Math.sqrt(variance * alike);
  const orders = ordersOf(n);
  const most = (n * (n - 1)) / 2;
  const wrongWay = Math.floor((most - Math.abs(s)) / 2);
  const total = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0);
  return total(orders.slice(0, wrongWay + 1)) <= SIDE_CHANCE * total(orders);
}

/** How many orders of n have 0, 1, 2, ... pairs the wrong way round. */
function ordersOf(n: number): number[] {
  let counts = [1];
  for (let k = 2; k <= n; k += 1) {
    const next = new Array<number>(counts.length + k - 1).fill(0);
    counts.forEach((count, i) => {
      for (let j = 0; j < k; j += 1) next[i + j] = next[i + j]! + count;
    });
    counts = next;
  }
  return counts;
}

const midOf = ({ low, high, value }: Point): number => (Number.isFinite(high) ? (low + high) / 2 : value);

/** From the median of the outer two or three readings to that of the inner ones: one reading by itself moves little. */
function movedBy(points: readonly Point[]): number {
  const some = Math.min(3, Math.floor(points.length / 2));
  const values = points.map(midOf);
  return median(values.slice(-some)) - median(values.slice(0, some));
}

/** How far each reading's interval lies from the nearest course that never goes back (pool adjacent violators). */
function leftOf(points: readonly Point[], sign: number): number[] {
  const pools: { sum: number; n: number }[] = [];
  for (const point of points) {
    let pool = { sum: sign * midOf(point), n: 1 };
    for (
      let last = pools.at(-1);
      last !== undefined && last.sum / last.n >= pool.sum / pool.n;
      last = pools.at(-1)
    ) {
      pool = { sum: pool.sum + last.sum, n: pool.n + last.n };
      pools.pop();
    }
    pools.push(pool);
  }
  const fitted = pools.flatMap(({ sum, n }) => Array.from({ length: n }, () => sum / n));
  return points.map(
    (point, i) => sign * Math.sign(midOf(point) - sign * fitted[i]!) * gap(point, sign * fitted[i]!),
  );
}

/** Places of the readings about the turn that can't be told from the highest (lowest) of the two beside it. */
function topOf(points: readonly Point[], at: number, sign: number): [from: number, to: number] {
  const top = sign * (midOf(points[at]!) - midOf(points[at - 1]!)) > 0 ? at : at - 1;
  const same = (i: number) => points[i] !== undefined && order(points[top]!, points[i]!) === 0;
  let [from, to] = [top, top];
  while (same(from - 1)) from -= 1;
  while (same(to + 1)) to += 1;
  return [from, to];
}

/** Place of the first of the last readings that can't be told from the last one; null where they are fewer than four. */
function settledFrom(points: readonly Point[]): number | null {
  const last = points.at(-1)!;
  let from = points.length - 1;
  while (from > 0 && order(points[from - 1]!, last) === 0) from -= 1;
  return points.length - from >= SIDE_DAYS ? from : null;
}
