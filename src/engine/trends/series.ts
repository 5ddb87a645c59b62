/**
 * Readings of one quantity as the trend takes them: each an interval on a day, as wide as the test could tell.
 * Days are whole and counted from the day asked about, so that they are zero or negative. docs/model/trends.md#readings
 */
import type { ReadingSeen } from "../types/record.ts";

/** One reading, or one day's. */
export interface Point {
  /** Days from the day asked about; 0 or negative. */
  readonly day: number;
  /** ISO date. */
  readonly on: string;
  /** Where the value lies: as wide as the step of the test; `high` is without end above what a kit can tell. */
  readonly low: number;
  readonly high: number;
  /** What is shown for it: the reading itself; of a censored one, the bound. */
  readonly value: number;
  readonly censored: "below" | "above" | null;
  readonly danger: boolean;
  /** Ids of the entries it comes from. */
  readonly entries: readonly string[];
}

export interface Series {
  /** Oldest first. */
  readonly points: readonly Point[];
  /** The coarsest step told of a test, or what the digits of the readings imply. */
  readonly step: number;
}

/** From the record's unit to the one a trend is told in; factor above zero. */
export interface Scale {
  readonly factor: number;
  readonly offset: number;
}
export const AS_KEPT: Scale = { factor: 1, offset: 0 };

const DAY_MS = 86_400_000;
export const daysFrom = (asOf: string, iso: string): number =>
  Math.round((Date.parse(`${iso}T00:00:00Z`) - Date.parse(`${asOf}T00:00:00Z`)) / DAY_MS);
export const dateOn = (asOf: string, day: number): string =>
  new Date(Date.parse(`${asOf}T00:00:00Z`) + day * DAY_MS).toISOString().slice(0, 10);

/** @param readings of one quantity, oldest first */
export function seriesOf(readings: readonly ReadingSeen[], asOf: string, scale: Scale = AS_KEPT): Series {
  const shown = (value: number) => Number((value * scale.factor + scale.offset).toPrecision(10));
  const implied = stepOfDigits(
    readings.filter(({ censored }) => censored === null).map((r) => shown(r.value.central)),
  );
  const points = readings.map((reading): Point => {
    const { value, censored } = reading;
    const step = reading.step === null ? implied : reading.step * scale.factor;
    const [low, central, high] = [shown(value.low), shown(value.central), shown(value.high)];
    const common = {
      ...{ day: daysFrom(asOf, reading.on), on: reading.on, censored },
      ...{ danger: reading.flag === "danger", entries: [reading.entry] },
    };
    if (censored === "below") return { ...common, low, high, value: high };
    if (censored === "above") return { ...common, low, high: Number.POSITIVE_INFINITY, value: low };
    return {
      ...{ ...common, value: central },
      low: Math.min(low, central - step / 2),
      high: Math.max(high, central + step / 2),
    };
  });
  const told = readings.flatMap(({ step }) => (step === null ? [] : [step * scale.factor]));
  return { points, step: told.length === 0 ? implied : Math.max(...tail(told, 20)) };
}

const tail = <T>(list: readonly T[], count: number): readonly T[] => list.slice(-count);

/** The last decimal that any of the values has: 0.1 of 8, 8.2, 8.3. At most three decimals are looked at. */
function stepOfDigits(values: readonly number[]): number {
  for (const digits of [0, 1, 2, 3]) {
    const step = 10 ** -digits;
    const whole = values.every((value) => Math.abs(value / step - Math.round(value / step)) < 1e-6);
    if (whole) return step;
  }
  return 1e-3;
}

/**
 * One point a day: the median of several (interval by interval), so that a day measured ten times counts once. A day
 * with a dangerous reading stays dangerous.
 */
export function byDay(points: readonly Point[]): readonly Point[] {
  const days = new Map<number, Point[]>();
  for (const point of points) {
    const same = days.get(point.day);
    if (same === undefined) days.set(point.day, [point]);
    else same.push(point);
  }
  return [...days.values()].map((same) => (same.length === 1 ? same[0]! : middleOf(same)));
}

function middleOf(same: readonly Point[]): Point {
  const one = same[0]!;
  const [low, high] = [median(same.map((point) => point.low)), median(same.map((point) => point.high))];
  const censored = low === 0 && same.some((point) => point.censored === "below" && point.high >= high);
  return {
    ...{ day: one.day, on: one.on, low, high },
    value: Number.isFinite(high) ? (censored ? high : median(same.map(({ value }) => value))) : low,
    censored: !Number.isFinite(high) ? "above" : censored ? "below" : null,
    danger: same.some(({ danger }) => danger),
    entries: same.flatMap(({ entries }) => entries),
  };
}

/** Of a list that need not be sorted; without end where half or more are. */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length / 2;
  if (sorted.length === 0) return Number.NaN;
  if (sorted.length % 2 === 1) return sorted[Math.floor(half)]!;
  const [below, above] = [sorted[half - 1]!, sorted[half]!];
  return below === above ? below : (below + above) / 2;
}
