/**
 * How long a wiped pane takes to want wiping again: as this tank's daybook has it, or, where that says too little, as the
 * larder's film grows. Equations: docs/model/almanac.md#glass.
 */
import { bandOf } from "../../numeric/quantile.ts";
import { daysBetween } from "../../stocking/suitability.ts";
import type { Spread } from "../../types/estimate.ts";
import type { TankRecord } from "../../types/record.ts";

/** Older returns tell of another crew, another feed. Judgement. */
const LATELY_DAYS = 120;
const MOST_RETURNS = 6;
/** One return is a day's mood; two are a habit of the tank. Judgement. */
const LEAST_RETURNS = 2;

export interface FilmReturns {
  /** Days to film: least, median and most of the latest returns. */
  readonly days: Spread;
  /** Oldest first. */
  readonly returns: readonly { readonly on: string; readonly days: number; readonly entry: string }[];
}

/** Null where fewer than two returns were logged lately. */
export function measuredFilmDays({ observations, asOf }: TankRecord): FilmReturns | null {
  const returns = observations
    .flatMap((one) => (one.kind === "film_back" && daysBetween(one.on, asOf) <= LATELY_DAYS ? [one] : []))
    .slice(-MOST_RETURNS)
    .map(({ on, days, entry }) => ({ on, days, entry }));
  if (returns.length < LEAST_RETURNS) return null;
  const days = returns.map((one) => one.days);
  return {
    days: { low: Math.min(...days), central: bandOf(days).central, high: Math.max(...days) },
    returns,
  };
}

export interface FilmGrowth {
  /** Grown on glass less what is eaten there, mg C a day. */
  readonly netMgCPerDay: Spread;
  /** Glass that is left to grow. */
  readonly areaM2: number;
  /** Film on a grazed pane, mg C a square metre. */
  readonly cropMgCPerM2: number;
}

/** A pane wants wiping at so many times the film that grazers leave; judgement. */
const SEEN_AT_CROPS = 2;
/** Beyond this nobody would say that film comes back. */
export const MOST_FILM_DAYS = 28;

/**
 * Days until the film stands at twice what grazers leave. Nulls at the slow end: it may never.
 * @returns null where even the fastest run does not get there within four weeks
 */
export function grownFilmDays({ netMgCPerDay, areaM2, cropMgCPerM2 }: FilmGrowth): Spread | null {
  const needed = SEEN_AT_CROPS * cropMgCPerM2 * areaM2;
  const daysAt = (net: number): number =>
    net <= 0 ? MOST_FILM_DAYS : Math.min(MOST_FILM_DAYS, needed / net);
  const [low, central, high] = [
    daysAt(netMgCPerDay.high),
    daysAt(netMgCPerDay.central),
    daysAt(netMgCPerDay.low),
  ];
  return low >= MOST_FILM_DAYS ? null : { low, central, high };
}

/** The day of the latest such chore; null where none was logged. */
export const lastDone = (
  { happenings }: TankRecord,
  chore: "glass_wiped" | "filter_changed" | "water_change" | "fallen_snails_righted",
): { readonly on: string; readonly entry: string } | null =>
  happenings.flatMap((one) => (one.kind === "chore" && one.chore === chore ? [one] : [])).at(-1) ?? null;
