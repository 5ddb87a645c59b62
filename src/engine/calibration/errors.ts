/**
 * Errors of observations as a covariance: each one's own (kit or eye), and what the model gets wrong of a series for
 * weeks on end. Observations that lie far off every run get a wider error instead of being thrown away; readings below
 * what a kit can tell hold a run only where it lies above.
 */
import { exp } from "../numeric/elementary.ts";
import { covariances, deviations, type Matrix, meanOf } from "./matrix.ts";
import type { Group, Observed } from "./observed.ts";

/** What the model gets wrong, one standard deviation on the observation's scale, and for how long, days. Judgement. */
export const MODEL_ERROR: Readonly<Record<Group, number>> = {
  ...{ tan: 0.15, no2: 0.15, no3: 0.1, po4: 0.12 },
  ...{ film_glass: 0.12, film_rock: 0.12, film_sand: 0.12, hair_algae: 0.12, film_back: 0.15 },
  heads: 0.1,
};
export const MODEL_ERROR_DAYS = 21;
/** Standard deviations off the runs from which an observation counts as outlying. */
const OUTLYING_FROM = 2.5;

/** Covariance before anything was compared. */
export const allowedErrors = (observed: readonly Observed[]): Float64Array[] =>
  observed.map((a, i) =>
    Float64Array.from(observed, (b, j) => {
      const shared =
        a.series === b.series
          ? MODEL_ERROR[a.group] ** 2 * exp(-Math.abs(a.day - b.day) / MODEL_ERROR_DAYS)
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
    return Math.max(1, off / expected / OUTLYING_FROM);
  });
  const covariance = allowed.map((row, i) =>
    row.map((value, j) => (i === j ? value + observed[i]!.error ** 2 * (outlying[i]! ** 2 - 1) : value)),
  );
  return { covariance, outlying };
}
