/** A holiday: dates read and refused, bags on the right days, figures that open, the same words as the runs. */
import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import { holidayDates } from "./care-dates.ts";
import { holidayOf } from "./holiday.ts";
import { type HolidaySpan, packingOf } from "./packing.ts";
import { readSpan, spanQuery } from "./read-span.ts";

const facts = referenceTank();
const today = facts.asOf;
const context = { preferences: NO_PREFERENCES, today: "2026-06-15" };
const span: HolidaySpan = { from: "2026-07-01", to: "2026-07-15", sitterEvery: 2 };

describe("dates", () => {
  test("as a keeper writes them", () => {
    expect(readSpan({ from: "1 Jul 2026", to: "2026-07-15" }, context)).toEqual({ span, doubts: [] });
    expect(readSpan({}, context)).toEqual({ span: null, doubts: [] });
  });

  test.each([
    [{ from: "2026-06-14", to: "2026-06-20" }, "from", /must be today, 15 Jun 2026, or up to 120 days later/],
    [{ from: "2026-07-01", to: "2026-07-01" }, "to", /must be 1 to 42 days after leaving/],
    [{ from: "2026-07-01", to: "2026-09-01" }, "to", /must be 1 to 42 days after leaving/],
    [{ from: "2026-07-01", to: "" }, "to", /nothing entered/],
    [{ from: "soon", to: "2026-07-15" }, "from", /enter a date/],
    [{ from: "2026-07-01", to: "2026-07-15", every: "9" }, "every", /must be 1, 2, 3/],
  ])("%j says what is allowed", (typed, field, words) => {
    const { span: read, doubts } = readSpan(typed, context);
    expect(read).toBeNull();
    expect(doubts.map((doubt) => doubt.field)).toContain(field);
    expect(doubts.map(({ text }) => text).join("\n")).toMatch(words);
  });

  test("an address holds them all", () => {
    const typed = Object.fromEntries(new URLSearchParams(spanQuery(span)));
    expect(readSpan(typed, context).span).toEqual(span);
  });
});

test("two weeks, every second day: six portions, none on the day of leaving or of coming back", () => {
  const { bags, feedOn } = packingOf(facts, span);
  expect(bags.text).toBe("6 portions");
  expect(feedOn).toEqual(["03", "05", "07", "09", "11", "13"].map((day) => `2026-07-${day}`));
  expect(packingOf(facts, { ...span, sitterEvery: 1 }).feedOn).toHaveLength(14);
});

test("each number of the three ways is a figure with inputs; bands lie in order", () => {
  const at = (days: number) => new Date(Date.parse(today) + days * 86_400_000).toISOString().slice(0, 10);
  const away = { from: at(2), to: at(12), sitterEvery: 2 };
  const { output, figures } = holidayOf(facts, away, { members: 4, seed: 1 });
  const ids = new Set(figures.map(({ id }) => id));
  expect(output.days).toBe(10);
  for (const way of output.ways)
    for (const told of [way.nitrate, way.phosphate, way.ammonia, way.film, way.lost])
      expect(ids.has(told.figure)).toBe(true);
  for (const { spread, working } of figures) {
    expect(spread.low).toBeLessThanOrEqual(spread.central);
    expect(spread.central).toBeLessThanOrEqual(spread.high);
    expect(working.inputs.length).toBeGreaterThan(0);
  }
  for (const { ammonia } of output.ways) expect(ammonia.text).toMatch(/^[a-z ]+, \d+ of 20$/);
});

test("what to do before stands before leaving, never in the past; ids stay", () => {
  const packing = packingOf(facts, span);
  const dates = holidayDates(span, packing, "2026-06-28");
  expect(dates.map(({ id, on }) => [id, on])).toEqual([
    ["holiday.rehearse", "2026-06-28"],
    ["holiday.pack", "2026-06-30"],
    ["holiday.ready", "2026-06-30"],
    ["holiday.home", "2026-07-15"],
  ]);
  for (const { do: sentence } of dates)
    expect(
      sentence
        .map((part) => (typeof part === "string" ? part : part.text))
        .join("")
        .split(/\s+/).length,
    ).toBeLessThanOrEqual(20);
});
