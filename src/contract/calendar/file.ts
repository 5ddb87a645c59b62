/**
 * A calendar file (RFC 5545): dated events, all-day ones as days, those with a time of day in their zone. What no longer
 * holds is in it as cancelled, so that a calendar which has it takes it out. Limits: writes, does not read; events recur
 * by whole days only.
 */
import { addDays } from "../quantity/calendar.ts";
import { instantOf } from "../quantity/zone.ts";
import { asDate, asInstant, asLocal, calendarText, fileOf } from "./lines.ts";
import { zoneLines } from "./zone-lines.ts";

export interface CalendarEvent {
  /** Never another event's, and the same for ever. */
  readonly uid: string;
  /** Rises each time that anything in it changes. */
  readonly sequence: number;
  /** Instant of that change, ISO UTC. */
  readonly changedAt: string;
  readonly cancelled: boolean;
  /** ISO date, in the zone. */
  readonly on: string;
  /** "HH:MM" on the clocks of the zone; null: all day. */
  readonly at: string | null;
  /** IANA name; null: whatever the reader's clocks show then. */
  readonly zone: string | null;
  /** Comes again every so many days, to the last day; null: once. */
  readonly every: number | null;
  readonly until: string | null;
  readonly summary: string;
  readonly description: string;
  /** One word, such as "test". */
  readonly category: string;
}

export interface CalendarFile {
  readonly name: string;
  readonly events: readonly CalendarEvent[];
  /** How often a feed is worth asking for again, in hours; null for a file. */
  readonly refreshHours: number | null;
}

/** What a duty takes in a calendar that has an hour for it. */
const MINUTES = 30;
/** The reserved name that is nobody's: an organiser is asked for by RFC 5546 (3.2.1), nobody reads its mail. */
const ORGANISER = 'ORGANIZER;CN="Grazewell":mailto:almanac@grazewell.invalid';

export function calendarFileText({ name, events, refreshHours }: CalendarFile): string {
  const timed = events.filter((event) => event.at !== null && event.zone !== null);
  const years = timed.flatMap(({ on, until }) => [on, until ?? on].map((day) => Number(day.slice(0, 4))));
  const zones = [...new Set(timed.map(({ zone }) => zone!))].sort();
  return fileOf([
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Grazewell//Almanac//EN",
    "CALSCALE:GREGORIAN",
    "METHOD:PUBLISH",
    `X-WR-CALNAME:${calendarText(name)}`,
    ...(refreshHours === null
      ? []
      : [`REFRESH-INTERVAL;VALUE=DURATION:PT${refreshHours}H`, `X-PUBLISHED-TTL:PT${refreshHours}H`]),
    // A year either side: a calendar may ask what the clocks did before the first event.
    ...zones.flatMap((zone) => zoneLines(zone, Math.min(...years) - 1, Math.max(...years) + 1)),
    ...events.flatMap(eventLines),
    "END:VCALENDAR",
  ]);
}

function eventLines(event: CalendarEvent): string[] {
  const changed = asInstant(Date.parse(event.changedAt));
  return [
    "BEGIN:VEVENT",
    `UID:${calendarText(event.uid)}`,
    `SEQUENCE:${event.sequence}`,
    `DTSTAMP:${changed}`,
    `LAST-MODIFIED:${changed}`,
    ORGANISER,
    ...whenLines(event),
    `SUMMARY:${calendarText(event.summary)}`,
    `DESCRIPTION:${calendarText(event.description)}`,
    `CATEGORIES:${calendarText(event.category)}`,
    `STATUS:${event.cancelled ? "CANCELLED" : "CONFIRMED"}`,
    "CLASS:PRIVATE",
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
}

const wallOf = (on: string, at: string): number => Date.parse(`${on}T${at}:00Z`);

function whenLines({ on, at, zone, every, until }: CalendarEvent): string[] {
  if (at === null) {
    const again = againLine(every, until === null ? null : asDate(until));
    return [`DTSTART;VALUE=DATE:${asDate(on)}`, `DTEND;VALUE=DATE:${asDate(addDays(on, 1))}`, ...again];
  }
  const local = asLocal(wallOf(on, at));
  if (zone === null) {
    const end = until === null ? null : asLocal(wallOf(until, at));
    return [`DTSTART:${local}`, `DURATION:PT${MINUTES}M`, ...againLine(every, end)];
  }
  // With a zone the last day is an instant in UTC (3.3.10).
  const end = until === null ? null : asInstant(instantOf(wallOf(until, at), zone));
  return [`DTSTART;TZID=${zone}:${local}`, `DURATION:PT${MINUTES}M`, ...againLine(every, end)];
}

const againLine = (every: number | null, until: string | null): string[] =>
  every === null ? [] : [`RRULE:FREQ=DAILY;INTERVAL=${every}${until === null ? "" : `;UNTIL=${until}`}`];
