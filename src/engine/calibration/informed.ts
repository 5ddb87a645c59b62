/**
 * Which names the observations can tell of: those whose score goes with the predictions by more than chance would have
 * it among so few members. The others stay as drawn, so that nothing is learned from a coincidence.
 */
import { cholesky, covariances, deviations, dot, type Matrix, solve } from "./matrix.ts";

/** Times the share that chance explains, from which a name counts as told of. Judgement. */
const ABOVE_CHANCE = 2.2;
/** No more names than this, the best told first: what is kept stays small. */
const MOST_NAMES = 40;

/** Positions of the names that are told of, ascending. */
export function informed(scores: Matrix, predicted: Matrix, errors: Matrix): number[] {
  const members = predicted[0]?.length ?? 0;
  const d = deviations(predicted);
  const spread = covariances(d, d);
  const factor = cholesky(spread.map((row, i) => row.map((value, j) => value + errors[i]![j]!)));
  // As many independent directions as the observations see, of as many members: what chance alone explains.
  const seen = spread.reduce((sum, row, i) => sum + solve(factor, row)[i]!, 0);
  const chance = seen / members;
  const gains = covariances(deviations(scores), d);
  return gains
    .map((gain, k) => ({ k, told: dot(gain, solve(factor, gain)) }))
    .filter(({ told }) => told > ABOVE_CHANCE * chance)
    .sort((a, b) => b.told - a.told || a.k - b.k)
    .slice(0, MOST_NAMES)
    .map(({ k }) => k)
    .sort((a, b) => a - b);
}
