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
