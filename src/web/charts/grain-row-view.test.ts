import fc from "fast-check";
import { expect, test } from "vitest";
import { grainCounts, grainFor, grainsDrawn, grainWords } from "./grain-row-view.ts";

const twenty = fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 20, maxLength: 20 });

test("a grain is sure with 18 of 20 runs, likely with 10, possible with 2", () => {
  // Two runs reach 1 ration, eight more 2, eight more 3, two 5.
  const runs = [
    ...Array(2).fill(1),
    ...Array(8).fill(2),
    ...Array(8).fill(3),
    ...Array(2).fill(5),
  ] as number[];
  expect(grainCounts(runs, 1)).toEqual({ sure: 2, likely: 1, possible: 2 });
  expect(grainWords({ sure: 2, likely: 1, possible: 2 })).toBe("2 sure, 1 likely, 2 possible");
});

test("a run has a grain from half of it on", () => {
  expect(grainCounts(Array(20).fill(2.5), 1).sure).toBe(3);
  expect(grainCounts(Array(20).fill(2.49), 1).sure).toBe(2);
  expect(grainCounts(Array(20).fill(0), 1)).toEqual({ sure: 0, likely: 0, possible: 0 });
  expect(grainWords({ sure: 0, likely: 0, possible: 0 })).toBe("none");
});

test("every drawn grain is had by as many runs as its kind says, and the next one by fewer", () => {
  fc.assert(
    fc.property(twenty, fc.double({ min: 0.5, max: 50, noNaN: true }), (runs, grain) => {
      const counts = grainCounts(runs, grain);
      const having = (nth: number) => runs.filter((run) => Math.floor(run / grain + 0.5) >= nth).length;
      if (counts.sure > 0) expect(having(counts.sure)).toBeGreaterThanOrEqual(18);
      expect(having(counts.sure + 1)).toBeLessThan(18);
      if (counts.likely > 0) expect(having(counts.sure + counts.likely)).toBeGreaterThanOrEqual(10);
      expect(having(counts.sure + counts.likely + 1)).toBeLessThan(10);
      if (counts.possible > 0) expect(having(grainsDrawn(counts))).toBeGreaterThanOrEqual(2);
      expect(having(grainsDrawn(counts) + 1)).toBeLessThan(2);
    }),
  );
});

test("the grain grows until the longest row fits, and is no larger than needed", () => {
  expect(grainFor([27], 16)).toEqual({ mgC: 2, words: "0.2 rations a day" });
  expect(grainFor([160], 16)).toEqual({ mgC: 10, words: "1 ration a day" });
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 50_000, noNaN: true }), { minLength: 1 }), (amounts) => {
      const { mgC } = grainFor(amounts, 16);
      expect(Math.floor(Math.max(...amounts) / mgC + 0.5)).toBeLessThanOrEqual(16);
    }),
  );
});

test("nineteen runs are refused", () => {
  expect(() => grainCounts(Array(19).fill(1), 1)).toThrow("twenty runs are needed, received 19");
});
