import { describe, expect, test } from "vitest";
import { normalQuantile } from "../numeric/normal.ts";
import { RandomStream } from "../numeric/random.ts";
import type { Point } from "./series.ts";
import { trendOf } from "./trend.ts";
import { turnOf } from "./turn.ts";

/** Readings so many days apart, the last today; nought is below what the kit can tell. */
const points = (values: readonly number[], everyDays: number, step: number): Point[] =>
  values.map((value, i) => ({
    ...{ day: (i + 1 - values.length) * everyDays, on: "", value, danger: false, entries: [] },
    ...{ low: value <= 0 ? 0 : value - step / 2, high: value <= 0 ? step / 2 : value + step / 2 },
    censored: value <= 0 ? "below" : null,
  }));
const trend = (values: readonly number[], everyDays: number, step: number) =>
  trendOf({ series: { points: points(values, everyDays, step), step }, events: [], limits: [], seed: 1 });

describe("a start-up's nitrite, up and then down", () => {
  test.each([
    ["every third day", [0, 0, 0.2, 1, 3, 5, 5, 3, 1, 0.2, 0, 0], 3, 0.1, -16],
    ["by a kit of coarse steps", [0, 0.25, 0.5, 1, 2, 2, 1, 0.5, 0.25, 0, 0, 0], 2, 0.25, -13],
    ["once a week", [0, 0.1, 1, 3, 5, 2, 0.5, 0, 0], 7, 0.1, -28],
  ])("%s: told with the day of its top, and what it does since", (_, values, every, step, day) => {
    expect(turnOf(points(values, every, step), step)).toMatchObject({ shape: "peak", day });
    const found = trend(values, every, step)!;
    expect(found.window.why).toBe("turn");
    expect(found.way).toBe("falling");
  });

  test("at rest for weeks after it: told as such, and the line is that of the rest", () => {
    const values = [0, 0, 0.2, 1, 3, 5, 5, 3, 1, 0.2, ...Array.from({ length: 12 }, () => 0)];
    const found = trend(values, 3, 0.1)!;
    expect(found.turn).toMatchObject({ shape: "peak", settledDay: -33 });
    expect(found.window).toMatchObject({ why: "turn", fromDay: -33 });
    expect(found.way).toBe("level");
  });

  test("a top beyond what the kit can tell is one all the same", () => {
    const above = points([0, 0.5, 1, 3, 5, 5, 5, 3, 1, 0.5, 0], 3, 0.5).map((point) =>
      point.value === 5
        ? { ...point, censored: "above" as const, low: 5, high: Number.POSITIVE_INFINITY }
        : point,
    );
    expect(turnOf(above, 0.5)).toMatchObject({ shape: "peak", day: -15 });
  });
});

describe("not told", () => {
  test.each([
    ["three readings after the top", [0, 0.2, 1, 3, 5, 4, 3], 3, 0.1],
    ["one slip of the pen", [0, 0, 0, 0, 9, 0, 0, 0, 0], 3, 0.1],
    ["a dip of a tenth of the rise", [1, 3, 5, 7, 9, 10, 9.8, 9.6, 9.4, 9.2], 3, 0.1],
    ["less than the kit can tell apart", [1, 1.5, 1.5, 2, 2, 1.5, 1.5, 1], 3, 1],
    ["a straight rise", [1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 3, 0.1],
  ])("%s", (_, values, every, step) => {
    expect(turnOf(points(values, every, step), step)).toBeNull();
  });

  test("five readings within a week of the top: the line since is not enough yet", () => {
    const found = trend([0, 0.5, 1, 2, 4, 3, 2, 1, 0.5], 1, 0.1)!;
    expect(found.turn).toBeNull();
  });
});

test("upside down it is a bottom on the same day", () => {
  const values = [9, 9, 8, 6, 3, 1, 1, 3, 6, 8, 9];
  expect(turnOf(points(values, 3, 0.5), 0.5)).toMatchObject({ shape: "trough", day: -13 });
});

// 300 series each; 2 standard errors of 5 % are 2.5 %. Neighbours resemble each other by a third in the second of each pair.
const rise = (size: number) => (part: number) => size * Math.min(1, 2 * part);
test.each([
  ["quiet", () => 0],
  ["steadily rising", (part: number) => 8 * part],
  ["rising by 2 deviations, then level", rise(2)],
  ["rising by 8 deviations, then level", rise(8)],
  ["stepping up by 4 deviations", (part: number) => (part < 0.5 ? 0 : 4)],
])("of series that are %s at most 1 in 20 is said to have turned", (_, of) => {
  for (const likeness of [0, 0.33])
    for (const count of [10, 24]) {
      let said = 0;
      for (let seed = 0; seed < 300; seed += 1) {
        const random = new RandomStream(seed, count);
        const draw = () => normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, random.uniform())));
        let error = draw();
        const values = Array.from({ length: count }, (__, i) => {
          error = likeness * error + Math.sqrt(1 - likeness ** 2) * draw();
          return 10 + of(i / (count - 1)) + error;
        });
        if (turnOf(points(values, 3, 0.1), 0.1) !== null) said += 1;
      }
      expect(said / 300).toBeLessThanOrEqual(0.05 + 0.025);
    }
});
