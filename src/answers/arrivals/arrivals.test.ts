/** Quarantine, fallow and their days: dated by the daybook, closed by its end, never shorter than told. */
import { describe, expect, test } from "vitest";
import { addDays } from "../../contract/quantity/calendar.ts";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import type { KeptApart, TankRecord } from "../../engine/types/record.ts";
import { plain } from "../sentence.ts";
import { whatIf } from "../what-if.ts";
import { arrivalAdvice, arrivalDates } from "./apart-dates.ts";
import { BEFORE_PAYING } from "./before-paying.ts";
import { apartIn, FALLOW_DAYS, QUARANTINED, quarantineDays, quarantinedAs } from "./quarantine.ts";

const TODAY = "2026-06-15";
const apart = (what: KeptApart["what"], step: KeptApart["step"], daysAgo: number, words = ""): KeptApart => ({
  ...{ kind: "apart", what, step, words, entry: `${what} ${step} ${daysAgo}`, on: addDays(TODAY, -daysAgo) },
});
const scene = (...happenings: KeptApart[]) => {
  const record: TankRecord = { observations: [], happenings, declined: [], asOf: TODAY };
  return { facts: referenceTank({ asOf: TODAY }), record, today: TODAY };
};

describe("who is apart", () => {
  test.each([
    ["2 clownfish", "fish"],
    ["a strange wrasse", "fish"],
    ["3 trochus snails", "invertebrates"],
    ["coral frags", "corals"],
    ["", "fish"],
  ] as const)('"%s" as %s', (words, group) => expect(quarantinedAs(words)).toBe(group));

  test("an end closes the one it names, or the latest", () => {
    const two = [
      apart("quarantine", "started", 20, "2 clownfish"),
      apart("quarantine", "started", 5, "3 snails"),
    ];
    expect(apartIn(scene(...two).record)).toHaveLength(2);
    const named = scene(...two, apart("quarantine", "ended", 1, "2 clownfish"));
    expect(apartIn(named.record).map(({ words }) => words)).toEqual(["3 snails"]);
    const unnamed = scene(...two, apart("quarantine", "ended", 1));
    expect(apartIn(unnamed.record).map(({ words }) => words)).toEqual(["2 clownfish"]);
    // a fallow time is no quarantine
    expect(apartIn(scene(...two, apart("fallow", "ended", 1)).record)).toHaveLength(2);
  });
});

describe("dates", () => {
  test("a fish: day three, then the end; past day three only the end", () => {
    const ids = (daysAgo: number) =>
      arrivalDates(scene(apart("quarantine", "started", daysAgo, "clownfish")));
    expect(ids(1).map(({ on }) => on)).toEqual([addDays(TODAY, 2), addDays(TODAY, 41)]);
    expect(ids(10).map(({ on }) => on)).toEqual([addDays(TODAY, 32)]);
    // overdue is due today
    expect(ids(99).map(({ on }) => on)).toEqual([TODAY]);
  });

  test("a fallow time ends no sooner than told, and its id is the same every day", () => {
    const [date] = arrivalDates(scene(apart("fallow", "started", 6)));
    expect(date?.on).toBe(addDays(TODAY, FALLOW_DAYS - 6));
    expect(date?.id).toMatch(/^fallow\.[\w-]+\.end$/);
  });

  test("every plan is in order of days, begins on the first and ends on its last", () => {
    for (const [group, { days }] of Object.entries(QUARANTINED)) {
      const rows = quarantineDays(group as keyof typeof QUARANTINED, TODAY);
      expect(rows.map(({ day }) => day)).toEqual(rows.map(({ day }) => day).toSorted((a, b) => a - b));
      expect([rows[0]?.day, rows.at(-1)?.day]).toEqual([0, days]);
    }
  });
});

test("advice: a verb, twenty words at most, and day three asks whether it has eaten", () => {
  const [advice] = arrivalAdvice(scene(apart("quarantine", "started", 3, "clownfish")));
  expect(plain(advice!.do)).toMatch(/^Look whether clownfish has eaten/);
  expect(advice?.urgency).toBe("today");
  expect(plain(advice!.do).split(" ").length).toBeLessThanOrEqual(20);
});

test("invertebrates: no line of their plan puts medicine or fresh water on them", () => {
  for (const { do: words } of quarantineDays("invertebrates", TODAY))
    expect(words).not.toMatch(/copper bath|fresh water/i);
  expect(quarantineDays("invertebrates", TODAY)[0]?.do).toMatch(/without copper/);
});

test("before paying: every group says when to leave it", () => {
  for (const { look, leave } of BEFORE_PAYING) {
    expect(look.length).toBeGreaterThan(1);
    expect(leave).toMatch(/^Leave/);
  }
});

test("a fallow tank: nothing fed, no fish, the crew as it is, and no wave comes", () => {
  const facts = referenceTank({ present: [{ id: "trochus-snail", count: 3, on: null }] });
  const change = whatIf({ fallow: "76 d" }, facts)!;
  expect(change.facts.feedGPerDay.central).toBe(0);
  expect(change.facts.fishWetG.central).toBe(0);
  expect(change.facts.present).toEqual(facts.present);
  expect(change.events).toContainEqual({ t: 0, kind: "set", fish: 0, feed: 0 });
  expect(change.withoutWaves).toBe(true);
});
