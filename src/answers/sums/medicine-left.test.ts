/** Shares multiply: splitting steps leaves what the whole leaves, and no unit or order changes it. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { medicineLeft } from "./medicine-left.ts";

const share = fc.double({ min: 0, max: 0.99, noNaN: true });
const times = fc.double({ min: 0, max: 30, noNaN: true });

test("splitting the changes, or the days on carbon, leaves what the whole leaves", () => {
  fc.assert(
    fc.property(share, times, times, share, times, times, (c, n, m, k, d, e) => {
      const whole = medicineLeft(c, n + m, k, d + e);
      expect(medicineLeft(c, n, k, d) * medicineLeft(c, m, k, e)).toBeCloseTo(whole, 10);
    }),
  );
});

test("nothing done leaves all; all changed leaves nothing; more never leaves more", () => {
  expect(medicineLeft(0.5, 0, 0.5, 0)).toBe(1);
  expect(medicineLeft(1, 1, 0, 0)).toBe(0);
  expect(medicineLeft(0.25, 4, 0, 0)).toBeCloseTo(0.31640625, 12);
  fc.assert(
    fc.property(share, times, share, times, (c, n, k, d) => {
      expect(medicineLeft(c, n + 1, k, d)).toBeLessThanOrEqual(medicineLeft(c, n, k, d) + 1e-12);
    }),
  );
});
