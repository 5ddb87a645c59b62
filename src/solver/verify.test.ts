import { describe, expect, test } from "vitest";
import { ModelBuilder } from "../engine/stocking/linear-model.ts";
import { verify } from "./verify.ts";

/** Up to five heads at 2 each, food of at least 1 a head, at most 7 in all. */
function model() {
  const build = new ModelBuilder();
  build.column("heads", { integer: true, upper: 5, cost: 2 });
  build.column("food", { cost: 0.5 });
  build.row(
    "alive",
    [
      ["food", 1],
      ["heads", -1],
    ],
    { lower: 0 },
  );
  build.row("supply", [["food", 1]], { upper: 7 });
  return build.build();
}

const answer = (...values: number[]) => verify(model(), Float64Array.from(values));

test("an answer that holds keeps its values, its cost is recomputed", () => {
  expect(answer(3, 4)).toEqual({ status: "optimal", objective: 8, values: Float64Array.of(3, 4) });
});

test.each([
  [2.9999995, 3],
  [3.0000009, 3],
  [-4e-7, 0],
])("%d heads become exactly %d", (heads, whole) => {
  const checked = answer(heads, 4);
  expect(checked.status === "optimal" && checked.values[0]).toBe(whole);
});

describe("an answer that does not hold fails, and says where", () => {
  test.each([
    ["heads must be a whole number", 2.99999, 4],
    ["heads must be 0 to 5", 6, 7],
    ["food must be 0 to Infinity", 0, -0.01],
    ["alive must be 0 to Infinity", 3, 2.99999],
    ["supply must be -Infinity to 7", 3, 7.00001],
    ["food must be 0 to Infinity", 3, Number.NaN],
  ])("%s: %d heads, %d food", (why, heads, food) => {
    expect(answer(heads, food)).toEqual({ status: "failed", why: expect.stringContaining(why) });
  });
});
