/** Duties around a time away: none is left in it but what can't wait, none is lost, ids stay through corrections. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays } from "../../contract/quantity/calendar.ts";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import type { Away, Ordered, TankRecord } from "../../engine/types/record.ts";
import { comingDates } from "../errands/coming-dates.ts";
import { absencesAhead, type KeptAbsence } from "../holiday/absences.ts";
import { absenceAdvice, sitterCare } from "../holiday/advice.ts";
import { absenceDates } from "../holiday/care-dates.ts";
import { plain } from "../sentence.ts";
import { aroundAbsences, cantWait } from "./around.ts";
import { CARE_KINDS, type CareDate } from "./care-date.ts";
import { issueOf } from "./issue.ts";

const TODAY = "2026-06-15";
const away = (change: Partial<KeptAbsence> = {}): KeptAbsence => ({
  ...{ key: "e1", entry: "e1", from: "2026-07-01", to: "2026-07-15" },
  ...{ fedBy: "sitter", sitterEvery: 2, portions: null },
  ...change,
});
const duty = (on: string, change: Partial<CareDate> = {}): CareDate => ({
  ...{ id: "glass", kind: "glass", on, at: null, every: null, until: null, gate: null },
  ...{ do: ["Wipe the pane."], why: [], byWhen: ["Then."], wouldChange: [], figures: [], restsOn: "r" },
  ...{ done: null, leads: null },
  ...change,
});
/** Days that a duty falls on, to a last one. */
const daysOf = ({ on, every, until }: CareDate, last: string): string[] => {
  const days: string[] = [];
  for (let day = on; day <= (until ?? last) && day <= last; day = addDays(day, every ?? 9999)) days.push(day);
  return days;
};

