/**
 * A zone as a calendar file tells it (VTIMEZONE): its clock changes over the years that the file speaks of, as a yearly
 * rule where they follow one, else each on its own (readers differ in what they make of lists of days). RFC 5545, 3.6.5. Limits: whole minutes; outside those years it says nothing.
 */
import { offsetAt } from "../quantity/zone.ts";
import { asLocal, calendarText } from "./lines.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;

interface Change {
  /** The instant. */
  readonly at: number;
  /** Minutes ahead of UTC before and after. */
  readonly from: number;
  readonly to: number;
}

/** Clock changes between two instants, to the minute. */
function changesOf(zone: string, from: number, to: number): readonly Change[] {
  const found: Change[] = [];
  let before = offsetAt(from, zone);
  for (let day = from; day < to; day += DAY_MS) {
    const after = offsetAt(day + DAY_MS, zone);
    if (after === before) continue;
    let [early, late] = [day, day + DAY_MS];
    while (late - early > MINUTE_MS) {
      const middle = early + Math.floor((late - early) / (2 * MINUTE_MS)) * MINUTE_MS;
      if (offsetAt(middle, zone) === before) early = middle;
      else late = middle;
    }
    found.push({ at: late, from: before, to: after });
    before = after;
  }
  return found;
}

/** `fromYear` to `toYear`, both whole. */
export function zoneLines(zone: string, fromYear: number, toYear: number): string[] {
  const start = Date.UTC(fromYear, 0, 1);
  const changes = changesOf(zone, start, Date.UTC(toYear + 1, 0, 1));
  const first = offsetAt(start, zone);
  const kinds = new Map<string, Change[]>();
  for (const change of changes) {
    const kind = `${change.from} ${change.to}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), change]);
  }
  return [
    "BEGIN:VTIMEZONE",
    `TZID:${calendarText(zone)}`,
    ...observance("STANDARD", start + first * MINUTE_MS, first, first),
    ...[...kinds.values()].flatMap((alike) => {
      const { from, to } = alike[0]!;
      const what = to > from ? "DAYLIGHT" : "STANDARD";
      const walls = alike.map(({ at }) => at + from * MINUTE_MS);
      const rule = ruleOf(walls);
      return rule === null
        ? walls.flatMap((wall) => observance(what, wall, from, to))
        : observance(what, walls[0]!, from, to, rule);
    }),
    "END:VTIMEZONE",
  ];
}

/** @param wall of its beginning, on the clock from before */
const observance = (
  what: "STANDARD" | "DAYLIGHT",
  wall: number,
  from: number,
  to: number,
  rule: string | null = null,
): string[] => [
  `BEGIN:${what}`,
  `DTSTART:${asLocal(wall)}`,
  ...(rule === null ? [] : [rule]),
  `TZOFFSETFROM:${offsetText(from)}`,
  `TZOFFSETTO:${offsetText(to)}`,
  `END:${what}`,
];

const WEEKDAYS = ["SU", "MO", "TU", "WE", "TH", "FR", "SA"] as const;

/** A yearly rule that gives all of them; null where none does, or there is but one. */
function ruleOf(walls: readonly number[]): string | null {
  if (walls.length < 2) return null;
  const days = walls.map((wall) => {
    const date = new Date(wall);
    const next = new Date(wall + 7 * DAY_MS);
    return {
      year: date.getUTCFullYear(),
      month: date.getUTCMonth() + 1,
      weekday: date.getUTCDay(),
      time: wall % DAY_MS,
      which: Math.ceil(date.getUTCDate() / 7),
      last: next.getUTCMonth() !== date.getUTCMonth(),
    };
  });
  const [one] = days;
  if (one === undefined) return null;
  const alike = days.every(
    (day, i) =>
      day.month === one.month &&
      day.weekday === one.weekday &&
      day.time === one.time &&
      day.year === one.year + i,
  );
  if (!alike) return null;
  const place = days.every(({ last }) => last)
    ? -1
    : days.every(({ which }) => which === one.which)
      ? one.which
      : null;
  if (place === null) return null;
  return `RRULE:FREQ=YEARLY;BYMONTH=${one.month};BYDAY=${place}${WEEKDAYS[one.weekday]}`;
}

/** `+0530` of 330 minutes. */
function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${minutes < 0 ? "-" : "+"}${two(Math.floor(size / 60))}${two(size % 60)}`;
}
