import { expect, test } from "vitest";
import { type CourseFacts, courseDrawn, courseRows, courseSteps } from "./reading-course-view.ts";

const mark = (on: string, change: Partial<CourseFacts["drawn"]["marks"][number]> = {}) => ({
  ...{ on, to: on, low: 9.5, value: 10, high: 10.5, censored: null, what: "reading" as const, readings: 1 },
  ...change,
});
const facts: CourseFacts = {
  ...{ label: "Nitrate", unit: "mg/L", limits: [] },
  line: [
    { on: "2026-06-01", low: 9, central: 10, high: 11 },
    { on: "2026-06-15", low: 9, central: 10, high: 11 },
  ],
  drawn: {
    ...{
      from: "2026-06-01",
      to: "2026-06-15",
      thinned: null,
      step: 1,
      happened: [{ on: "2026-06-08", words: "x" }],
    },
    marks: [
      mark("2026-06-01"),
      mark("2026-06-05", { low: 0, value: 2, high: 2, censored: "below" }),
      mark("2026-06-09", { value: 30, low: 29.5, high: 30.5, what: "outlier" }),
      mark("2026-06-12", { value: 90, low: 89.5, high: 90.5, what: "danger" }),
      mark("2026-06-15"),
    ],
  },
};
const place = { left: 0, right: 140, top: 0, bottom: 100 };

test("a tick is as high as its test's step, at its day, within the drawing", () => {
  const drawn = courseDrawn(facts, place);
  const [, top, bottom] = /^M0 ([\d.]+)V([\d.]+)/.exec(drawn.readings) ?? [];
  const perUnit = 100 / 100;
  expect(Number(bottom) - Number(top)).toBeCloseTo(perUnit, 0);
  expect(drawn.markX).toEqual([0, 40, 80, 110, 140]);
});

test("a bound is an open arrow down from it, no tick; outliers have a ring, dangers a square", () => {
  const drawn = courseDrawn(facts, place);
  expect(drawn.bounds).toMatch(/^M36 98h8M40 98v10/);
  expect(drawn.readings.match(/M/g)).toHaveLength(3 * 4);
  expect(drawn.outliers.match(/a7 7/g)).toHaveLength(2);
  expect(drawn.dangers.match(/Z/g)).toHaveLength(1);
  expect(drawn.happened).toMatch(/^M70 103v7$/);
});

test("a limit near the readings is drawn, one far off is told alone: it would press them flat", () => {
  const limit = (value: number) => ({ value }) as CourseFacts["limits"][number];
  const drawn = (value: number) =>
    courseDrawn({ ...facts, limits: [limit(value)] }, place).limits.map(({ words }) => words);
  expect(drawn(100)).toEqual(["limit 100"]);
  expect(drawn(1000)).toEqual([]);
});

test("steps and rows say what each mark is, so that nothing hangs on its look", () => {
  expect(courseSteps(facts).map(({ text }) => text)).toEqual([
    "10 mg/L",
    "below 2 mg/L",
    "30 mg/L, far from the others",
    "90 mg/L, dangerous",
    "10 mg/L",
  ]);
  expect(courseRows(facts)[0]).toEqual(["1 Jun 2026", "10 mg/L", "9.5 to 10.5"]);
});

test("ten years have years below them", () => {
  const long = { ...facts, drawn: { ...facts.drawn, from: "2016-06-18" } };
  const words = courseDrawn(long, { ...place, right: 700 }).xTicks.map((tick) => tick.words);
  expect(words).toEqual(["2017", "2018", "2019", "2020", "2021", "2022", "2023", "2024", "2025", "2026"]);
});
