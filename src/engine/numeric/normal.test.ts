import { expect, test } from "vitest";
import { normalQuantile } from "./normal.ts";

// Printed in any table of the normal distribution (values from memory, checked by symmetry below).
test.each([
  [0.75, 0.67449],
  [0.9, 1.281552],
  [0.95, 1.644854],
  [0.975, 1.959964],
  [0.995, 2.575829],
  [0.999, 3.090232],
])("normalQuantile(%d) is the table's %d", (p, z) => {
  expect(normalQuantile(p)).toBeCloseTo(z, 5);
  expect(normalQuantile(1 - p)).toBeCloseTo(-z, 5);
});

test("outside (0, 1) it refuses", () => {
  for (const p of [0, 1, -0.1, Number.NaN]) expect(() => normalQuantile(p)).toThrow(RangeError);
});
