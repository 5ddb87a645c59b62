/**
 * A calendar that is given again and again while the tank changes: at no time does it hold a duty twice, keep one that no
 * longer holds, or lack one that does. The calendar here is a plain one: it takes what a parser reads from the file, the
 * higher number over the lower, and takes out what is cancelled. Duties come, go, move, change and come back by chance;
 * some files are never taken.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { CareDate } from "../../src/answers/almanac/care-date.ts";
import { calendarEventOf, type GivenEvent, issueOf } from "../../src/answers/almanac/issue.ts";
import { calendarFileText } from "../../src/contract/calendar/file.ts";
import { addDays } from "../../src/contract/quantity/calendar.ts";
import { byIcalJs, byTsIcs, faultsOf, type ParsedEvent } from "./kit/parsers.ts";

const NAMES = ["glass", "filter", "water_change", "test.no3_mg_per_l", "wave.2", "count.trochus-snail"];
const uidOf = (care: string) => `${care}.tank-1`;

const anyDuty = fc.record({
  id: fc.constantFrom(...NAMES),
  inDays: fc.integer({ min: 0, max: 40 }),
  every: fc.option(fc.integer({ min: 1, max: 30 })),
  at: fc.option(fc.constantFrom("07:00", "19:30", "02:30")),
  lasts: fc.option(fc.integer({ min: 0, max: 60 })),
  words: fc.constantFrom("Do it.", "Do it, then; rest.", "Do it 🐌"),
  rests: fc.constantFrom("a", "b"),
});
type Duty = typeof anyDuty extends fc.Arbitrary<infer T> ? T : never;

const careOf = ({ id, inDays, every, at, lasts, words, rests }: Duty, today: string): CareDate => ({
  ...{ id, kind: "look", on: addDays(today, inDays), at, every, gate: null },
  until: every === null || lasts === null ? null : addDays(today, inDays + lasts),
  ...{ do: [words], why: [["Because."]], byWhen: ["Some day."], wouldChange: ["A reading."] },
  ...{ figures: [], restsOn: rests, done: null, leads: null },
});

/** What somebody's calendar holds. */
class Calendar {
  readonly held = new Map<string, ParsedEvent>();
  take(text: string): void {
    for (const event of byIcalJs(text)) {
      const had = this.held.get(event.uid);
      if (had !== undefined && had.sequence > event.sequence) continue;
      if (event.cancelled) this.held.delete(event.uid);
      else this.held.set(event.uid, event);
    }
  }
  /** Events with something still to come. */
  ahead(today: string): string[] {
    return [...this.held.values()]
      .filter(({ occurrences }) => occurrences.some((at) => at.slice(0, 10) > addDays(today, 1)))
      .map(({ uid }) => uid)
      .sort();
  }
}

const anyStep = fc.record({
  days: fc.integer({ min: 0, max: 25 }),
  duties: fc.uniqueArray(anyDuty, { selector: ({ id }) => id, maxLength: 6 }),
  taken: fc.boolean(),
});
type Step = typeof anyStep extends fc.Arbitrary<infer T> ? T : never;
/** A series that was made a single day and then withdrawn: who has the series must still be told. */
const WITHDRAWN: Step[] = [1, null, undefined, undefined, undefined].map((every, i) => ({
  ...{ days: i === 2 ? 1 : 0, taken: i === 0 },
  duties:
    every === undefined
      ? []
      : [{ id: "glass", inDays: 0, every, at: null, lasts: null, words: "Do it.", rests: "a" }],
}));
const ZONES = ["Europe/Berlin", "America/New_York", "Australia/Lord_Howe", null] as const;

