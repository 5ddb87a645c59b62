/**
 * Which names the observations can tell of: those whose score goes with the predictions by more than chance would have
 * it among so few members. The others stay as drawn, so that nothing is learned from a coincidence.
 */
import { JUDGEMENT } from "./judgement.ts";
import { cholesky, covariances, deviations, dot, type Matrix, solve } from "./matrix.ts";

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
    .filter(({ told }) => told > JUDGEMENT.aboveChance * chance)
    .sort((a, b) => b.told - a.told || a.k - b.k)
    .slice(0, JUDGEMENT.mostNames)
    .map(({ k }) => k)
    .sort((a, b) => a - b);
}
