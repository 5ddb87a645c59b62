import fc from "fast-check";
import { expect, test } from "vitest";
import { findRoot } from "./root.ts";

test("a cube root comes out to the last digits", () => {
  const cube = (x: number) => ({ value: x ** 3 - 2, slope: 3 * x ** 2 });
  expect(findRoot(cube, 0, 2, 1e-15)).toBeCloseTo(Math.cbrt(2), 14);
});

test("a slope that misleads Newton, or is none, falls back to halving", () => {
  const flat = (x: number) => ({ value: Math.tanh(50 * (x - 0.123)), slope: 0 });
  expect(findRoot(flat, -10, 10, 1e-12)).toBeCloseTo(0.123, 10);
});

test("a root at an end of the bracket is found", () => {
  const line = (x: number) => ({ value: x - 1, slope: 1 });
  expect(findRoot(line, 1, 2, 1e-12)).toBe(1);
  expect(findRoot(line, 0, 1, 1e-12)).toBe(1);
});

test("no change of sign is the caller's mistake and says how to mend it", () => {
  const up = (x: number) => ({ value: x * x + 1, slope: 2 * x });
  expect(() => findRoot(up, -1, 1, 1e-9)).toThrow(/must change sign.*widen the bracket/);
});

test("any rising or falling cubic is solved, whichever way the bracket is given", () => {
  const root = fc.double({ min: -50, max: 50, noNaN: true });
  const sign = fc.constantFrom(-1, 1);
  fc.assert(
    fc.property(root, fc.double({ min: 0.01, max: 5, noNaN: true }), sign, (where, steep, way) => {
      const f = (x: number) => ({
        value: way * (steep * (x - where) ** 3 + (x - where)),
        slope: way * (3 * steep * (x - where) ** 2 + 1),
      });
      expect(Math.abs(findRoot(f, -60, 70, 1e-12) - where)).toBeLessThan(1e-9);
    }),
  );
});
