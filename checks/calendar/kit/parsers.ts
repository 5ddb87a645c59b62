/**
 * Calendar files read by two programs that are not ours and know nothing of each other: ical.js and ts-ics. What both say
 * of an event is compared; where one can't tell (ts-ics reads no VTIMEZONE rules), the other's word is taken and said so.
 */
import ICAL from "ical.js";
import { convertIcsCalendar } from "ts-ics";

export interface ParsedEvent {
  readonly uid: string;
  readonly sequence: number;
  readonly cancelled: boolean;
  readonly allDay: boolean;
  readonly summary: string;
  readonly description: string;
  /** Instants, or days: ISO, of the event and what it comes again on, at most so many. */
  readonly occurrences: readonly string[];
}

const MOST = 400;

/** By ical.js. @throws where it can't read the file */
export function byIcalJs(text: string): ParsedEvent[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  for (const zone of calendar.getAllSubcomponents("vtimezone")) {
    // Never those it may know already: the file's own rules are what is tested.
    const id = String(zone.getFirstPropertyValue("tzid"));
    ICAL.TimezoneService.remove(id);
    ICAL.TimezoneService.register(new ICAL.Timezone(zone), id);
  }
  return calendar.getAllSubcomponents("vevent").map((component) => {
    const event = new ICAL.Event(component);
    const occurrences: string[] = [];
    const walk = event.iterator();
    for (let next = walk.next(); next && occurrences.length < MOST; next = walk.next()) {
      occurrences.push(
        next.isDate
          ? next.toString()
          : next.zone === ICAL.Timezone.localTimezone
            ? next.toString()
            : new Date(next.toUnixTime() * 1000).toISOString(),
      );
    }
    return {
      uid: event.uid,
      sequence: event.sequence,
      cancelled: component.getFirstPropertyValue("status") === "CANCELLED",
      allDay: event.startDate.isDate,
      summary: event.summary,
      description: event.description,
      occurrences,
    };
  });
}

/** By ts-ics, without the days that an event comes again on but the rule itself. @throws where it can't read the file */
export function byTsIcs(text: string): (Omit<ParsedEvent, "occurrences"> & {
  readonly start: string;
  readonly every: number | null;
})[] {
  const { events = [] } = convertIcsCalendar(undefined, text);
  return events.map(({ uid, sequence, status, start, summary, description, recurrenceRule }) => ({
    uid,
    sequence: sequence ?? 0,
    cancelled: status === "CANCELLED",
    allDay: start.type === "DATE",
    summary,
    description: description ?? "",
    start: start.type === "DATE" ? start.date.toISOString().slice(0, 10) : start.date.toISOString(),
    every: recurrenceRule === undefined ? null : (recurrenceRule.interval ?? 1),
  }));
}

/** Faults of form that parsers forgive: RFC 5545, 3.1 and 3.6. None: an empty list. */
export function faultsOf(text: string): string[] {
  const faults: string[] = [];
  if (!text.endsWith("END:VCALENDAR\r\n")) faults.push("does not end with END:VCALENDAR and CR LF");
  if (/[^\r]\n|\r[^\n]/.test(text)) faults.push("a line end that is not CR LF");
  for (const line of text.split("\r\n")) {
    if (Buffer.byteLength(line) > 75) faults.push(`over 75 octets: ${line.slice(0, 30)}`);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what is looked for
    if (/[\u0000-\u0008\u000b-\u001f\u007f]/.test(line)) faults.push("a control character");
  }
  const lines = text.replaceAll("\r\n ", "").split("\r\n").slice(0, -1);
  const open: string[] = [];
  const seen: Record<string, number>[] = [{}];
  for (const line of lines) {
    const name = /^[A-Z][A-Z0-9-]*(?=[;:])/.exec(line)?.[0];
    if (name === undefined) faults.push(`no property: ${line.slice(0, 30)}`);
    else if (name === "BEGIN") {
      open.push(line.slice(6));
      seen.push({});
    } else if (name === "END") {
      if (open.pop() !== line.slice(4)) faults.push(`${line} closes nothing`);
      const had = seen.pop()!;
      if (line === "END:VEVENT")
        for (const needed of ["UID", "DTSTAMP", "DTSTART", "SUMMARY", "SEQUENCE", "ORGANIZER", "STATUS"])
          if (had[needed] !== 1) faults.push(`${needed} stands ${had[needed] ?? 0} times in an event`);
    } else seen.at(-1)![name] = (seen.at(-1)![name] ?? 0) + 1;
  }
  if (open.length > 0) faults.push("something is not closed");
  const zones = new Set(lines.flatMap((line) => /^TZID:(.*)/.exec(line)?.[1] ?? []));
  for (const line of lines) {
    const zone = /;TZID=([^:;]+)/.exec(line)?.[1];
    if (zone !== undefined && !zones.has(zone)) faults.push(`no VTIMEZONE of ${zone}`);
    // An end of the day's own type: DATE with DATE (3.3.10).
    const until = /UNTIL=(\w+)/.exec(line)?.[1];
    if (until !== undefined && /T/.test(until) && line.includes("VALUE=DATE"))
      faults.push("UNTIL of another type");
  }
  return faults;
}
