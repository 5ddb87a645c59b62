import { describe, expect, test } from "vitest";
import { difference } from "../comparison.ts";
import { blocks, comparisons, leftOut } from "./seawater.ts";

describe.each(comparisons)("$block: $quantity [$source]", ({ relative, tolerance, pairs }) => {
  test("has values", () => expect(pairs.length).toBeGreaterThan(0));
  test.each(pairs)("$at gives $theirs", (pair) => {
    expect(difference(relative, pair)).toBeLessThanOrEqual(tolerance);
  });
});

test("every block is checked, or listed as left out with its reason; nothing is listed that is not there", () => {
  const named = [...comparisons, ...leftOut].map(({ block }) => block);
  expect([...new Set(named)].sort()).toEqual(Object.keys(blocks).sort());
});

test("a block that is left out whole is not also checked", () => {
  const whole = leftOut.filter(({ what }) => what === "all").map(({ block }) => block);
  expect(comparisons.map(({ block }) => block).filter((block) => whole.includes(block))).toEqual([]);
});
