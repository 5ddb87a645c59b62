/**
 * Errors of observations as a covariance: each one's own (kit or eye), and what the model gets wrong of a series for
 * weeks on end. Observations that lie far off every run get a wider error instead of being thrown away; readings below
 * what a kit can tell hold a run only where it lies above.
 */
import { exp } from "../numeric/elementary.ts";
import { JUDGEMENT } from "./judgement.ts";
import { covariances, deviations, type Matrix, meanOf } from "./matrix.ts";
import type { Observed } from "./observed.ts";

/** Covariance before anything was compared. */
export const allowedErrors = (observed: readonly Observed[]): Float64Array[] =>
  observed.map((a, i) =>
    Float64Array.from(observed, (b, j) => {
      const shared =
        a.series === b.series
          ? a.model * b.model * exp(-Math.abs(a.day - b.day) / JUDGEMENT.modelErrorDays)
          : 0;
      return shared + (i === j ? a.error ** 2 : 0);
    }),
  );

/** Predictions as the kit would have shown them: below its least step all look alike. */
export const censoredAs = (observed: readonly Observed[], predicted: Matrix): Float64Array[] =>
  predicted.map((row, i) => {
    const { censored, value } = observed[i]!;
    if (censored === null) return Float64Array.from(row);
    return row.map((shown) => (censored === "below" ? Math.max(value, shown) : Math.min(value, shown)));
  });

export interface Errors {
  readonly covariance: Float64Array[];
  /** Times each observation's standard deviation was widened; 1 for most. */
  readonly outlying: readonly number[];
}

/** The covariance, wider for what lies off all runs. */
export function widened(observed: readonly Observed[], predicted: Matrix, allowed: Matrix): Errors {
  const d = deviations(predicted);
  const spread = covariances(d, d);
  const outlying = observed.map(({ value }, i) => {
    const off = Math.abs(value - meanOf(predicted[i]!));
    const expected = Math.sqrt(spread[i]![i]! + allowed[i]![i]!);
    return Math.max(1, off / expected / JUDGEMENT.outlyingFrom);
  });
  const covariance = allowed.map((row, i) =>
    row.map((value, j) => (i === j ? value + observed[i]!.error ** 2 * (outlying[i]! ** 2 - 1) : value)),
  );
  return { covariance, outlying };
}
