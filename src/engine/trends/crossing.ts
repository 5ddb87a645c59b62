/** When a line meets a limit, counted over its versions: how many of 20, and when first. docs/model/trends.md#limits */
import { bandOf } from "../numeric/quantile.ts";
import type { Spread } from "../types/estimate.ts";
import type { Line } from "./line.ts";

export interface LimitOf {
  readonly id: string;
  readonly side: "above" | "below";
  readonly value: number;
}

export interface Crossing {
  readonly limit: LimitOf;
  /** Versions beyond it within the days looked ahead, of 20. */
  readonly of20: number;
  /** Of 20, beyond it today. */
  readonly alreadyOf20: number;
  readonly withinDays: number;
  /** Days until it is met, over the versions that meet it; null where fewer than 1 of 20 do, or all are beyond it. */
  readonly days: Spread | null;
}

/** No line is drawn further ahead than it was seen to go, nor further than this. */
const MOST_DAYS_AHEAD = 90;

export const daysAhead = (seenDays: number): number =>
  Math.min(MOST_DAYS_AHEAD, Math.max(7, Math.round(seenDays)));

export function crossingOf({ versions, middleDay }: Line, limit: LimitOf, withinDays: number): Crossing {
  const sign = limit.side === "above" ? 1 : -1;
  const met: number[] = [];
  let already = 0;
  for (const { level, perDay } of versions) {
    const beyond = sign * (level - perDay * middleDay - limit.value);
    if (beyond > 0) already += 1;
    else if (sign * perDay > 0 && -beyond / (sign * perDay) <= withinDays)
      met.push(-beyond / (sign * perDay));
  }
  const of20 = (count: number) => Math.round((count / versions.length) * 20);
  return {
    ...{ limit, withinDays, of20: of20(met.length + already), alreadyOf20: of20(already) },
    days: of20(met.length) === 0 ? null : bandOf(met),
  };
}
