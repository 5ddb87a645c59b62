import { expect, test } from "vitest";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { weekAsked } from "./ahead-view.ts";

const weeks = (count: number) =>
  ({ weeks: Array.from({ length: count }, (_, i) => `2026-01-${i}`) }) as unknown as TankAnswers["ahead"];

test.each([
  [undefined, 27, 13],
  [undefined, 5, 4],
  ["0", 27, 0],
  ["26", 27, 26],
  ["27", 27, 26],
  ["-1", 27, 13],
  ["1.5", 27, 13],
  ["soon", 27, 13],
])("asked for week %s of %d: week %d", (asked, count, week) => {
  expect(weekAsked(asked, weeks(count))).toBe(week);
});
