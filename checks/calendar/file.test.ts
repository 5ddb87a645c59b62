/**
 * Calendar files against two parsers that are not ours, and against the runtime's own table of zones: names of every
 * kind, both clock changes, halves of the world, zones without one, half hours, the turn of a year, 29 February.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CalendarEvent, calendarFileText } from "../../src/contract/calendar/file.ts";
import { calendarText, folded } from "../../src/contract/calendar/lines.ts";
import { addDays } from "../../src/contract/quantity/calendar.ts";
import { instantOf, offsetAt } from "../../src/contract/quantity/zone.ts";
import { byIcalJs, byTsIcs, faultsOf } from "./kit/parsers.ts";

const event = (change: Partial<CalendarEvent>): CalendarEvent => ({
  ...{ uid: "one", sequence: 0, changedAt: "2026-06-15T12:00:00.000Z", cancelled: false, on: "2026-06-15" },
  ...{ at: null, zone: null, every: null, until: null, summary: "Do it", description: "", category: "look" },
  ...change,
});
const file = (...events: CalendarEvent[]) => calendarFileText({ name: "Reef", events, refreshHours: null });

/** Europe, America, the southern half (Lord Howe by half an hour), none, half and quarter hours, one that ended. */
const ZONES = [
  ...["Europe/Berlin", "Europe/London", "America/New_York", "America/St_Johns", "Australia/Sydney"],
  ...["Australia/Lord_Howe", "Pacific/Auckland", "Pacific/Chatham", "America/Santiago", "Asia/Tokyo"],
  ...["Asia/Kolkata", "Asia/Kathmandu", "America/Phoenix", "Africa/Casablanca", "America/Sao_Paulo", "UTC"],
];

describe("a time of day stays that time of day over clock changes", () => {
  test.each(ZONES)("%s, each day of two years", (zone) => {
    const on = "2026-11-27";
    const text = file(event({ on, at: "19:00", zone, every: 1, until: addDays(on, 399) }));
    expect(faultsOf(text)).toEqual([]);
    const [read] = byIcalJs(text);
    const wanted = Array.from({ length: 400 }, (_, i) =>
      new Date(instantOf(Date.parse(`${addDays(on, i)}T19:00:00Z`), zone)).toISOString(),
    );
    expect(read?.occurrences).toEqual(wanted);
    expect(byTsIcs(text)[0]?.allDay).toBe(false);
  });

  test.each([
    ["Europe/Berlin", "2027-03-27", "2027-10-30"],
    ["America/New_York", "2027-03-13", "2027-11-06"],
    ["Australia/Sydney", "2027-10-02", "2027-04-03"],
  ])(
    "%s: forward and back, the day before and the day after are 23 and 25 hours apart",
    (zone, forward, back) => {
      const hours = (on: string) => {
        const [read] = byIcalJs(file(event({ on, at: "12:00", zone, every: 1, until: addDays(on, 1) })));
        const [first, second] = read!.occurrences.map((at) => Date.parse(at));
        return (second! - first!) / 3_600_000;
      };
      expect(hours(forward)).toBe(23);
      expect(hours(back)).toBe(25);
    },
  );

  test("an hour that does not exist is taken by the clock from before, one that comes twice by its first", () => {
    expect(new Date(instantOf(Date.parse("2027-03-28T02:30:00Z"), "Europe/Berlin")).toISOString()).toBe(
      "2027-03-28T01:30:00.000Z",
    );
    expect(new Date(instantOf(Date.parse("2027-10-31T02:30:00Z"), "Europe/Berlin")).toISOString()).toBe(
      "2027-10-31T00:30:00.000Z",
    );
  });

  test("ts-ics finds the same first instant where it knows the zone", () => {
    for (const zone of ["Europe/Berlin", "America/New_York", "Asia/Kolkata", "Asia/Tokyo"])
      for (const on of ["2026-12-01", "2026-07-01"]) {
        const text = file(event({ on, at: "19:00", zone }));
        expect(byTsIcs(text)[0]?.start).toBe(byIcalJs(text)[0]?.occurrences[0]);
      }
  });
});

