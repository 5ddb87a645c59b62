/** Arithmetic of dated care against closed forms and plain loops. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { FilmBack, TankRecord } from "../../types/record.ts";
import { grownFilmDays, measuredFilmDays } from "./film-days.ts";
import { daysToShare, sharedBack } from "./filter-days.ts";
import { earliestMeeting, MOST_DAYS, testAgainIn } from "./test-days.ts";
import { daysToLimit, incomePerDay, longestBetweenChanges, peakBeforeChange } from "./water-change-days.ts";

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("what a filter gives back is that of a pool filled and decaying hour by hour", () => {
  for (const [k, days] of [
    [0.3, 3],
    [0.1, 7],
    [0.7, 14],
  ] as const) {
    const steps = 40_000;
    const dt = days / steps;
    let held = 0;
    for (let i = 0; i < steps; i++) held += (1 - k * held) * dt;
    expect(sharedBack(k, days)).toBeCloseTo(1 - held / days, 3);
  }
});

test("the days of a share give that share, and more days give more back", () => {
  fc.assert(
    fc.property(positive(0.01, 2), positive(0.01, 0.95), (k, share) => {
      const days = daysToShare(k, share);
      expect(sharedBack(k, days)).toBeCloseTo(share, 9);
      expect(sharedBack(k, days * 1.5)).toBeGreaterThan(share);
    }),
  );
  expect(() => daysToShare(0.3, 1)).toThrow(RangeError);
});

test("changed that often, the level settles at the limit and never above", () => {
  fc.assert(
    fc.property(
      positive(0.05, 0.5),
      positive(0, 1),
      positive(0.01, 2),
      positive(5, 50),
      (share, newWater, income, limit) => {
        const every = longestBetweenChanges({ limit, newWater, share, income });
        let level = newWater;
        let peak = 0;
        for (let round = 0; round < 400; round++) {
          peak = level + income * every;
          level = peak - share * (peak - newWater);
        }
        expect(peak).toBeCloseTo(limit, 6);
        expect(peakBeforeChange({ newWater, share, income }, every)).toBeCloseTo(limit, 9);
      },
    ),
  );
  expect(longestBetweenChanges({ limit: 5, newWater: 0, share: 0.1, income: 0 })).toBe(
    Number.POSITIVE_INFINITY,
  );
  expect(longestBetweenChanges({ limit: 5, newWater: 6, share: 0.1, income: 1 })).toBe(0);
});

test("income is found again behind the changes that hid it", () => {
  // A level held at 10 by a change of 10 % every 10 days, new water without: 0.1 a day comes in.
  const held = { level: 10, perDay: 0, shares: [0.1, 0.1, 0.1], days: 30, newWater: 0 };
  expect(incomePerDay(held)).toBeCloseTo(0.1, 12);
  expect(incomePerDay({ ...held, shares: [] })).toBe(0);
  expect(daysToLimit(10, 40, 0.1)).toBeCloseTo(300, 9);
  expect(daysToLimit(41, 40, 0.1)).toBe(0);
});

test("a test is due at half the time in which a limit could be met", () => {
  const level = { low: 18, central: 20, high: 22 };
  const rising = { low: 0.2, central: 0.5, high: 0.9 };
  const met = earliestMeeting({ today: level, perDay: rising, above: 40, below: null });
  expect(met).toBeCloseTo(20, 9);
  expect(testAgainIn(met)).toBe(10);
  expect(testAgainIn(earliestMeeting({ today: level, perDay: rising, above: 21, below: null }))).toBe(1);
  const falling = { low: -0.9, central: -0.5, high: -0.2 };
  expect(testAgainIn(earliestMeeting({ today: level, perDay: falling, above: 40, below: null }))).toBe(
    MOST_DAYS,
  );
  expect(testAgainIn(earliestMeeting({ today: level, perDay: falling, above: 40, below: 9 }))).toBe(5);
});

test("a wider doubt never puts a test off", () => {
  fc.assert(
    fc.property(
      positive(0, 30),
      positive(0, 5),
      positive(0, 5),
      positive(0, 2),
      (level, half, more, slope) => {
        const perDay = { low: -slope, central: 0, high: slope };
        const at = (w: number) => ({ low: level - w, central: level, high: level + w });
        const narrow = testAgainIn(earliestMeeting({ today: at(half), perDay, above: 40, below: null }));
        const wide = testAgainIn(earliestMeeting({ today: at(half + more), perDay, above: 40, below: null }));
        expect(wide).toBeLessThanOrEqual(narrow);
      },
    ),
  );
});

const back = (on: string, days: number): FilmBack => ({ kind: "film_back", entry: on, on, days });
const record = (...observations: FilmBack[]): TankRecord => ({
  ...{ observations, happenings: [], declined: [], asOf: "2026-06-15" },
});

test("days to film are those logged lately, two at least", () => {
  expect(measuredFilmDays(record(back("2026-06-01", 4)))).toBeNull();
  expect(measuredFilmDays(record(back("2025-06-01", 9), back("2026-06-01", 4)))).toBeNull();
  const logged = measuredFilmDays(
    record(back("2026-05-20", 3), back("2026-05-27", 5), back("2026-06-01", 4)),
  );
  expect(logged?.days).toEqual({ low: 3, central: 4, high: 5 });
});

test("film that is eaten as fast as it grows does not come back", () => {
  const pane = { areaM2: 0.5, cropMgCPerM2: 200 };
  expect(grownFilmDays({ ...pane, netMgCPerDay: { low: -30, central: -20, high: -5 } })).toBeNull();
  const days = grownFilmDays({ ...pane, netMgCPerDay: { low: 10, central: 40, high: 100 } });
  expect(days).toEqual({ low: 2, central: 5, high: 20 });
});
