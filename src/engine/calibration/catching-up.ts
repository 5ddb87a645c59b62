/**
 * What the passes left: tests of water whose runs still lie further apart than those tests allow. Where nitrate runs out
 * phosphate follows no straight line, and a pass that goes by one straight line through all runs takes only part of what
 * the tests say. Runs that have come nearer to each other lie along a straighter line, so the rest is taken by further
 * passes for those tests alone; what the other observations have brought the runs to is held.
 * docs/model/calibration.md, "Catching up".
 */
import { JUDGEMENT } from "./judgement.ts";
import { cholesky, covariances, deviations, dot, type Matrix, solve } from "./matrix.ts";
import type { Observed } from "./observed.ts";

const { apartFrom, heldWithin } = JUDGEMENT.catchingUp;
const isWater = ({ group }: Observed): boolean => group in JUDGEMENT.kit;

/**
 * For each observation whether it is of a quantity of water whose runs lie too far apart: more than `apartFrom` times as
 * far (standard deviations, over all tests of that quantity) as in a tank that answers in proportion.
 *
 * @param before what the members as drawn would have shown
 * @param now what they would show after the passes
 */
export function stillApart(
  observed: readonly Observed[],
  before: Matrix,
  now: Matrix,
  errors: Matrix,
): readonly boolean[] {
  const drawn = deviations(before);
  const spread = covariances(drawn, drawn);
  const factor = cholesky(spread.map((row, i) => row.map((value, j) => value + errors[i]![j]!)));
  const tooFar = new Map<string, boolean>();
  const apart = deviations(now);
  for (const group of new Set(observed.filter(isWater).map((one) => one.group))) {
    let left = 0;
    let allowed = 0;
    for (const [i, one] of observed.entries()) {
      if (one.group !== group) continue;
      left += dot(apart[i]!, apart[i]!) / (apart[i]!.length - 1);
      allowed += spread[i]![i]! - dot(spread[i]!, solve(factor, spread[i]!));
    }
    tooFar.set(group, left > apartFrom ** 2 * allowed);
  }
  return observed.map(({ group }) => tooFar.get(group) === true);
}

/** Errors for a pass of those that are apart: the others, held, have a part of their own variance and share none. */
export const errorsHolding = (errors: Matrix, apart: readonly boolean[], times: number): Float64Array[] =>
  errors.map((row, i) =>
    row.map((value, j) => {
      if (apart[i] === true && apart[j] === true) return value;
      return i === j ? (value * heldWithin) / times : 0;
    }),
  );
