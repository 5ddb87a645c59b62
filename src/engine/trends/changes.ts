/**
 * Whether a quantity changed on a day: a step or a bend that a straight line through the same readings does not have,
 * asked first of the days on which something was done or befell, then of all days. docs/model/trends.md#changes
 *
 * Error rate: of quantities in which nothing changed, at most 1 in 20 is said to have changed, also where readings resemble
 * the one before by a third; by half, at most 1 in 8. (2 % for days with an event and 0.5 % for the others, each shared out
 * evenly over all that is asked: Bonferroni.) Held by simulation in trend.test.ts.
 * Limits: one reading in the middle of a run is no change; what follows an event is not thereby its effect.
 */
import { NORMAL_SCALE, OUTLIER_DEVIATIONS, serialFactor } from "./line.ts";
import { median } from "./series.ts";
import { twoSided } from "./student.ts";

export const CHANGE_WITHIN_DAYS = 180;
const AT_EVENTS = 0.02;
const ELSEWHERE = 0.005;
/** Days with readings on either side of a change. */
const SIDE_DAYS = 4;
/** Events so close together are one candidate: readings can't tell them apart. */
const TOGETHER_DAYS = 3;
/** A change at no event is looked for on at most so many days. */
const MOST_DAYS_ASKED = 40;

export interface Measured {
  readonly day: number;
  readonly value: number;
}

export interface Candidate {
  /** The change lies between the readings before this day and those on it or later. */
  readonly day: number;
  /** Ids of the entries of that day; none where no event is near. */
  readonly events: readonly string[];
}

export interface Change extends Candidate {
  readonly shape: "step" | "bend";
  /** Of a step: how much higher afterwards; of a bend: how much more a day. */
  readonly by: number;
  /** Standard error of that. */
  readonly error: number;
  /** Chance of so much where nothing changed, one day asked. */
  readonly chance: number;
  /** How many days and shapes were asked about. */
  readonly asked: number;
}

/** Days of events, those within three days of each other as one, by the first day. */
export function candidatesOf(
  events: readonly { readonly day: number; readonly entry: string }[],
): Candidate[] {
  const candidates: { day: number; events: string[] }[] = [];
  for (const { day, entry } of [...events].sort((a, b) => a.day - b.day)) {
    const last = candidates.at(-1);
    if (last !== undefined && day - last.day < TOGETHER_DAYS) last.events.push(entry);
    else candidates.push({ day, events: [entry] });
  }
  return candidates;
}

/**
 * Changes that are beyond chance, oldest first; the clearest is found first, then what lies on either side of it is
 * asked again.
 * @param points one a day, oldest first @param step of the test
 */
export function changesOf(
  points: readonly Measured[],
  candidates: readonly Candidate[],
  step: number,
): Change[] {
  const first = points[0]?.day;
  const last = points.at(-1)?.day;
  if (first === undefined || last === undefined) return [];
  const has = (day: number) =>
    points.filter((p) => p.day < day).length >= SIDE_DAYS &&
    points.filter((p) => p.day >= day).length >= SIDE_DAYS;
  const atEvents = candidates.filter(({ day }) => has(day));
  const near = (day: number) => candidates.some((one) => Math.abs(one.day - day) <= TOGETHER_DAYS);
  const others = spread(
    points.slice(SIDE_DAYS, 1 - SIDE_DAYS).filter(({ day }) => !near(day)),
    MOST_DAYS_ASKED,
  ).map(({ day }): Candidate => ({ day, events: [] }));
  const families: Family[] = [
    { candidates: atEvents, level: AT_EVENTS / Math.max(1, 2 * atEvents.length), asked: 2 * atEvents.length },
    { candidates: others, level: ELSEWHERE / Math.max(1, 2 * others.length), asked: 2 * others.length },
  ];
  return within(points, families, step);
}

interface Family {
  readonly candidates: readonly Candidate[];
  readonly level: number;
  readonly asked: number;
}

function within(points: readonly Measured[], families: readonly Family[], step: number): Change[] {
  const found = families.flatMap(({ candidates, level, asked }) =>
    candidates.flatMap((candidate) =>
      (["step", "bend"] as const).flatMap((shape): (Change & { readonly level: number })[] => {
        const test = changeAt(points, candidate.day, shape, step, level);
        return test === null ? [] : [{ ...candidate, shape, ...test, asked, level }];
      }),
    ),
  );
  // An event's day goes before a day next to it that fits as well.
  const [best] = found.sort(
    (a, b) => (b.events.length - a.events.length && sureness(a) - sureness(b)) || a.chance - b.chance,
  );
  if (best === undefined) return [];
  const { level: _, ...change } = best;
  const side = (of: (day: number) => boolean) =>
    within(
      points.filter(({ day }) => of(day)),
      families.map((family) => ({ ...family, candidates: family.candidates.filter(({ day }) => of(day)) })),
      step,
    );
  return [...side((day) => day < best.day), change, ...side((day) => day >= best.day)];
}
const sureness = ({ chance, level }: { readonly chance: number; readonly level: number }) => chance / level;

