/** Slopes, ranks, changes and medians against R and SciPy: trends.R and trends.py record their answers. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changeAt, changesOf } from "../../src/engine/trends/changes.ts";
import { pairSlopes, slopeAt } from "../../src/engine/trends/pair-slopes.ts";
import { twoSided } from "../../src/engine/trends/student.ts";
import { usualOf } from "../../src/engine/trends/usual.ts";

const read = (name: string) => JSON.parse(readFileSync(new URL(name, import.meta.url), "utf8"));
const r = read("trends-r.json") as {
  kendall: { name: string; days: number[]; values: number[]; z: number }[];
  student: { t: number; df: number; chance: number }[];
  changes: {
    name: string;
    days: number[];
    values: number[];
    at: number;
    shape: "step" | "bend";
    by: number;
    error: number;
    chance: number;
  }[];
  nile: {
    years: number[];
    flow: number[];
    level_break_after: number;
    level_f: number;
    beside_line_break_after: number;
  };
  medians: { name: string; values: number[]; censored: boolean[]; median: number }[];
  intervals: {
    name: string;
    days: number[];
    low: number[];
    high: number[];
    slope: number;
    regression: number;
    regression_error: number;
  }[];
};
const scipy = read("trends-scipy.json") as {
  slopes: { name: string; slope: number; low: number; high: number; abs_z: number }[];
};

const Z90 = 1.6448536269514722;
const exact = ({ days, values }: { days: number[]; values: number[] }) =>
  days.map((day, i) => ({ day, low: values[i]!, high: values[i]! }));

describe.each(scipy.slopes)("SciPy's theilslopes of $name", ({ name, slope, low, high, abs_z }) => {
  const series = r.kendall.find((one) => one.name === name)!;
  const pairs = pairSlopes(exact(series));

  test("the slope is the same", () => expect(slopeAt(pairs, 0)).toBeCloseTo(slope, 12));

  test("Kendall's S over its deviation is the same, ties counted, in SciPy and in R", () => {
    expect(Math.abs(pairs.s / pairs.sd)).toBeCloseTo(abs_z, 8);
    expect(pairs.s / pairs.sd).toBeCloseTo(series.z, 8);
  });

  // SciPy rounds to the nearest slope of a pair, we go in proportion between two of them.
  test("the limits lie within one slope of a pair of SciPy's", () => {
    const single = [...pairs.pool].filter((_, i) => i % 2 === 0);
    const near = (ours: number, theirs: number) => {
      const first = single.findIndex((one) => Math.abs(one - theirs) < 1e-12);
      const last = single.findLastIndex((one) => Math.abs(one - theirs) < 1e-12);
      expect(ours).toBeGreaterThanOrEqual(single[Math.max(0, first - 1)]! - 1e-12);
      expect(ours).toBeLessThanOrEqual(single[Math.min(single.length - 1, last + 1)]! + 1e-12);
    };
    near(slopeAt(pairs, -Z90), low);
    near(slopeAt(pairs, Z90), high);
  });
});

test.each(r.student)("R's tail of Student's t at $t with $df degrees of freedom", ({ t, df, chance }) => {
  expect(twoSided(t, df) / chance).toBeCloseTo(1, 9);
});

test.each(r.changes)("R's lm: $name", ({ days, values, at, shape, by, error, chance }) => {
  const points = days.map((day, i) => ({ day, value: values[i]! }));
  const ours = changeAt(points, at, shape, 0.001)!;
  expect(ours.by).toBeCloseTo(by, 9);
  expect(ours.error / error).toBeCloseTo(1, 9);
  expect(ours.chance / chance).toBeCloseTo(1, 6);
});

describe("the Nile at Aswan, 1871 to 1970", () => {
  const points = r.nile.years.map((year, i) => ({ day: year, value: r.nile.flow[i]! }));

  test("strucchange finds the published step, after 1898, F 75.93", () => {
    expect(r.nile.level_break_after).toBe(1898);
    expect(r.nile.level_f).toBeCloseTo(75.93, 2);
  });

  test("of all years the clearest step beside a line is the same as R's", () => {
    const years = r.nile.years.slice(4, -4);
    const chances = years.map((year) => changeAt(points, year, "step", 1)!.chance);
    const best = years[chances.indexOf(Math.min(...chances))]! - 1;
    expect(best).toBe(r.nile.beside_line_break_after);
    expect(best).toBe(1898);
  });

  test("one change is found, a step down within two years of it, and none besides", () => {
    const [only, ...more] = changesOf(points, [], 1);
    expect(more).toEqual([]);
    expect(only!.shape).toBe("step");
    expect(only!.by).toBeLessThan(-200);
    expect(Math.abs(only!.day - 1899)).toBeLessThanOrEqual(2);
  });

  test("the dam as an event of 1898 to 1902 takes the step for itself", () => {
    const [only] = changesOf(points, [{ day: 1899, events: ["dam"] }], 1);
    expect(only).toMatchObject({ day: 1899, events: ["dam"], shape: "step" });
  });
});

test.each(r.medians)(
  "Kaplan-Meier's median of $name lies within the tank's usual",
  ({ values, censored, median }) => {
    const days = values.map((value, i) => ({
      ...{ day: i, on: "2026-01-01", value, high: value, low: censored[i] === true ? 0 : value },
      ...{ censored: censored[i] === true ? ("below" as const) : null, danger: false, entries: [] },
    }));
    // The latest day is held against the others, so one more is added.
    const usual = usualOf([...days, { ...days[0]!, day: values.length }], 0.01)!;
    expect(median).toBeGreaterThanOrEqual(usual.low - 1e-9);
    expect(median).toBeLessThanOrEqual(usual.high + 1e-9);
  },
);

describe.each(r.intervals)(
  "readings that are intervals: $name",
  ({ days, low, high, slope, regression, regression_error }) => {
    const pairs = pairSlopes(days.map((day, i) => ({ day, low: low[i]!, high: high[i]! })));

    test("the slope is where R finds Kendall's S of the residuals to change sign", () => {
      expect(slopeAt(pairs, 0)).toBeCloseTo(slope, 9);
    });

    test("a regression on intervals, another model, agrees within its error and lies within our limits", () => {
      expect(Math.abs(slopeAt(pairs, 0) - regression)).toBeLessThan(1.5 * regression_error);
      expect(slopeAt(pairs, -Z90)).toBeLessThan(regression);
      expect(slopeAt(pairs, Z90)).toBeGreaterThan(regression);
    });
  },
);
