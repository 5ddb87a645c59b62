import { expect, test } from "vitest";
import { newId } from "./new-id.ts";

test("ids sort as they were made, also within a millisecond and after the clock went back", () => {
  const made = [1e12, 1e12, 1e12 + 5, 1e12 - 3_600_000, 1e12 + 6].map(newId);
  expect([...made].sort()).toEqual(made);
  expect(new Set(made).size).toBe(made.length);
  for (const id of made)
    expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});
