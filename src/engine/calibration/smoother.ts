/**
 * Ensemble smoother with multiple data assimilation: what members are (rows of standard scores) is moved towards what
 * was observed by the covariance, over the members, of scores with predictions; several times, each with the
 * observations' errors made larger, so that the whole counts them once. Exact for a linear model with normal errors as
 * the ensemble grows. Emerick & Reynolds 2013. docs/model/calibration.md, "The smoother".
 */
import { scores } from "../numeric/draws.ts";
import { cholesky, covariances, deviations, type Matrix, solve, timesLower, zeros } from "./matrix.ts";

/** Times that the errors' variance is taken in each pass: one over them adds up to one. */
export const PASSES: readonly number[] = [9.333, 7, 4, 2];

export interface Assimilation {
  /** A row a name, a column a member. */
  readonly scores: Matrix;
  /** A row an observation, a column a member. */
  readonly predicted: Matrix;
  readonly observed: Float64Array;
  /** Covariance of the observations' errors. */
  readonly errors: Matrix;
  /** Times the errors' covariance is taken in this pass. */
  readonly times: number;
  /** Observations whose predictions are to stay as they are: they hold the runs and pull at nothing. Default: none. */
  readonly held?: readonly boolean[];
  /** Names the noise of this pass. */
  readonly noise: string;
  readonly seed: number;
}

/** Scores after one pass. */
export function assimilated(given: Assimilation): Float64Array[] {
  const { predicted, observed, errors, times } = given;
  const count = observed.length;
  const members = predicted[0]?.length ?? 0;
  if (count === 0) return given.scores.map((row) => Float64Array.from(row));
  const z = deviations(given.scores);
  const d = deviations(predicted);
  const spread = covariances(d, d);
  const factor = cholesky(spread.map((row, i) => row.map((value, j) => value + times * errors[i]![j]!)));
  const noise = noiseOf(given, members);
  const weights = zeros(members, count);
  for (let m = 0; m < members; m += 1) {
    const innovation = Float64Array.from({ length: count }, (_, i) =>
      given.held?.[i] === true ? 0 : observed[i]! + noise[m]![i]! - predicted[i]![m]!,
    );
    weights[m]!.set(solve(factor, innovation));
  }
  const gain = covariances(z, d);
  return given.scores.map((row, k) =>
    row.map((score, m) => {
      const w = weights[m]!;
      const g = gain[k]!;
      let moved = score;
      for (let i = 0; i < count; i += 1) moved += g[i]! * w[i]!;
      return moved;
    }),
  );
}

/** Errors drawn for every member, with the observations' covariance and no mean. */
function noiseOf({ errors, times, noise, seed }: Assimilation, members: number): Float64Array[] {
  const lower = cholesky(errors);
  const plain = errors.map((_, i) => {
    const row = scores(`${noise} ${i}`, members, seed);
    const mean = row.reduce((sum, value) => sum + value, 0) / members;
    return row.map((value) => (value - mean) * Math.sqrt(times));
  });
  return Array.from({ length: members }, (_, m) =>
    timesLower(
      lower,
      Float64Array.from(plain, (row) => row[m]!),
    ),
  );
}
