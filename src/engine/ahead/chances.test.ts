import { describe, expect, test } from "vitest";
import { aboveOf20, crossing, halfAliveByAge, survivalOf } from "./chances.ts";
import type { Sheaf } from "./forecast.ts";

/** Twenty runs of equal length. */
const sheafOf = (runs: readonly (readonly number[])[]): Sheaf => ({
  weeks: runs[0]!.length,
  values: Float32Array.from(runs.flat()),
});
const twenty = (make: (m: number) => number[]) => sheafOf(Array.from({ length: 20 }, (_, m) => make(m)));

describe("a limit", () => {
  test("is crossed in the runs that rise above it on any day to come, wherever they end", () => {
    const peaks = twenty((m) => (m < 6 ? [0, 0, m < 3 ? 2 : 0, m < 3 ? 0 : 2, 0] : [0, 0, 0, 0, 1]));
    expect(crossing(peaks, 1)).toMatchObject({ of20: 6, alreadyOf20: 0, firstWeek: { central: 2.5 } });
  });

  test("that is met today and never again is not crossed in the days to come", () => {
    expect(
      crossing(
        twenty(() => [5, 0, 0]),
        1,
      ),
    ).toEqual({ of20: 0, alreadyOf20: 20, firstWeek: null });
  });

  test("lies below those of one week", () => {
    const sheaf = twenty((m) => [0, m]);
    expect([0, 9.5, 19].map((limit) => aboveOf20(sheaf, 1, limit))).toEqual([19, 10, 0]);
  });
});

describe("a kind", () => {
  test("that age alone would take is not said to starve", () => {
    const gone = sheafOf([
      ...Array.from({ length: 15 }, () => [1, 1]),
      ...Array.from({ length: 5 }, () => [1, 0]),
    ]);
    const survival = survivalOf(gone, 1, { came: 0, deathRate: -Math.log(0.75) / 90, days: 90 });
    const { fedShare, ...grains } = survival;
    expect(grains).toEqual({ aliveOf20: 15, agedOf20: 15, starvesOf20: 0 });
    expect(fedShare).toBeCloseTo(1, 12);
  });

  test("that nothing but hunger took starves", () => {
    const half = twenty((m) => [4, m < 10 ? 4 : 1]);
    expect(survivalOf(half, 1, { came: 0, deathRate: 0, days: 90 })).toEqual({
      aliveOf20: 10,
      agedOf20: 20,
      fedShare: 0.5,
      starvesOf20: 10,
    });
  });

  test("runs that begin with fewer are held to what they began with, and those with none to nothing", () => {
    const fewer = sheafOf([...Array(10).fill([4, 2]), ...Array(5).fill([2, 0]), ...Array(5).fill([0, 0])]);
    const { aliveOf20, starvesOf20 } = survivalOf(fewer, 1, { came: 0, deathRate: 0, days: 90 });
    expect([aliveOf20, starvesOf20]).toEqual([13, 7]);
    const none = survivalOf(
      twenty(() => [0, 0]),
      1,
      { came: 0, deathRate: 0.001, days: 90 },
    );
    expect(none).toEqual({ aliveOf20: 0, agedOf20: 0, fedShare: 1, starvesOf20: 0 });
    expect(survivalOf(fewer, 1, { came: 4, deathRate: 0, days: 90 }).aliveOf20).toBe(0);
  });

  test("halves: one of two lives with the chance that not both die", () => {
    expect(halfAliveByAge(2, 0.9)).toBeCloseTo(1 - 0.1 ** 2, 12);
    expect(halfAliveByAge(3, 0.5)).toBeCloseTo(0.5, 12);
  });
});
