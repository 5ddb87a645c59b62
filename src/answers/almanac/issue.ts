/**
 * What a calendar is given: each duty one event, the same for as long as it is the same duty. What was given before decides
 * what changes: an event that is as before is given as before; one that moved has a higher number; one that no longer
 * holds is given as cancelled until its last day is over, so that no calendar keeps it. Pure: what was given is handed in.
 * docs/almanac.md#the-same-event
 */
import type { CalendarEvent } from "../../contract/calendar/file.ts";
import { addDays, daysBetween, daysInMonth, isoDate } from "../../contract/quantity/calendar.ts";
import { plain } from "../sentence.ts";
import type { CareDate } from "./care-date.ts";

/** The latest that was given of one duty. */
export interface GivenEvent {
  readonly care: string;
  readonly sequence: number;
  /** Instant since which it is given so, ISO UTC. */
  readonly at: string;
  readonly cancelled: boolean;
  /** The last day of any version that was ever given, ISO date: until then some calendar may hold it. */
  readonly reach: string;
  readonly event: GivenContent;
}

export interface GivenContent {
  readonly on: string;
  readonly time: string | null;
  readonly zone: string | null;
  readonly every: number | null;
  readonly until: string | null;
  readonly summary: string;
  readonly description: string;
  readonly kind: string;
  readonly rests_on: string;
}

export interface Issue {
  /** All that the file has, cancelled ones too; by care id. */
  readonly events: readonly GivenEvent[];
  /** Those of them that were not given so before: to be kept. */
  readonly fresh: readonly GivenEvent[];
}

export interface IssueMoment {
  /** ISO date, in the tank's zone. */
  readonly today: string;
  /** Instant, UTC. */
  readonly now: string;
  /** IANA zone of the tank; null where nobody said. */
  readonly zone: string | null;
}

/** How far an open series reaches when it is given, and how little may be left before it is given on. */
const REACH_MONTHS = 6;
const LEAST_LEFT_DAYS = 60;

/** @param given the latest of each duty, once */
export function issueOf(
  dates: readonly CareDate[],
  given: readonly GivenEvent[],
  moment: IssueMoment,
): Issue {
  const before = new Map(given.map((one) => [one.care, one]));
  const standing = dates.map((date) => issued(date, before.get(date.id) ?? null, moment));
  const held = new Set(dates.map(({ id }) => id));
  const gone = given.flatMap((one) => (held.has(one.care) ? [] : withdrawn(one, moment)));
  const events = [...standing, ...gone].sort((a, b) => (a.care < b.care ? -1 : a.care > b.care ? 1 : 0));
  return { events, fresh: events.filter((one) => before.get(one.care) !== one) };
}

function issued(date: CareDate, before: GivenEvent | null, moment: IssueMoment): GivenEvent {
  const event = contentOf(date, before, moment);
  if (before !== null && !before.cancelled && same(before.event, event)) return before;
  const sequence = before === null ? 0 : before.sequence + 1;
  const reach = [before?.reach ?? "", event.until ?? event.on].sort().at(-1)!;
  return { care: date.id, sequence, at: moment.now, cancelled: false, reach, event };
}

function contentOf(date: CareDate, before: GivenEvent | null, { today, zone }: IssueMoment): GivenContent {
  const { kind, every, restsOn } = date;
  const was = before !== null && !before.cancelled ? before.event : null;
  const steady = was !== null && was.rests_on === restsOn && was.every === every ? was : null;
  // A day that was once given is not put off while nothing behind it has changed: or it would never come.
  const on =
    steady !== null && (every !== null || steady.on >= today) && steady.on < date.on ? steady.on : date.on;
  return {
    ...{ on, time: date.at, zone: date.at === null ? null : zone, every },
    until: untilOf(date, on, steady, today),
    ...{ summary: plain(date.do), description: descriptionOf(date), kind, rests_on: restsOn },
  };
}

/** A series has an end, so that a calendar which nobody asks again does not go on for ever. */
function untilOf(
  { every, until, on: due }: CareDate,
  on: string,
  steady: GivenContent | null,
  today: string,
): string | null {
  if (every === null) return null;
  const reach = steady?.until ?? null;
  const open = reach !== null && daysBetween(today, reach) >= LEAST_LEFT_DAYS ? reach : monthsEnd(today);
  const last = until !== null && until < open ? until : open;
  // Never before it begins.
  return [last, on, due].sort().at(-1)!;
}

function monthsEnd(today: string): string {
  const [year, month] = today.split("-").map(Number) as [number, number];
  const months = month - 1 + REACH_MONTHS;
  const [endYear, endMonth] = [year + Math.floor(months / 12), (months % 12) + 1];
  return isoDate(endYear, endMonth, daysInMonth(endYear, endMonth)) ?? addDays(today, 183);
}

/** The gate first: whoever reads no further has read it. */
function descriptionOf({ gate, why, byWhen, wouldChange }: CareDate): string {
  return [
    ...(gate === null ? [] : [plain(gate)]),
    ...why.map(plain),
    `By when: ${plain(byWhen)}`,
    `What would change it: ${plain(wouldChange)}`,
  ].join("\n");
}

const same = (a: GivenContent, b: GivenContent): boolean => keyOf(a) === keyOf(b);
const keyOf = ({
  on,
  time,
  zone,
  every,
  until,
  summary,
  description,
  kind,
  rests_on,
}: GivenContent): string =>
  JSON.stringify([on, time, zone, every, until, summary, description, kind, rests_on]);

/** Nothing once every version's last day is over: what is past is a memory, not a duty. */
function withdrawn(one: GivenEvent, { today, now }: IssueMoment): GivenEvent[] {
  if (one.reach < today) return [];
  return [one.cancelled ? one : { ...one, sequence: one.sequence + 1, at: now, cancelled: true }];
}

/** As the file writes it. @param uidOf the event's own name for ever */
export const calendarEventOf = (
  { care, sequence, at, cancelled, event }: GivenEvent,
  uidOf: (care: string) => string,
): CalendarEvent => ({
  ...{ uid: uidOf(care), sequence, changedAt: at, cancelled, on: event.on, at: event.time, zone: event.zone },
  ...{ every: event.every, until: event.until, summary: event.summary, description: event.description },
  category: event.kind.replaceAll("_", " "),
});
