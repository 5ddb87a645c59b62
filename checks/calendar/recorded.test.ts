/**
 * A calendar file that two Python parsers have read (checks/recorded/ics-python.py): the writer still writes it to the byte,
 * and what they said of it is what was meant. Days, an hour over a clock change in each half of the world, a floating
 * hour, a cancelled event, awkward text.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type CalendarEvent, calendarFileText } from "../../src/contract/calendar/file.ts";
import { addDays } from "../../src/contract/quantity/calendar.ts";
import { instantOf } from "../../src/contract/quantity/zone.ts";

const RECORDED = join(import.meta.dirname, "../recorded");
const base = {
  changedAt: "2026-06-15T12:00:00.000Z",
  cancelled: false,
  every: null,
  until: null,
  category: "look",
};
const event = (change: Partial<CalendarEvent> & Pick<CalendarEvent, "uid" | "on">): CalendarEvent => ({
  ...{ ...base, sequence: 0, at: null, zone: null, summary: "Do it.", description: "Because." },
  ...change,
});

const EVENTS: readonly CalendarEvent[] = [
  event({ uid: "days", on: "2026-12-27", every: 2, until: "2027-03-31" }),
  event({ uid: "leap", on: "2028-02-27", every: 1, until: "2028-03-31" }),
  event({
    uid: "berlin",
    on: "2027-03-26",
    at: "19:00",
    zone: "Europe/Berlin",
    every: 1,
    until: "2027-11-30",
  }),
  event({
    uid: "sydney",
    on: "2027-04-02",
    at: "07:30",
    zone: "Australia/Sydney",
    every: 1,
    until: "2027-11-30",
  }),
  event({
    uid: "kolkata",
    on: "2027-04-02",
    at: "07:30",
    zone: "Asia/Kolkata",
    every: 3,
    until: "2027-05-30",
  }),
  event({ uid: "floating", on: "2026-07-01", at: "08:00" }),
  event({ uid: "gone", on: "2026-07-01", cancelled: true, sequence: 4 }),
  event({
    ...{ uid: "text", on: "2026-07-01", summary: "Tank, by the window; 🐌 \\ семь" },
    description: `Only if it is so.\n${"é".repeat(120)}`,
  }),
];

interface Said {
  readonly uid: string;
  readonly sequence: number;
  readonly status: string;
  readonly summary: string;
  readonly description: string;
}

test("the writer writes what was recorded, to the byte", () => {
  const text = calendarFileText({ name: "Reef", events: EVENTS, refreshHours: null });
  const out = process.env["CALENDAR_OUT"];
  if (out !== undefined) writeFileSync(out, text);
  expect(text).toBe(readFileSync(join(RECORDED, "ics.ics"), "utf8"));
});

test("both Python parsers read in it what was meant", () => {
  const { icalendar, vobject } = JSON.parse(readFileSync(join(RECORDED, "ics-python.json"), "utf8")) as {
    readonly icalendar: readonly (Said & { readonly days: readonly string[] })[];
    readonly vobject: readonly (Said & { readonly start: string; readonly walls: readonly string[] })[];
  };
  for (const said of [icalendar, vobject])
    expect(
      said.map(({ uid, sequence, status, summary, description }) => [
        uid,
        sequence,
        status,
        summary,
        description,
      ]),
    ).toEqual(
      EVENTS.map(({ uid, sequence, cancelled, summary, description }) => [
        ...[uid, sequence, cancelled ? "CANCELLED" : "CONFIRMED", summary, description],
      ]),
    );
  EVENTS.forEach(({ on, at, zone, every }, i) => {
    const days = every === null ? [on] : Array.from({ length: 6 }, (_, n) => addDays(on, n * every));
    const wall = (day: string) => `${day}T${at ?? "00:00"}`;
    expect(vobject[i]?.walls.map((one) => (at === null ? `${one.slice(0, 10)}T00:00` : one))).toEqual(
      days.map(wall),
    );
    const instants = days.map((day) =>
      at === null
        ? day
        : zone === null
          ? `${wall(day)}:00`
          : new Date(instantOf(Date.parse(`${wall(day)}:00Z`), zone)).toISOString().replace(".000Z", "Z"),
    );
    expect(icalendar[i]?.days).toEqual(instants);
  });
});
