import { describe, expect, test } from "vitest";
import { REAGENTS } from "../../src/engine/seawater/reagents.ts";
import { difference } from "../comparison.ts";
import { comparisons } from "./reagents.ts";

describe.each(comparisons)("$block: $quantity [$source]", ({ relative, tolerance, pairs }) => {
  test("has values", () => expect(pairs.length).toBeGreaterThan(0));
  test.each(pairs)("$at gives $theirs", (pair) => {
    expect(difference(relative, pair)).toBeLessThanOrEqual(tolerance);
  });
});

test("every salt on offer was asked about", () => {
  expect(comparisons[0]?.pairs.map(({ at }) => at).sort()).toEqual(Object.keys(REAGENTS).sort());
});
