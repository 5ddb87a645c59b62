/** Chances that sum to 1 as whole grains of twenty that sum to 20: what is left goes to the largest remainders. */
const GRAINS = 20;

export function twentieths(chances: readonly number[]): number[] {
  const exact = chances.map((chance) => chance * GRAINS);
  const grains = exact.map((value) => Math.floor(value + 1e-9));
  const left = GRAINS - grains.reduce((sum, value) => sum + value, 0);
  const byRemainder = exact
    .map((value, index) => ({ index, rest: value - (grains[index] ?? 0) }))
    .sort((a, b) => b.rest - a.rest || a.index - b.index);
  for (const { index } of byRemainder.slice(0, Math.max(0, left))) grains[index] = (grains[index] ?? 0) + 1;
  return grains;
}

/** One chance alone, which may stand beside others that do not exclude it. */
export const ofTwenty = (chance: number): number => Math.round(chance * GRAINS);
