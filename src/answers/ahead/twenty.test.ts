import fc from "fast-check";
import { expect, test } from "vitest";
import { quantile } from "../../engine/numeric/quantile.ts";
import { twentyOf } from "./twenty.ts";

/** Courses that drift, cross and stand at nought: two hundred members by so many weeks. */
const anySheaf = fc
  .record({ seed: fc.integer({ min: 1, max: 1e6 }), weeks: fc.integer({ min: 1, max: 27 }) })
  .map(({ seed, weeks }) => {
    let state = seed;
    const random = () => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const values = new Float32Array(200 * weeks);
    for (let m = 0; m < 200; m += 1) {
      const start = random() < 0.1 ? 0 : random() * 10;
      const drift = (random() - 0.4) * 0.8;
      for (let week = 0; week < weeks; week += 1)
        values[m * weeks + week] = Math.max(0, start + drift * week + random());
    }
    return { weeks, values };
  });

test("twenty picked runs, counted on any day against any bound of the bands, agree with the whole to one run", () => {
  fc.assert(
    fc.property(anySheaf, ({ weeks, values }) => {
      const picked = twentyOf({ weeks, values });
      expect(new Set(picked).size).toBe(20);
      for (let week = 0; week < weeks; week += 1) {
        const at = (m: number) => values[m * weeks + week]!;
        const all = Array.from({ length: 200 }, (_, m) => at(m));
        for (const share of [0.05, 0.25, 0.5, 0.75, 0.95]) {
          const limit = quantile(all, share);
          const below = picked.filter((m) => at(m) < limit).length;
          const upTo = picked.filter((m) => at(m) <= limit).length;
          expect(Math.max(share * 20 - upTo, below - share * 20)).toBeLessThanOrEqual(1);
        }
      }
    }),
    { numRuns: 25 },
  );
});

test("of twenty members or fewer all are shown, in their order", () => {
  expect(twentyOf({ weeks: 1, values: Float32Array.from([3, 1, 2]) })).toEqual([0, 1, 2]);
});
