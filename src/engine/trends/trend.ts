/**
 * What the readings of one quantity say: which way it goes, how fast, how surely; what is usual; what changed; when a
 * limit is met; or what it would take to tell. Deterministic: its chance is seeded by the caller.
 * Cost: of any record only the last 90 days are paired (or the last eight days with readings, within a year), a point a
 * day, so at most 4,000 pairs. docs/model/trends.md
 */
import { type Candidate, CHANGE_WITHIN_DAYS, type Change, candidatesOf, changesOf } from "./changes.ts";
import { type Crossing, crossingOf, daysAhead, type LimitOf } from "./crossing.ts";
import { type Line, lineOf, risingOf20 } from "./line.ts";
import { order } from "./pair-slopes.ts";
import { byDay, type Point, type Series } from "./series.ts";
import { type Turn, turnOf } from "./turn.ts";
import { type Usual, usualOf } from "./usual.ts";

const WINDOW_DAYS = 90;
const WINDOW_READINGS = 8;
const LONGEST_DAYS = 365;
/** With three days no order of readings is rarer than 1 in 3: no slope could ever be told from chance. */
const LEAST_DAYS = 4;
/** A slope of readings closer together than this says nothing of weeks. */
const LEAST_SPAN_DAYS = 7;
/** A latest reading older than this tells of then, not of now. */
export const STALE_DAYS = 28;
/** A danger that a later reading has replaced is still told for so long. */
const DANGER_TOLD_DAYS = 14;

export interface EventOn {
  readonly day: number;
  readonly entry: string;
}

export interface Asked {
  readonly series: Series;
  readonly events: readonly EventOn[];
  readonly limits: readonly LimitOf[];
  readonly seed: number;
}

export interface Enough {
  /** Readings on further days. */
  readonly readings: number;
  /** The last of them at least so many days from today; 0 where any day does. */
  readonly inDays: number;
}

export type Way = "rising" | "falling" | "level" | "cannot_tell" | "not_enough";

export interface Trend {
  /** One point a day, oldest first: all there are. */
  readonly days: readonly Point[];
  readonly latest: Point;
  readonly way: Way;
  readonly window: {
    readonly fromDay: number;
    readonly days: number;
    readonly why: "recent" | "eight" | "change" | "turn";
  };
  /** Null where there is not enough. */
  readonly line: Line | null;
  readonly risingOf20: number | null;
  /** The last readings where four or more go one way, each beyond the one before as far as the test can tell. */
  readonly lately: Lately | null;
  readonly enough: Enough | null;
  readonly usual: Usual | null;
  /** Oldest first; those of a turn's own shape are told as the turn. */
  readonly changes: readonly Change[];
  /** A top or bottom within the last 90 days (or eight readings), with enough readings on either side. */
  readonly turn: Turn | null;
  readonly crossings: readonly Crossing[];
  /** The latest dangerous reading of two weeks: `stands` until a later day's reading says otherwise. */
  readonly danger: { readonly point: Point; readonly stands: boolean } | null;
  readonly step: number;
}

export interface Lately {
  readonly way: "rising" | "falling";
  readonly readings: number;
}

/** Null where there is no reading at all. */
export function trendOf({ series, events, limits, seed }: Asked): Trend | null {
  const days = byDay(series.points);
  const latest = days.at(-1);
  if (latest === undefined) return null;
  const { step } = series;
  const recent = days.filter(({ day }) => day > latest.day - CHANGE_WITHIN_DAYS);
  const all = windowOf(days);
  const turn = turnWithin(
    days.filter(({ day }) => day >= all.fromDay),
    step,
  );
  const found = tellable(recent) ? changesOf(recent, candidatesIn(events, recent), step) : [];
  const changes = turn === null ? found : found.filter((change) => !isOfTurn(change, turn, all.fromDay));
  const window = since(all, changes.at(-1)?.day ?? null, turn);
  const points = days.filter(({ day }) => day >= window.fromDay);
  const enough = enoughOf(points);
  const line = enough === null ? lineOf(points, step, seed) : null;
  const seen = latest.day - points[0]!.day;
  return {
    ...{ days, latest, line, enough, changes, turn, step },
    window: { ...window, days: points.length },
    way: line === null ? "not_enough" : wayOf(line, step, seen),
    risingOf20: line === null ? null : risingOf20(line),
    lately: latelyOf(days),
    usual: usualOf(days, step),
    // A line that ends weeks ago is not carried on to today.
    crossings:
      line === null || latest.day < -STALE_DAYS
        ? []
        : limits.map((limit) => crossingOf(line, limit, daysAhead(seen))),
    danger: dangerOf(days),
  };
}

