/**
 * When a quantity is worth testing again: at half the time in which it could reach a limit, by what its readings allow.
 * Equations: docs/model/almanac.md#tests.
 */
import type { Spread } from "../../types/estimate.ts";

export interface TestedSoFar {
  /** The line today, 90 % band; and how it goes, per day. */
  readonly today: Spread;
  readonly perDay: Spread;
  readonly above: number | null;
  readonly below: number | null;
}

/** A test tells of a month at the most, and two in one day tell no more than one. Judgement. */
export const MOST_DAYS = 28;
const LEAST_DAYS = 1;

/** Days in which the outermost version of the line meets a limit; null where none does within eight weeks. */
export function earliestMeeting({ today, perDay, above, below }: TestedSoFar): number | null {
  const up =
    above === null
      ? null
      : today.high >= above
        ? 0
        : perDay.high > 0
          ? (above - today.high) / perDay.high
          : null;
  const down =
    below === null
      ? null
      : today.low <= below
        ? 0
        : perDay.low < 0
          ? (today.low - below) / -perDay.low
          : null;
  const soonest = Math.min(up ?? Number.POSITIVE_INFINITY, down ?? Number.POSITIVE_INFINITY);
  return soonest <= 2 * MOST_DAYS ? soonest : null;
}

/** Days from the latest reading to the next test. */
export function testAgainIn(earliest: number | null): number {
  const half = earliest === null ? MOST_DAYS : earliest / 2;
  return Math.max(LEAST_DAYS, Math.min(MOST_DAYS, Math.floor(half)));
}
