/** Survival and counts against answers of R, recorded by checks/recorded/heads.R. Tolerance: the last digits recorded. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { countWeight } from "../../src/engine/heads/grid.ts";
import { kaplanMeier, lossRate, poissonBand } from "../../src/engine/heads/survival.ts";

interface Recorded {
  readonly kaplan_meier: readonly {
    readonly name: string;
    readonly time: readonly number[];
    readonly status: readonly number[];
    readonly steps: Readonly<
      Record<
        "time" | "n_risk" | "n_event" | "surv" | "std_err" | "lower" | "upper",
        readonly (number | null)[]
      >
    >;
    readonly exponential_rate: number;
  }[];
  readonly poisson_90: Readonly<Record<"count" | "low" | "high", readonly number[]>>;
  readonly counts: readonly {
    readonly seen: readonly number[];
    readonly mean: number;
    readonly strength: number;
    readonly prior: readonly number[];
    readonly posterior: readonly number[];
  }[];
}
const recorded: Recorded = JSON.parse(readFileSync(new URL("heads.json", import.meta.url), "utf8"));

for (const { name, time, status, steps, exponential_rate: rate } of recorded.kaplan_meier) {
  const lives = time.map((days, i) => ({ days, died: status[i] === 1 }));
  // R lists days on which heads only left, too.
  const own = kaplanMeier(lives);
  const rows = steps.time.flatMap((days, i) => (steps.n_event[i] === 0 ? [] : [{ days, i }]));

  test(`Kaplan and Meier of ${name}: every step, error and band as R has it`, () => {
    expect(own.map(({ days }) => days)).toEqual(rows.map(({ days }) => days));
    for (const [at, { i }] of rows.entries()) {
      const step = own[at]!;
      expect(step.atRisk).toBe(steps.n_risk[i]);
      expect(step.deaths).toBe(steps.n_event[i]);
      expect(step.share).toBeCloseTo(steps.surv[i]!, 12);
      if (steps.std_err[i] === null) {
        expect(step.band).toBeNull();
        continue;
      }
      expect(step.standardError).toBeCloseTo(steps.std_err[i]!, 12);
      expect(step.band!.low).toBeCloseTo(steps.lower[i]!, 12);
      expect(step.band!.high).toBeCloseTo(steps.upper[i]!, 12);
    }
  });

  test(`constant rate of ${name}: deaths over days, as R's exponential fit has it`, () => {
    expect(lossRate(lives)!.perDay.central / rate).toBeCloseTo(1, 9);
  });
}

test("exact Poisson limits, nine tenths", () => {
  for (const [i, count] of recorded.poisson_90.count.entries()) {
    const { low, high } = poissonBand(count, 0.05);
    expect(low).toBeCloseTo(recorded.poisson_90.low[i]!, 9);
    expect(high).toBeCloseTo(recorded.poisson_90.high[i]!, 9);
  }
});

test.each(recorded.counts)("heads after counts $seen: as R has it by quadrature", (one) => {
  const most = one.prior.length - 1;
  const weights = one.prior.map((prior, heads) =>
    one.seen.reduce((product, seen) => {
      // Mistakes of counting are not in R's.
      const none = { fewer: 0, more: 0 };
      return product * countWeight(seen, false, most, one.mean, one.strength, none)[heads]!;
    }, prior),
  );
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  for (const [heads, weight] of weights.entries()) {
    expect(weight / all).toBeCloseTo(one.posterior[heads]!, one.strength > 1e5 ? 5 : 9);
  }
});
