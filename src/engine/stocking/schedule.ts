/**
 * When waves may come: at tank ages of six, nine, thirteen and twenty-six weeks, or three weeks and more apart in a
 * tank that is older. Each wave plans on a share of the pessimistic supply, less while the tank is young and while
 * nobody has watched a first crew in it. @source rng.planned_share (0.6 to 0.9); steps from the model's design
 */

export interface WaveDate {
  /** Days from the plan's day to the first day of the window. */
  readonly day: number;
  /** Length of the window, days. */
  readonly windowDays: number;
  /** Share of the pessimistic supply that the wave may plan on. */
  readonly plannedShare: number;
}

/** Days on which no animal is to come, the first and the last, from the plan's day. */
export interface QuietDays {
  readonly from: number;
  readonly to: number;
}

const WEEK = 7;
const WINDOW_DAYS = 14;
const FIRST_AGE_DAYS = 6 * WEEK;
/** With film already seen, the first wave may come this early. */
const FIRST_AGE_WITH_FILM_DAYS = 5 * WEEK;
/** Days of the later waves after the first: ages of nine, thirteen and twenty-six weeks in a new tank. */
const LATER_DAYS = [3 * WEEK, 7 * WEEK, 20 * WEEK];

const BY_AGE: readonly (readonly [ageDays: number, factor: number])[] = [
  [26 * WEEK, 1],
  [13 * WEEK, 0.85],
  [9 * WEEK, 0.75],
  [0, 0.6],
];
const BY_STEP = [0.6, 0.75, 0.85, 1];

/** Heads that a plan's first wave brings at most, and litres of display beyond which it may bring one more each. */
const FIRST_WAVE_HEADS = 12;
const FIRST_WAVE_LITRES = 250;
const LITRES_A_HEAD_MORE = 100;

/**
 * Most heads of a plan's first wave: what one person can acclimate, look at and count again in an evening, and lose
 * without the water turning. Judgement: "fewer first" is common practice, no source gives a number.
 */
export const firstWaveMost = (displayL: number): number =>
  FIRST_WAVE_HEADS + Math.max(0, Math.floor((displayL - FIRST_WAVE_LITRES) / LITRES_A_HEAD_MORE));

const plannedShareByAge = (ageDays: number): number => BY_AGE.find(([from]) => ageDays >= from)?.[1] ?? 0.6;

/** A window that quiet days leave shorter than this is none: the wave comes after them. */
const LEAST_WINDOW_DAYS = 3;

/**
 * @param ageDays of the tank on the plan's day; below zero before it is filled
 * @param hasCrew whether animals that graze or scavenge live there and have been watched
 * @param quiet days on which none may come: the wave moves behind them, and those after it keep their distance
 */
export function waveDates(
  ageDays: number,
  filmSeen: boolean,
  hasCrew: boolean,
  quiet: readonly QuietDays[] = [],
): WaveDate[] {
  const firstAge = filmSeen ? FIRST_AGE_WITH_FILM_DAYS : FIRST_AGE_DAYS;
  const first = Math.max(0, Math.ceil(firstAge - ageDays));
  let moved = 0;
  return [0, ...LATER_DAYS].map((after, step) => {
    const { day, windowDays } = openWindow(first + after + moved, quiet);
    moved = day - first - after;
    const watched = BY_STEP[Math.min(BY_STEP.length - 1, step + (hasCrew ? 1 : 0))]!;
    return { day, windowDays, plannedShare: Math.min(plannedShareByAge(ageDays + day), watched) };
  });
}

/** The first window from a day on that quiet days leave open. */
function openWindow(wanted: number, quiet: readonly QuietDays[]): Pick<WaveDate, "day" | "windowDays"> {
  let day = wanted;
  for (const { from, to } of quiet.toSorted((a, b) => a.from - b.from))
    if (to >= day && from < day + LEAST_WINDOW_DAYS) day = to + 1;
  const next = Math.min(...quiet.flatMap(({ from }) => (from > day ? [from] : [])), day + WINDOW_DAYS);
  return { day, windowDays: next - day };
}