test("regenerated after changes by chance: none twice, none orphaned, none missing", () => {
  let regenerations = 0;
  fc.assert(
    fc.property(
      fc.array(anyStep, { minLength: 5, maxLength: 9 }),
      fc.constantFrom(...ZONES),
      (steps, zone) => {
        const ledger = new Map<string, GivenEvent>();
        const calendar = new Calendar();
        let today = "2026-02-20";
        steps.forEach(({ days, duties, taken }, i) => {
          today = addDays(today, days);
          regenerations += 1;
          const now = `${today}T08:00:00.000Z`;
          const dates = duties.map((duty) => careOf(duty, today));
          const { events, fresh } = issueOf(dates, [...ledger.values()], { today, now, zone });
          for (const one of fresh) ledger.set(one.care, one);
          const text = calendarFileText({
            ...{ name: "Reef", refreshHours: null },
            events: events.map((one) => calendarEventOf(one, uidOf)),
          });
          expect(faultsOf(text)).toEqual([]);
          const read = byIcalJs(text);
          expect(new Set(read.map(({ uid }) => uid)).size).toBe(read.length);
          expect(byTsIcs(text).map(({ uid, sequence, cancelled }) => [uid, sequence, cancelled])).toEqual(
            read.map(({ uid, sequence, cancelled }) => [uid, sequence, cancelled]),
          );
          // Every duty stands once, on no later day than it is due.
          const standing = read.filter(({ cancelled }) => !cancelled);
          expect(standing.map(({ uid }) => uid).sort()).toEqual(duties.map(({ id }) => uidOf(id)).sort());
          // Who takes this file, having skipped as many as they like, holds what holds and nothing else that is to come.
          if (taken || i === steps.length - 1) {
            calendar.take(text);
            const holds = new Set(duties.map(({ id }) => uidOf(id)));
            expect(calendar.ahead(today).filter((uid) => !holds.has(uid))).toEqual([]);
            expect(duties.map(({ id }) => uidOf(id)).filter((uid) => !calendar.held.has(uid))).toEqual([]);
          }
          // Given again at once, it is the same file.
          const again = issueOf(dates, [...ledger.values()], { today, now: `${today}T09:00:00.000Z`, zone });
          expect(again.fresh).toEqual([]);
          expect(again.events).toEqual(events);
        });
      },
    ),
    { numRuns: 40, examples: [[WITHDRAWN, "Europe/Berlin"]] },
  );
  expect(regenerations).toBeGreaterThan(200);
});

const duty = (change: Partial<Duty>, today: string): CareDate =>
  careOf(
    { id: "glass", inDays: 3, every: null, at: null, lasts: null, words: "Do it.", rests: "a", ...change },
    today,
  );
const moment = (today: string) => ({ today, now: `${today}T08:00:00.000Z`, zone: null });

test("a day that was given is not put off while nothing behind it has changed", () => {
  const first = issueOf([duty({ inDays: 7 }, "2026-06-01")], [], moment("2026-06-01"));
  // A week from today, each day anew.
  const next = issueOf([duty({ inDays: 7 }, "2026-06-02")], first.events, moment("2026-06-02"));
  expect(next.events[0]?.event.on).toBe("2026-06-08");
  expect(next.fresh).toEqual([]);
  // Past and not done: due today.
  const late = issueOf([duty({ inDays: 0 }, "2026-06-10")], first.events, moment("2026-06-10"));
  expect(late.events[0]).toMatchObject({ sequence: 1, event: { on: "2026-06-10" } });
  // What it rests on changed: the new day counts.
  const moved = issueOf([duty({ inDays: 7, rests: "b" }, "2026-06-02")], first.events, moment("2026-06-02"));
  expect(moved.events[0]).toMatchObject({ sequence: 1, event: { on: "2026-06-09" } });
});

test("a series is not given anew each day, and reaches on before it ends", () => {
  let given: readonly GivenEvent[] = [];
  let changes = 0;
  for (let day = 0; day < 365; day++) {
    const today = addDays("2026-01-15", day);
    const { events, fresh } = issueOf([duty({ inDays: 0, every: 3 }, today)], given, moment(today));
    given = events;
    changes += fresh.length;
    expect(events[0]!.event.until! > addDays(today, 59)).toBe(true);
  }
  expect(changes).toBeLessThanOrEqual(4);
});

test("what no longer holds is cancelled until its last day is over, and can come back", () => {
  const first = issueOf([duty({}, "2026-06-01")], [], moment("2026-06-01"));
  const gone = issueOf([], first.events, moment("2026-06-02"));
  expect(gone.events[0]).toMatchObject({ cancelled: true, sequence: 1 });
  const back = issueOf([duty({}, "2026-06-03")], gone.events, moment("2026-06-03"));
  expect(back.events[0]).toMatchObject({ cancelled: false, sequence: 2 });
  expect(issueOf([], gone.events, moment("2026-06-05")).events).toEqual([]);
  // Done on its day: it stays where it was.
  expect(issueOf([], first.events, moment("2026-06-05")).events).toEqual([]);
});
