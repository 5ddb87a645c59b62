import { describe, expect, test } from "vitest";
import { difference } from "../comparison.ts";
import { blocks, comparisons } from "./reagents.ts";

describe.each(comparisons)("$block: $quantity [$source]", ({ relative, tolerance, pairs }) => {
  test("has values", () => expect(pairs.length).toBeGreaterThan(0));
  test.each(pairs)("$at gives $theirs", (pair) => {
    expect(difference(relative, pair)).toBeLessThanOrEqual(tolerance);
  });
});

test("every block is checked", () => {
  expect([...new Set(comparisons.map(({ block }) => block))].sort()).toEqual(Object.keys(blocks).sort());
});