/** At most so many of a list, evenly, in their order. */
function spread<T>(list: readonly T[], most: number): readonly T[] {
  if (list.length <= most) return list;
  return Array.from({ length: most }, (_, i) => list[Math.floor((i * list.length) / most)]!);
}

/** Level, slope and the change itself. */
const OF_A_CHANGE = 3;

/**
 * Least squares with a line and the change beside it, outliers drawn in to 3.5 scaled median deviations first; the
 * error is at least that of rounding to the test's step; where neighbours resemble each other it is wider, and the
 * readings count as so many fewer.
 * @param atMost a chance above this is not worked out to its end @returns null for such, and with too few readings
 */
export function changeAt(
  points: readonly Measured[],
  day: number,
  shape: Change["shape"],
  step: number,
  atMost = 1,
): Pick<Change, "by" | "error" | "chance"> | null {
  const n = points.length;
  // Loops over whole arrays, here and below: a year of days is asked of some eighty times.
  const days = new Float64Array(n);
  const raw = new Float64Array(n);
  let before = 0;
  for (let i = 0; i < n; i += 1) {
    days[i] = points[i]!.day - day;
    raw[i] = points[i]!.value;
    if (days[i]! < 0) before += 1;
  }
  if (before < SIDE_DAYS || n - before < SIDE_DAYS) return null;
  const line = lineThrough(days);
  const own = freedOf(line, shape === "step" ? days.map(afterwards) : days.map(sinceThen));
  const ownSquares = dot(own, own);
  if (ownSquares < 1e-9) return null;
  const first = beside(raw, line, own, ownSquares).residuals;
  const bound = OUTLIER_DEVIATIONS * Math.max(NORMAL_SCALE * median(first.map(Math.abs)), step / 2);
  const drawnIn = new Float64Array(n);
  for (let i = 0; i < n; i += 1)
    drawnIn[i] = raw[i]! - first[i]! + Math.max(-bound, Math.min(bound, first[i]!));
  const { by, residuals } = beside(drawnIn, line, own, ownSquares);
  const scatter = Math.max(dot(residuals, residuals) / (n - OF_A_CHANGE), (step * step) / 12);
  const tail = (alike: number) => {
    const error = Math.sqrt((scatter * alike) / ownSquares);
    const chance =
      error === 0 ? (by === 0 ? 1 : 0) : twoSided(by / error, Math.max(1, n / alike - OF_A_CHANGE));
    return { by, error, chance };
  };
  // Likeness of neighbours only makes the chance greater.
  if (atMost < 1 && tail(1).chance > atMost) return null;
  const found = tail(serialFactor([...residuals], OF_A_CHANGE));
  return found.chance > atMost ? null : found;
}

const afterwards = (day: number): number => (day < 0 ? 0 : 1);
const sinceThen = (day: number): number => Math.max(0, day);

/** Days about their middle. */
interface LineOfDays {
  readonly about: Float64Array;
  readonly squares: number;
}

function lineThrough(days: Float64Array): LineOfDays {
  const middle = mean(days);
  const about = new Float64Array(days.length);
  for (let i = 0; i < days.length; i += 1) about[i] = days[i]! - middle;
  return { about, squares: dot(about, about) };
}

/** How much of the change there is in the values, and what neither it nor a line explains (Frisch and Waugh). */
function beside(values: Float64Array, line: LineOfDays, own: Float64Array, ownSquares: number) {
  const residuals = freedOf(line, values);
  const by = dot(residuals, own) / ownSquares;
  for (let i = 0; i < residuals.length; i += 1) residuals[i] = residuals[i]! - by * own[i]!;
  return { by, residuals };
}

/** Values less their own line over the days. */
function freedOf({ about, squares }: LineOfDays, values: Float64Array): Float64Array {
  const middle = mean(values);
  const slope = squares === 0 ? 0 : dot(values, about) / squares;
  const freed = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) freed[i] = values[i]! - middle - slope * about[i]!;
  return freed;
}

function mean(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]!;
  return sum / values.length;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}
