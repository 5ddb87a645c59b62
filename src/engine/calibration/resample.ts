/**
 * What a straight line through all runs can't do: tell apart runs that lie in another regime (rock grazed bare where the
 * keeper sees it green). Part of what the observations say is taken by weighing whole runs, and runs that agree stand for
 * those that don't; the rest is the smoother's. docs/model/calibration.md, "Runs that agree".
 */
import { exp } from "../numeric/elementary.ts";
import { cholesky, dot, type Matrix, solve } from "./matrix.ts";

export interface Weighing {
  readonly predicted: Matrix;
  readonly observed: Float64Array;
  /** Covariance of the observations' errors. */
  readonly errors: Matrix;
  /** Most of what the observations say that may be taken here, as a power of their likelihood; above 0, at most 1. */
  readonly most: number;
  /** Share of the runs that are still worth as many equally weighted ones (Kong's effective size), above 0, below 1. */
  readonly keep: number;
}

export interface Agreeing {
  /** Power of the likelihood that was taken; at most `most`. */
  readonly share: number;
  /** For each row, the row that stands there from now on: its own wherever it stays at all. */
  readonly rows: readonly number[];
}

export function runsThatAgree({ predicted, observed, errors, most, keep }: Weighing): Agreeing {
  const factor = cholesky(errors);
  const misfit = Array.from({ length: predicted[0]?.length ?? 0 }, (_, m) => {
    const off = Float64Array.from(observed, (value, i) => value - predicted[i]![m]!);
    return dot(off, solve(factor, off));
  });
  const share = shareKeeping(misfit, most, keep);
  return { share, rows: standIns(weightsAt(misfit, share)) };
}

const HALVINGS = 30;

/** The largest power of the likelihood, up to `most`, at which enough runs keep a weight of their own. */
function shareKeeping(misfit: readonly number[], most: number, keep: number): number {
  const kept = (share: number): boolean => {
    const squares = weightsAt(misfit, share).reduce((sum, weight) => sum + weight * weight, 0);
    return 1 / squares >= keep * misfit.length;
  };
  if (kept(most)) return most;
  let low = 0;
  let high = most;
  for (let k = 0; k < HALVINGS; k += 1) {
    const middle = (low + high) / 2;
    if (kept(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Weights of the runs, adding up to one. */
function weightsAt(misfit: readonly number[], share: number): number[] {
  const least = Math.min(...misfit);
  const weights = misfit.map((one) => exp((share * (least - one)) / 2));
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => weight / sum);
}

/** Systematic resampling: as many copies of each run as its weight asks for, by evenly spaced marks; copies fill the gaps. */
function standIns(weights: readonly number[]): number[] {
  const copies = weights.map(() => 0);
  let run = 0;
  let upTo = weights[0] ?? 0;
  for (const mark of weights.keys()) {
    const at = (mark + 0.5) / weights.length;
    while (at > upTo && run < weights.length - 1) {
      run += 1;
      upTo += weights[run]!;
    }
    copies[run]! += 1;
  }
  const spare = copies.flatMap((times, row) => Array.from({ length: Math.max(0, times - 1) }, () => row));
  return copies.map((times, row) => (times > 0 ? row : spare.pop()!));
}