describe("days", () => {
  test.each([
    ["over the turn of a year", "2026-12-30", 2, ["2026-12-30", "2027-01-01", "2027-01-03"]],
    ["over 29 February", "2028-02-27", 2, ["2028-02-27", "2028-02-29", "2028-03-02"]],
    ["over 28 February", "2027-02-27", 2, ["2027-02-27", "2027-03-01", "2027-03-03"]],
    ["over a clock change", "2027-03-27", 1, ["2027-03-27", "2027-03-28", "2027-03-29"]],
  ])("%s", (_, on, every, days) => {
    const text = file(event({ on, every, until: days.at(-1)! }));
    expect(faultsOf(text)).toEqual([]);
    expect(byIcalJs(text)[0]?.occurrences).toEqual(days);
    expect(byTsIcs(text)[0]).toMatchObject({ start: on, every, allDay: true });
  });

  test("without a zone a time of day is that of whoever reads", () => {
    const text = file(event({ at: "07:30" }));
    expect(faultsOf(text)).toEqual([]);
    expect(text).toContain("DTSTART:20260615T073000\r\n");
    expect(byIcalJs(text)[0]?.occurrences).toEqual(["2026-06-15T07:30:00"]);
  });
});

test("the file's own rules give the wall clock of the runtime's zones, every 13 days of two years", () => {
  // The rules are read by ical.js from the file; the runtime has its own table.
  for (const zone of ["Europe/Berlin", "Australia/Lord_Howe", "Africa/Casablanca"]) {
    for (let day = 0; day < 700; day += 13) {
      const on = addDays("2026-02-01", day);
      const [read] = byIcalJs(file(event({ on, at: "13:00", zone })));
      const at = Date.parse(read!.occurrences[0]!);
      expect(at + offsetAt(at, zone) * 60_000).toBe(Date.parse(`${on}T13:00:00Z`));
    }
  }
});

const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 200 }),
  fc.string({ unit: "grapheme", maxLength: 200 }),
  fc.constantFrom(
    'Tank; the "big" one, by\\the window',
    "two\nlines\r\nthree\rfour",
    "🐌🦀 семь, 七; \\n not a break",
    "END:VEVENT\r\nBEGIN:VEVENT\r\nUID:planted",
    "é".repeat(200),
    "👨‍👩‍👧‍👦".repeat(40),
  ),
);
/** What may stand in a file of any text: breaks as one kind, no control characters, no halves of pairs. */
const plainOf = (text: string) =>
  text
    .replaceAll(/\p{Surrogate}/gu, "")
    .replaceAll(/\r\n?/g, "\n")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what is taken out
    .replaceAll(/[\u0000-\u0009\u000b-\u001f\u007f]/g, " ");

test("any name and any words come back from both parsers as they were, and plant nothing", () => {
  fc.assert(
    fc.property(anyText, anyText, anyText, (name, summary, description) => {
      const text = calendarFileText({ name, events: [event({ summary, description })], refreshHours: 6 });
      expect(faultsOf(text)).toEqual([]);
      const read = byIcalJs(text);
      expect(read.map(({ uid }) => uid)).toEqual(["one"]);
      expect(read[0]).toMatchObject({ summary: plainOf(summary), description: plainOf(description) });
      // ts-ics looks for these words anywhere in the file, also inside a text.
      if (!/(?:BEGIN|END):/.test(text.replaceAll("\r\n ", "").replaceAll(/^(?:BEGIN|END):.*$/gm, "")))
        expect(byTsIcs(text).map(({ uid }) => uid)).toEqual(["one"]);
    }),
    { numRuns: 300 },
  );
});

test("what is folded unfolds to the same, no line over 75 octets", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const line = `SUMMARY:${calendarText(text)}`;
      const pieces = folded(line).split("\r\n");
      expect(pieces.every((piece) => Buffer.byteLength(piece) <= 75)).toBe(true);
      expect(pieces.map((piece, i) => (i === 0 ? piece : piece.slice(1))).join("")).toBe(line);
    }),
  );
});

test("the check of form finds planted faults", () => {
  const good = file(event({}));
  expect(faultsOf(good)).toEqual([]);
  expect(faultsOf(good.replace("UID:one\r\n", ""))).not.toEqual([]);
  expect(faultsOf(good.replaceAll("\r\n", "\n"))).not.toEqual([]);
  expect(faultsOf(good.replace("SUMMARY:", `SUMMARY:${"x".repeat(80)}`))).not.toEqual([]);
  expect(
    faultsOf(good.replace("DTSTART;VALUE=DATE:20260615", "DTSTART;TZID=Europe/Berlin:20260615T190000")),
  ).toEqual(["no VTIMEZONE of Europe/Berlin"]);
});
