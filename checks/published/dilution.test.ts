/**
 * Dilution and salt against values from outside: powers and exponentials as mathematical tables print them, and masses of salt
 * worked by hand in the science notes (section 9 and 10) from the printed density of seawater.
 */
import { expect, test } from "vitest";
import {
  changesUntil,
  oldLeft,
  oldLeftContinuous,
  volumesUntil,
} from "../../src/engine/care/changes/dilution.ts";
import { saltToRaise } from "../../src/engine/care/changes/salt.ts";
import { celsius, practicalSalinity } from "../../src/engine/units/quantity.ts";

// Powers of decimal fractions, exact by hand: 0.9^2 = 0.81, 0.81^2 = 0.6561, ...; 0.8^5 = 0.32768, 0.75^4 = 81/256.
test.each([
  [0.1, 2, 0.81],
  [0.1, 4, 0.6561],
  [0.1, 10, 0.3486784401],
  [0.2, 5, 0.32768],
  [0.25, 4, 0.31640625],
  [0.5, 1, 0.5],
  [0.5, 10, 0.0009765625],
])("share %d changed %d times leaves %d", (share, times, printed) => {
  expect(oldLeft(share, times)).toBeCloseTo(printed, 10);
});

// e^-x to five places, as printed in any table of exponentials.
test.each([
  [0.5, 0.60653],
  [1, 0.36788],
  [2, 0.13534],
  [3, 0.04979],
])("%d volumes run through leave %d", (volumes, printed) => {
  expect(oldLeftContinuous(volumes)).toBeCloseTo(printed, 5);
});

// ln 4 = 1.38629, ln 100 = 4.60517; log 0.5 / log 0.9 = 6.5788.
test("volumes to a quarter and a hundredth, changes to a half", () => {
  expect(volumesUntil(0.25)).toBeCloseTo(1.38629, 5);
  expect(volumesUntil(0.01)).toBeCloseTo(4.60517, 5);
  expect(changesUntil(0.5, 0.1)).toBeCloseTo(6.5788, 4);
});

test.each([
  [33, 35, 213],
  [30, 35, 531],
  [0, 35, 3634],
])("100 L at 25 C from %d to %d psu takes %d g, to a gram", (from, to, grams) => {
  const { saltKg } = saltToRaise(100, celsius(25), practicalSalinity(from), practicalSalinity(to));
  expect(Math.round(1000 * saltKg)).toBe(grams);
});
