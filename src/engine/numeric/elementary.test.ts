import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exp, expm1, log, log10 } from "./elementary.ts";

/** The platform's own may differ in the last place: that is why ours exist. */
const ULP = 2 ** -52;
const near = (value: number, platform: number, ulps: number) =>
  Math.abs(value - platform) <= ulps * ULP * Math.abs(platform);

describe("within the last place of what the platform says", () => {
  const positive = fc.double({ min: 5e-324, max: 1.7e308, noNaN: true });
  const exponent = fc.double({ min: -708, max: 709.7, noNaN: true });

  test("exp", () => {
    fc.assert(fc.property(exponent, (x) => near(exp(x), Math.exp(x), 1)));
  });
  test("log", () => {
    fc.assert(fc.property(positive, (x) => near(log(x), Math.log(x), 1)));
  });
  test("log10", () => {
    fc.assert(fc.property(positive, (x) => near(log10(x), Math.log10(x), 1)));
  });
  test("expm1, also where x is small", () => {
    const small = fc.double({ min: -1e-3, max: 1e-3, noNaN: true });
    fc.assert(fc.property(fc.oneof(exponent, small), (x) => near(expm1(x), Math.expm1(x), 3)));
  });
});

// Where the arithmetic takes another way: no halving of the argument, one, many; overflow's edge; below the least
// normal number, where a unit in the last place is as large as it gets.
test.each([
  ...[1e-9, -1e-9, 2 ** -28, 0.3, -0.3, 0.34657, 0.34658, 0.7, -0.7, 1.0397, 1.0398],
  ...[709.4, 709.5, 709.78, -708, -708.3, -708.5],
])("exp(%d) is the platform's to one unit", (x) => expect(near(exp(x), Math.exp(x), 1)).toBe(true));

test.each([-709, -720, -740, -745])("exp(%d), a subnormal number, is the platform's to the least", (x) => {
  expect(exp(x)).toBeGreaterThan(0);
  expect(Math.abs(exp(x) - Math.exp(x))).toBeLessThanOrEqual(5e-324);
});

test.each([5e-324, 1e-310, 2 ** -1022, 2 ** -30, 0.5, 0.7, 0.9999999, 1.0000001, 1.4, 1.415, 2, 1e300])(
  "log(%d) and log10 of it are the platform's to one unit",
  (x) => {
    expect(near(log(x), Math.log(x), 1)).toBe(true);
    expect(near(log10(x), Math.log10(x), 1)).toBe(true);
  },
);

test("the engine takes none of them from the platform", () => {
  const root = join(import.meta.dirname, "..");
  const files = readdirSync(root, { recursive: true, encoding: "utf8" }).filter(
    (name) => name.endsWith(".ts") && !/\.test\.ts$|test-kit/.test(name),
  );
  expect(files.length).toBeGreaterThan(50);
  const theirs = /\bMath\.(?:exp|expm1|log|log1p|log2|log10|pow|cbrt|hypot|a?sinh?|a?cosh?|a?tanh?|atan2)\(/;
  const found = files.filter((name) => theirs.test(readFileSync(join(root, name), "utf8")));
  expect(found).toEqual([]);
});

test.each([
  [0, 1],
  [1, Math.E],
  [800, Number.POSITIVE_INFINITY],
  [-800, 0],
  [Number.NEGATIVE_INFINITY, 0],
])("exp(%d) is %d", (x, value) => {
  expect(exp(x)).toBe(value);
});

test.each([
  [1, 0, 0],
  [0, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY],
  [-1, Number.NaN, Number.NaN],
  [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
  [1000, 6.907755278982137, 3],
])("log(%d) is %d, log10 of it %d", (x, natural, decimal) => {
  expect(log(x)).toBe(natural);
  if (Number.isFinite(decimal)) expect(log10(x)).toBeCloseTo(decimal, 14);
  else expect(log10(x)).toBe(decimal);
});

// The bits themselves, as worked out here once: another engine must come to the same.
test.each([
  [exp, 2.5625, 12.968197316969134],
  [exp, -7.125, 0.0008047330101246132],
  [log, 3.7, 1.308332819650179],
  [log10, 0.07, -1.154901959985743],
  [expm1, -0.031, -0.03052442692397405],
])("%o of %d is %d to the last bit", (of, x, value) => {
  expect(of(x)).toBe(value);
});
