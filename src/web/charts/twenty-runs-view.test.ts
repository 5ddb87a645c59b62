import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type RunsFacts,
  runsCount,
  runsDrawn,
  runsFinding,
  runsRows,
  runsSteps,
} from "./twenty-runs-view.ts";

const WEEKS = ["2026-06-15", "2026-06-22", "2026-06-29", "2026-07-06", "2026-07-13"];
const PLACE = { left: 40, right: 500, top: 30, bottom: 300, stack: 150, grain: 13 };

const facts = (over: Partial<RunsFacts> = {}): RunsFacts => ({
  name: "nitrate",
  unit: "mg/L",
  weeks: WEEKS,
  runs: Array.from({ length: 20 }, (_, run) => WEEKS.map((_, week) => 10 + run * 0.25 * week)),
  readings: [{ date: "2026-06-01", low: 7.5, high: 12.5 }],
  limit: { value: 12, words: "a line" },
  asked: 4,
  ...over,
});

const anyFacts = fc
  .tuple(
    fc.array(fc.array(fc.double({ min: 0, max: 900, noNaN: true }), { minLength: 5, maxLength: 5 }), {
      minLength: 20,
      maxLength: 20,
    }),
    fc.option(fc.double({ min: 0.001, max: 900, noNaN: true })),
    fc.nat(4),
  )
  .map(([runs, limit, asked]) =>
    facts({ runs, limit: limit === null ? null : { value: limit, words: "a line" }, asked }),
  );

test("both sides of the line add up to twenty, and a value on the line keeps it", () => {
  expect(runsCount(facts())).toEqual({ above: 17, below: 3 });
  expect(runsFinding(facts())).toBe("nitrate is above 12 mg/L on 13 Jul 2026: usually, 17 of 20");
  expect(runsFinding(facts({ limit: { value: 30, words: "" } }))).toBe(
    "nitrate is at or under 30 mg/L on 13 Jul 2026: nearly always, 20 of 20",
  );
  fc.assert(
    fc.property(anyFacts, (any) => {
      const { above, below } = runsCount(any);
      expect(above + below).toBe(20);
    }),
  );
});

test("twenty grains are drawn, each on its value's side of the line, within the room for them", () => {
  fc.assert(
    fc.property(anyFacts, (any) => {
      const { grains, limitY } = runsDrawn(any, PLACE, 1);
      expect(grains).toHaveLength(20);
      expect(grains.filter(({ above }) => above)).toHaveLength(runsCount(any).above);
      for (const { x, y, above } of grains) {
        if (limitY !== null) expect(y < limitY).toBe(above);
        expect(x).toBeGreaterThan(PLACE.right);
        expect(x).toBeLessThanOrEqual(PLACE.right + 16 + PLACE.stack);
      }
      // No two lie on each other.
      expect(new Set(grains.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`)).size).toBe(20);
    }),
  );
});

test("a reading's tick is as high as its test's step, left of today", () => {
  const { readings, todayX, yTicks } = runsDrawn(facts(), PLACE, 1);
  const perUnit = (yTicks[0]!.y - yTicks.at(-1)!.y) / Number(yTicks.at(-1)!.words);
  expect(readings[0]!.bottom - readings[0]!.top).toBeCloseTo(5 * perUnit, 6);
  expect(readings[0]!.x).toBeLessThan(todayX);
});

test("steps and table tell the same counts as the drawing", () => {
  expect(runsSteps(facts())).toHaveLength(WEEKS.length);
  expect(runsSteps(facts())[4]!.text).toBe(
    "10 of 20 runs between 15 and 24 mg/L; above 12: usually, 17 of 20",
  );
  expect(runsRows(facts()).map(({ date, above }) => [date, above])).toEqual([
    ["15 Jun 2026", "0 of 20"],
    ["13 Jul 2026", "17 of 20"],
  ]);
});
