/** What is usual in this tank: median and spread of a year's readings, once there are eight days of them. */
import { quantile } from "../numeric/quantile.ts";
import { gap, NORMAL_SCALE, OUTLIER_DEVIATIONS } from "./line.ts";
import { median, type Point } from "./series.ts";

const USUAL_FROM_DAYS = 8;
const USUAL_WITHIN_DAYS = 365;

export interface Usual {
  /** The median lies here: both bounds alike where the test could tell. */
  readonly low: number;
  readonly high: number;
  readonly central: number;
  /** Four of five days lie between these. */
  readonly from: number;
  readonly to: number;
  readonly days: number;
  /** Where the latest day lies against it, further than 3.5 scaled median deviations. */
  readonly latest: "above" | "below" | "within";
}

/** @param days one point a day, oldest first @returns null where there are fewer than eight before the latest */
export function usualOf(days: readonly Point[], step: number): Usual | null {
  const latest = days.at(-1);
  if (latest === undefined) return null;
  // The latest day is held against those before it.
  const before = days.slice(0, -1).filter(({ day }) => day > latest.day - USUAL_WITHIN_DAYS);
  if (before.length + 1 < USUAL_FROM_DAYS) return null;
  const bound = (of: (point: Point) => number) => before.map(of);
  const [lows, highs] = [
    bound(({ low }) => low),
    bound((point) => (Number.isFinite(point.high) ? point.high : point.value)),
  ];
  const [low, high] = [median(lows), median(highs)];
  const central = (low + high) / 2;
  const values = before.map(({ value }) => value);
  const scatter = Math.max(NORMAL_SCALE * median(values.map((value) => Math.abs(value - central))), step / 2);
  const off = gap(latest, central) > OUTLIER_DEVIATIONS * scatter;
  return {
    ...{ low, high, central, days: before.length },
    ...{ from: quantile(values, 0.1), to: quantile(values, 0.9) },
    latest: !off ? "within" : latest.low > central ? "above" : "below",
  };
}