describe("moved", () => {
  test("a test to the last day at home, a count to the day of coming back, a gate to the day after", () => {
    const on = "2026-07-05";
    const [tested, counted, gate] = (["test", "count", "wave"] as const).map(
      (kind) => aroundAbsences([duty(on, { id: kind, kind })], [away()], TODAY)[0],
    );
    expect([tested?.on, counted?.on, gate?.on]).toEqual(["2026-06-30", "2026-07-15", "2026-07-16"]);
    expect(plain(tested?.byWhen ?? [])).toBe(
      "Before you leave, 30 Jun 2026: 5 Jul 2026 falls into your time away.",
    );
  });

  test("once under way, all of it waits for the day of coming back", () => {
    const [tested] = aroundAbsences([duty("2026-07-05", { id: "t", kind: "test" })], [away()], "2026-07-05");
    expect(tested?.on).toBe("2026-07-15");
  });

  test("a series stops two days before the last care at home, and goes on after as another", () => {
    const moved = aroundAbsences([duty("2026-06-16", { every: 5 })], [away()], TODAY);
    expect(moved.map(({ id, on, every, until }) => [id, on, every, until])).toEqual([
      ["glass", "2026-06-16", 5, "2026-06-26"],
      ["glass.after.e1", "2026-07-15", 5, null],
    ]);
  });

  test("what can't wait stays, and says who does it", () => {
    const righting = duty("2026-06-15", { id: "righting", kind: "righting", every: 3 });
    const [stays] = aroundAbsences([righting], [away()], TODAY);
    expect([stays?.on, stays?.every]).toEqual(["2026-06-15", 3]);
    expect(plain(stays?.why.at(-1) ?? [])).toMatch(/can't wait while you are away.*sheet for the sitter/);
    const [alone] = aroundAbsences([righting], [away({ fedBy: "nobody" })], TODAY);
    expect(plain(alone?.why.at(-1) ?? [])).toMatch(/nobody comes: find somebody/);
    expect(cantWait([righting, duty("2026-07-05")], away())).toEqual([righting]);
  });

  test("whatever the duty: no day within but of what can't wait, no id twice, none earlier than today", () => {
    const LAST = "2026-10-01";
    const anyDuty = fc.record({
      kind: fc.constantFrom(...CARE_KINDS),
      days: fc.integer({ min: 0, max: 40 }),
      every: fc.option(fc.integer({ min: 1, max: 20 }), { nil: null }),
      lasts: fc.option(fc.integer({ min: 0, max: 60 }), { nil: null }),
    });
    const anyAway = fc.record({
      in: fc.integer({ min: -10, max: 30 }),
      days: fc.integer({ min: 1, max: 42 }),
    });
    fc.assert(
      fc.property(
        fc.array(anyDuty, { maxLength: 8 }),
        fc.array(anyAway, { maxLength: 2 }),
        (duties, gone) => {
          const dates = duties.map(({ kind, days, every, lasts }, i) => {
            const on = addDays(TODAY, days);
            const until = every === null || lasts === null ? null : addDays(on, lasts);
            return duty(on, { id: `d${i}`, kind, every, until });
          });
          const absences = gone
            .map((one, i) =>
              away({ key: `e${i}`, from: addDays(TODAY, one.in), to: addDays(TODAY, one.in + one.days) }),
            )
            .filter(({ to }) => to > TODAY)
            // Two that overlap are one time away, told twice.
            .filter((one, i, all) => i === 0 || all[0]!.to < one.from || one.to < all[0]!.from)
            .toSorted((a, b) => a.from.localeCompare(b.from));
          const moved = aroundAbsences(dates, absences, TODAY);
          expect(new Set(moved.map(({ id }) => id)).size).toBe(moved.length);
          const waits = new Set(["righting", "medicine", "quarantine", "holiday", "arrival"]);
          for (const one of moved) {
            expect(one.on >= TODAY).toBe(true);
            if (one.until !== null) expect(one.until >= one.on).toBe(true);
            if (waits.has(one.kind)) continue;
            for (const day of daysOf(one, LAST))
              expect(absences.some(({ from, to }) => from <= day && day < to)).toBe(false);
          }
          for (const { id } of dates.filter(({ until, every }) => until === null && every === null))
            expect(moved.some((one) => one.id === id)).toBe(true);
        },
      ),
    );
  });
});

const kept = (change: Partial<Away> = {}): Away => ({
  ...{ entry: "0198-a", on: "2026-06-10", from: "2026-07-01", to: "2026-07-15" },
  ...{ fedBy: "sitter", everyDays: 2, portions: 6 },
  ...change,
});
const scene = (today: string, absence: Partial<Away> = {}, more: Partial<TankRecord> = {}) => ({
  facts: referenceTank({ asOf: today, present: [{ id: "astraea-snail", count: 4, on: null }] }),
  record: {
    ...{ observations: [], happenings: [], declined: [], asOf: today, absences: [kept(absence)] },
    ...more,
  },
  today,
});

describe("dates of a time away", () => {
  const dates = (today: string, absence: Partial<Away> = {}) =>
    absenceDates(scene(today, absence)).map(({ id, on }) => [id.replace("holiday.0198-a.", ""), on]);

  test("before it, in it, after it", () => {
    expect(dates(TODAY)).toEqual([
      ["rehearse", "2026-06-24"],
      ["pack", "2026-06-30"],
      ["ready", "2026-06-30"],
      ["home", "2026-07-15"],
      ["visit", "2026-07-03"],
    ]);
    expect(dates("2026-07-04")).toEqual([
      ["home", "2026-07-15"],
      ["visit", "2026-07-05"],
    ]);
    expect(dates("2026-07-17")).toEqual([["home", "2026-07-17"]]);
    expect(dates("2026-07-23")).toEqual([]);
    expect(dates(TODAY, { fedBy: "nobody" }).map(([id]) => id)).toEqual(["rehearse", "ready", "home"]);
  });

  test("coming back is done once heads were counted", () => {
    const counted = {
      ...{
        kind: "heads" as const,
        entry: "h",
        on: "2026-07-15",
        animal: "astraea-snail",
        seen: 4,
        about: false,
      },
      ...{ hoursFromLightsOut: null, torch: null, foodOffered: null },
    } as const;
    expect(absenceDates(scene("2026-07-16", {}, { observations: [counted] }))).toEqual([]);
  });

  test("corrected, moved, withdrawn: a calendar's events keep their names, none doubles, none stays behind", () => {
    const moment = (today: string) => ({ today, now: `${today}T08:00:00Z`, zone: "Europe/London" });
    const first = issueOf(absenceDates(scene(TODAY)), [], moment(TODAY));
    const moved = scene("2026-06-16", { from: "2026-07-03", to: "2026-07-20" });
    const second = issueOf(absenceDates(moved), first.events, moment("2026-06-16"));
    expect(second.events.map(({ care }) => care)).toEqual(first.events.map(({ care }) => care));
    expect(second.events.every(({ sequence, cancelled }) => sequence === 1 && !cancelled)).toBe(true);
    const none = issueOf([], second.events, moment("2026-06-17"));
    expect(none.events.every(({ cancelled, sequence }) => cancelled && sequence === 2)).toBe(true);
    const again = issueOf(absenceDates(moved), none.events, moment("2026-06-18"));
    expect(again.events.map(({ care, cancelled }) => [care, cancelled])).toEqual(
      first.events.map(({ care }) => [care, false]),
    );
  });
});

describe("advice", () => {
  test("none while it is far; prepare within eight days; today on the day before; then whoever stands in", () => {
    const said = (today: string) =>
      absenceAdvice(scene(today)).map(({ urgency, do: deed }) => [urgency, plain(deed)]);
    expect(said(TODAY)).toEqual([]);
    expect(said("2026-06-24")).toEqual([
      ["this_week", "Prepare to leave on 1 Jul 2026: portions packed, the sitter shown the tank."],
    ]);
    expect(said("2026-06-30")[0]?.[0]).toBe("today");
    expect(said("2026-07-05")[0]?.[1]).toMatch(/^Leave the tank to the sitter until 15 Jul 2026/);
    expect(said("2026-07-15")).toEqual([]);
  });

  test("what can't wait stands on the sheet", () => {
    const [absence] = absencesAhead(scene(TODAY));
    expect(sitterCare(scene(TODAY), absence!).map(({ id }) => id)).toEqual(["righting"]);
  });
});

test("animals that should come meanwhile: the shop is asked for another day, at once", () => {
  const placed: Ordered = {
    ...{ entry: "o", on: "2026-06-12", step: "placed", animal: "dwarf-cerith", heads: 3, wave: 1 },
    expectedOn: "2026-07-04",
  };
  const [coming] = comingDates(scene(TODAY, {}, { orders: [placed] }));
  expect([coming?.id, coming?.on]).toEqual(["order.dwarf-cerith", TODAY]);
  expect(plain(coming?.do ?? [])).toBe(
    "Ask the shop to send 3 dwarf ceriths after 15 Jul 2026: you are away when they should come.",
  );
});
