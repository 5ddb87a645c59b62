/** Demand found again in invented tanks: whatever was dosed, with the noise of a test, and never more sure than it is. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { RandomStream } from "../numeric/random.ts";
import type { Point } from "../trends/series.ts";
import { type Dosed, demandOf } from "./demand.ts";

const STEP = 0.1;
const point = (day: number, value: number): Point => ({
  ...{ day, on: "2026-01-01", low: value - STEP / 2, high: value + STEP / 2, value },
  ...{ censored: null, danger: false, entries: [] },
});
const rounded = (value: number) => Math.round(value / STEP) * STEP;

/** A tank that takes `demand` a day, read every other day with a scatter of 0.15. */
function tank(demand: number, dosed: readonly Dosed[], everyDay: number, seed: number, readings = 12) {
  const random = new RandomStream(seed);
  const points = Array.from({ length: readings }, (_, i) => {
    const day = -2 * (readings - 1 - i);
    const from = -2 * (readings - 1);
    const given = dosed.reduce((sum, dose) => sum + (dose.day >= from && dose.day < day ? dose.rise : 0), 0);
    const noise = 0.15 * (random.uniform() + random.uniform() + random.uniform() - 1.5) * 2;
    return point(day, rounded(8 + (everyDay - demand) * (day - from) + given + noise));
  });
  return { series: { points, step: STEP }, dosed, everyDay, seed };
}

describe("a demand that is known", () => {
  test("lies in the interval about 9 times of 10, whatever was dosed", () => {
    let inside = 0;
    for (let seed = 1; seed <= 120; seed += 1) {
      const dosed = seed % 2 === 0 ? [{ day: -9, rise: 1.5 }] : [];
      const found = demandOf(tank(0.3, dosed, seed % 3 === 0 ? 0.25 : 0, seed));
      if (found.kind !== "told") throw new Error("not told");
      if (found.perDay.low <= 0.3 && found.perDay.high >= 0.3) inside += 1;
    }
    expect(inside / 120).toBeGreaterThan(0.85);
  });

  test("what was dosed counts: left out, the same readings would say nothing was taken", () => {
    const asked = tank(0.3, [], 0.3, 7);
    const found = demandOf(asked);
    const forgotten = demandOf({ ...asked, everyDay: 0 });
    if (found.kind !== "told" || forgotten.kind !== "told") throw new Error("not told");
    expect(found.perDay.central).toBeCloseTo(0.3, 1);
    expect(forgotten.perDay.low).toBeLessThan(0);
    expect(found.perDay.central - forgotten.perDay.central).toBeCloseTo(0.3, 9);
    expect(found.dosedPerDay).toBeCloseTo(0.3, 9);
  });
});

test("doses that are dated and the same doses every day are one", () => {
  fc.assert(
    fc.property(
      // Of 64ths, whose sums are exact: an interval's end may jump where two readings only touch.
      fc.integer({ min: 0, max: 64 }).map((n) => n / 64),
      fc.integer({ min: 1, max: 1000 }),
      (rise, seed) => {
        const { series } = tank(0.4, [], 0.4, seed);
        const dated = Array.from({ length: 22 }, (_, i) => ({ day: -22 + i, rise }));
        const one = demandOf({ series, dosed: dated, everyDay: 0, seed });
        const other = demandOf({ series, dosed: [], everyDay: rise, seed });
        if (one.kind !== "told" || other.kind !== "told") throw new Error("not told");
        expect(one).toEqual(other);
      },
    ),
    { numRuns: 200 },
  );
});

test("few readings, or readings close together, are not enough", () => {
  const of = (...days: number[]) =>
    demandOf({
      series: { points: days.map((day) => point(day, 8)), step: STEP },
      ...{ dosed: [], everyDay: 0, seed: 1 },
    });
  expect(of()).toEqual({ kind: "not_enough", days: 0, spanDays: 0 });
  expect(of(-9, -5, 0).kind).toBe("not_enough");
  expect(of(-2, -2, -1, 0).kind).toBe("not_enough");
  expect(of(-9, -6, -3, 0).kind).toBe("told");
});
