import { expect, test } from "vitest";
import { parseColour, ratio } from "./contrast.ts";

// The extremes and the threshold grey of WCAG 2's own examples.
test("contrast runs from 1 to 21; #767676 on white passes 4.5, #777777 doesn't", () => {
  expect(ratio([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 6);
  expect(ratio([9, 9, 9], [9, 9, 9])).toBe(1);
  expect(ratio([118, 118, 118], [255, 255, 255])).toBeGreaterThan(4.5);
  expect(ratio([119, 119, 119], [255, 255, 255])).toBeLessThan(4.5);
});

test("colours as the browser writes them", () => {
  expect(parseColour("rgb(29, 39, 48)")).toEqual({ rgb: [29, 39, 48], alpha: 1 });
  expect(parseColour("rgba(0, 0, 0, 0)")?.alpha).toBe(0);
  expect(parseColour("color(srgb 0 0 0)")).toBeNull();
});
