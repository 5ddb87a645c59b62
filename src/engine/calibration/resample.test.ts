/** Runs are weighed by how they agree with what was observed; those in another regime give way, never too many at once. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { runsThatAgree } from "./resample.ts";

const unit = (n: number) =>
  Array.from({ length: n }, (_, i) => Float64Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)));

/** Ten runs near what was seen, ten in another regime. */
const TWO_REGIMES = Float64Array.from({ length: 20 }, (_, m) => (m < 10 ? 0.1 * m - 0.5 : 6 + 0.1 * m));

test("runs of another regime give way to runs that agree, which keep their own rows", () => {
  const { share, rows } = runsThatAgree({
    ...{ predicted: [TWO_REGIMES], observed: Float64Array.of(0), errors: unit(1), most: 1, keep: 0.45 },
  });
  expect(share).toBe(1);
  expect(rows.every((row) => row < 10)).toBe(true);
  expect(rows.slice(0, 10)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
});

test("no more is taken than leaves enough runs a weight of their own", () => {
  const asked = { predicted: [TWO_REGIMES], observed: Float64Array.of(0), errors: unit(1), most: 1 };
  const some = runsThatAgree({ ...asked, keep: 0.75 });
  expect(some.share).toBeGreaterThan(0);
  expect(some.share).toBeLessThan(1);
  expect(new Set(some.rows).size).toBeGreaterThan(12);
  expect(runsThatAgree({ ...asked, keep: 0.9 }).share).toBeLessThan(some.share);
});

test("where all agree alike each stays where it is", () => {
  const { share, rows } = runsThatAgree({
    predicted: [new Float64Array(8).fill(3)],
    observed: Float64Array.of(1),
    ...{ errors: unit(1), most: 0.25, keep: 0.75 },
  });
  expect(share).toBe(0.25);
  expect(rows).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
});

test("weighed with a power of the likelihood, many runs have the mean and spread of the exact answer", () => {
  // Prior N(0, 1), one reading 1 with variance 1, half of it taken: N(1/3, 2/3).
  const runs = 4001;
  const prior = Float64Array.from({ length: runs }, (_, m) => -5 + (10 * m) / (runs - 1));
  // Evenly spaced runs stand for a normal prior if the prior is told as another observation.
  const { rows } = runsThatAgree({
    predicted: [prior, prior],
    observed: Float64Array.of(0, 1),
    errors: [Float64Array.of(0.5, 0), Float64Array.of(0, 1)],
    ...{ most: 0.5, keep: 0.1 },
  });
  const mean = rows.reduce((sum, row) => sum + prior[row]!, 0) / runs;
  const variance = rows.reduce((sum, row) => sum + (prior[row]! - mean) ** 2, 0) / runs;
  expect(mean).toBeCloseTo(1 / 3, 2);
  expect(variance).toBeCloseTo(2 / 3, 2);
});

test("whatever the runs: as many rows as runs, each a row that there is, and every row that stands in twice stays itself", () => {
  const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(number, { minLength: 2, maxLength: 40 }),
      number,
      fc.double({ min: 1e-3, max: 1, noNaN: true }),
      (shown, seen, most) => {
        const { share, rows } = runsThatAgree({
          predicted: [Float64Array.from(shown)],
          observed: Float64Array.of(seen),
          ...{ errors: unit(1), most, keep: 0.5 },
        });
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(most);
        expect(rows).toHaveLength(shown.length);
        for (const row of rows) expect(rows[row]).toBe(row);
      },
    ),
  );
});