/** Where most readings are bounds, a step could be the kit's. */
const tellable = (points: readonly Point[]): boolean =>
  points.filter(({ censored }) => censored !== null).length * 2 < points.length;

function candidatesIn(events: readonly EventOn[], points: readonly Point[]): readonly Candidate[] {
  const [first, last] = [points[0]!.day, points.at(-1)!.day];
  return candidatesOf(events.filter(({ day }) => day > first && day <= last));
}

function windowOf(days: readonly Point[]): Window {
  const last = days.at(-1)!.day;
  const recent = days.filter(({ day }) => day > last - WINDOW_DAYS);
  const eight = days.filter(({ day }) => day > last - LONGEST_DAYS).slice(-WINDOW_READINGS);
  return recent.length >= WINDOW_READINGS || recent.length >= eight.length
    ? { fromDay: recent[0]!.day, why: "recent" }
    : { fromDay: eight[0]!.day, why: "eight" };
}
type Window = Pick<Trend["window"], "fromDay" | "why">;

/** What is true now begins at the last change, or at the turn where that is later. */
function since(all: Window, changedOn: number | null, turn: Turn | null): Window {
  const turned = turn === null ? null : (turn.settledDay ?? turn.sinceDay);
  const from = Math.max(all.fromDay, changedOn ?? all.fromDay, turned ?? all.fromDay);
  if (from === turned) return { fromDay: from, why: "turn" };
  return from > all.fromDay ? { fromDay: from, why: "change" } : all;
}

/** A turn of which a line since could be told too. */
function turnWithin(points: readonly Point[], step: number): Turn | null {
  const turn = turnOf(points, step);
  if (turn === null) return null;
  const enough = (from: number) => enoughOf(points.filter(({ day }) => day >= from)) === null;
  if (!enough(turn.sinceDay)) return null;
  return turn.settledDay !== null && !enough(turn.settledDay) ? { ...turn, settledDay: null } : turn;
}

/** A step or bend at no event, on the way up or down: what was found there is the turn's own shape. */
const isOfTurn = ({ day, events }: Change, { settledDay }: Turn, fromDay: number): boolean =>
  events.length === 0 && day > fromDay && (settledDay === null || day <= settledDay);

function enoughOf(points: readonly Point[]): Enough | null {
  const [first, last] = [points[0]!.day, points.at(-1)!.day];
  const readings = Math.max(0, LEAST_DAYS - points.length);
  const short = last - first < LEAST_SPAN_DAYS;
  if (readings === 0 && !short) return null;
  return { readings: Math.max(1, readings), inDays: Math.max(0, first + LEAST_SPAN_DAYS) };
}

/** Changes of less than the test's step in four weeks are level to whoever reads the kit. */
const LEVEL_DAYS = 28;

/** So many versions of 20 say the same: the line rises, though its 90 % band may touch nought. */
const SURE_OF_20 = 19;

function wayOf(line: Line, step: number, seenDays: number): Way {
  const { low, high } = line.perDay;
  const rising = risingOf20(line);
  const days = Math.min(LEVEL_DAYS, Math.max(LEAST_SPAN_DAYS, seenDays));
  const small = Math.max(-low, high) * days <= 2 * step;
  if (low > 0 || (!small && rising >= SURE_OF_20)) return "rising";
  if (high < 0 || (!small && rising <= 20 - SURE_OF_20)) return "falling";
  return small ? "level" : "cannot_tell";
}

function latelyOf(days: readonly Point[]): Lately | null {
  const steps = days.slice(1).map((point, i) => order(days[i]!, point));
  const last = steps.at(-1) ?? 0;
  const readings = steps.length - steps.findLastIndex((step) => step !== last);
  return last === 0 || readings < LEAST_DAYS ? null : { way: last > 0 ? "rising" : "falling", readings };
}

function dangerOf(days: readonly Point[]): Trend["danger"] {
  const point = days.findLast(({ danger }) => danger);
  if (point === undefined) return null;
  const stands = point === days.at(-1);
  return stands || point.day > -DANGER_TOLD_DAYS ? { point, stands } : null;
}
