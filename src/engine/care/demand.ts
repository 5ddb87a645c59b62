/**
 * What a tank takes a day of alkalinity or calcium, from readings between which something was dosed: the doses are taken
 * off the readings, and the robust slope of what is left, turned about, is the demand. docs/model/seawater.md#demand
 * Limits: demand is taken as steady; water changes and top-up with hard water count as demand or supply.
 */
import { type Line, lineOf } from "../trends/line.ts";
import { byDay, type Point, type Series } from "../trends/series.ts";
import type { Spread } from "../types/estimate.ts";

export interface Dosed {
  /** On the scale of the readings' days. */
  readonly day: number;
  /** By how much it raised the tank, in the unit of the readings. */
  readonly rise: number;
}

export interface DemandAsked {
  readonly series: Series;
  readonly dosed: readonly Dosed[];
  /** Rise a day by what is dosed every day. */
  readonly everyDay: number;
  readonly seed: number;
}

/** With fewer days no order of readings is rare enough to tell a slope from chance. */
export const LEAST_DAYS = 4;
/** Closer together a slope says nothing of days to come. */
export const LEAST_SPAN_DAYS = 3;

export type Demand =
  | { readonly kind: "not_enough"; readonly days: number; readonly spanDays: number }
  | {
      readonly kind: "told";
      readonly days: number;
      readonly spanDays: number;
      /** What the tank took a day; 90 % interval. */
      readonly perDay: Spread;
      /** What the readings themselves did a day. */
      readonly drift: Spread;
      /** What was dosed a day, in the mean of those days. */
      readonly dosedPerDay: number;
    };

export function demandOf({ series, dosed, everyDay, seed }: DemandAsked): Demand {
  const days = byDay(series.points);
  const [first, last] = [days[0]?.day ?? 0, days.at(-1)?.day ?? 0];
  const spanDays = last - first;
  const few = { kind: "not_enough", days: days.length, spanDays } as const;
  if (days.length < LEAST_DAYS || spanDays < LEAST_SPAN_DAYS) return few;
  // A reading is taken to come before that day's dose.
  const givenBefore = (day: number) =>
    everyDay * (day - first) +
    dosed.reduce((sum, dose) => sum + (dose.day >= first && dose.day < day ? dose.rise : 0), 0);
  const undosed = days.map((point): Point => shifted(point, -givenBefore(point.day)));
  const line = lineOf(undosed, series.step, seed);
  const asRead = lineOf(days, series.step, seed);
  if (line === null || asRead === null || !isBounded(line)) return few;
  return {
    ...{ kind: "told", days: days.length, spanDays, drift: asRead.perDay },
    perDay: { low: -line.perDay.high, central: -line.perDay.central, high: -line.perDay.low },
    dosedPerDay: givenBefore(last) / spanDays,
  };
}

const isBounded = ({ perDay }: Line): boolean => Number.isFinite(perDay.low) && Number.isFinite(perDay.high);

const shifted = (point: Point, by: number): Point => ({
  ...point,
  ...{ low: point.low + by, high: point.high + by, value: point.value + by },
});
