/**
 * The smoother where an exact answer exists: levels that wander, read with error, against R's Kalman smoother
 * (checks/recorded/kalman-smoother.R). An ensemble is a sample: its mean and spread lie about the exact ones within what
 * so many members allow, four standard errors and what the ensemble's own covariances add.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { meanOf } from "../../src/engine/calibration/matrix.ts";
import { runsThatAgree } from "../../src/engine/calibration/resample.ts";
import { assimilated, PASSES } from "../../src/engine/calibration/smoother.ts";
import { scores } from "../../src/engine/numeric/draws.ts";
import { Chance } from "../kit/chance.ts";

const { cases } = JSON.parse(
  readFileSync(new URL("../recorded/kalman-smoother.json", import.meta.url), "utf8"),
) as {
  cases: {
    name: string;
    first: number;
    step: number;
    error: number;
    y: (number | null)[];
    level: number[];
    variance: number[];
  }[];
};

/** Levels of every day of each member: a sum of its scores. */
function levelsOf(z: readonly Float64Array[], first: number, step: number): Float64Array[] {
  let before = z[0]!.map((score) => score * Math.sqrt(first));
  return z.map((row, day) => {
    if (day > 0) before = before.map((level, m) => level + row[m]! * Math.sqrt(step));
    return before;
  });
}

const MEMBERS = 4000;

/** With none of it, or up to half of each pass, taken by weighing whole runs. */
const WEIGHED = [0, 0.5] as const;

describe.for(WEIGHED)("wandering levels, %d of a pass by runs that agree", (weighed) => {
  test.for(cases)("$name: R's smoother", ({ first, step, error, y, level, variance }) => {
    const days = y.map((value, day) => ({ value, day })).filter(({ value }) => value !== null);
    const observed = Float64Array.from(days, ({ value }) => value!);
    const errors = days.map((_, i) => Float64Array.from(days, (_, j) => (i === j ? error : 0)));
    let z = y.map((_, day) => scores(`level ${day}`, MEMBERS, 5));
    for (const [pass, times] of PASSES.entries()) {
      const shown = () => {
        const levels = levelsOf(z, first, step);
        return days.map(({ day }) => levels[day]!);
      };
      let share = 0;
      if (weighed > 0) {
        const most = weighed / times;
        const agreeing = runsThatAgree({ predicted: shown(), observed, errors, most, keep: 0.75 });
        z = z.map((row) => Float64Array.from(agreeing.rows, (from) => row[from]!));
        share = agreeing.share;
        expect(share).toBeGreaterThan(0);
      }
      z = assimilated({
        ...{ scores: z, predicted: shown(), observed, errors, times: 1 / (1 / times - share) },
        ...{ noise: `pass ${pass}`, seed: 5 },
      });
    }
    levelsOf(z, first, step).forEach((levels, day) => {
      const sd = Math.sqrt(variance[day]!);
      const mean = meanOf(levels);
      const spread = Math.sqrt(levels.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (MEMBERS - 1));
      // Four passes, each with covariances of the sample: about (1 + observations) standard errors of a mean.
      const allowed = (4 * Math.sqrt(1 + days.length)) / Math.sqrt(MEMBERS);
      expect(Math.abs(mean - level[day]!), `level of day ${day}`).toBeLessThan(allowed * sd);
      expect(Math.abs(spread / sd - 1), `spread of day ${day}`).toBeLessThan(allowed);
    });
  });
});

test("four passes that count the observations once: their shares add up to one", () => {
  expect(PASSES.reduce((sum, times) => sum + 1 / times, 0)).toBeCloseTo(1, 3);
});

test("over 600 invented truths, the truth ranks among the learned members as often here as there", () => {
  const members = 120;
  const bins = new Array<number>(10).fill(0);
  const rounds = 600;
  const noise = new Chance(31, 4);
  const error = 0.5;
  for (let round = 0; round < rounds; round += 1) {
    const truth = [noise.normal(), noise.normal()];
    const show = (a: number, b: number) => [a + 0.5 * b, a - b, b];
    const observed = Float64Array.from(show(truth[0]!, truth[1]!), (x) => x + error * noise.normal());
    const errors = [0, 1, 2].map((i) => Float64Array.from([0, 1, 2], (j) => (i === j ? error ** 2 : 0)));
    let z = ["a", "b"].map((name) => scores(name, members, 1000 + round));
    for (const [pass, times] of PASSES.entries()) {
      const shown = Array.from({ length: members }, (_, m) => show(z[0]![m]!, z[1]![m]!));
      const predicted = [0, 1, 2].map((i) => Float64Array.from(shown, (row) => row[i]!));
      z = assimilated({
        ...{ scores: z, predicted, observed, errors, times, noise: `pass ${pass}`, seed: 1000 + round },
      });
    }
    const rank = z[0]!.filter((score) => score < truth[0]!).length / (members + 1);
    bins[Math.min(9, Math.floor(rank * 10))]! += 1;
  }
  const expected = rounds / 10;
  const chiSquare = bins.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  // 99.9 % point of chi-square with nine degrees of freedom, a printed table's.
  expect(chiSquare, bins.join(" ")).toBeLessThan(27.88);
});
