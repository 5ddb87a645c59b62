/** A distribution of heads in numbers that can be said: the middle 90 %, the likeliest, and twenty runs. */
import type { Spread } from "../types/estimate.ts";

/** Least number with at least a share of the chances at or below it. */
export function headsAt(chances: readonly number[], share: number): number {
  let sum = 0;
  for (const [heads, chance] of chances.entries()) {
    sum += chance;
    if (sum >= share - 1e-9) return heads;
  }
  return chances.length - 1;
}

export const likeliest = (chances: readonly number[]): number =>
  chances.reduce((best, chance, heads) => (chance > chances[best]! ? heads : best), 0);

export const meanHeads = (chances: readonly number[]): number =>
  chances.reduce((sum, chance, heads) => sum + heads * chance, 0);

/** `central` is the likeliest number; low and high hold nine tenths of the chances. */
export function headsBand(chances: readonly number[]): Spread {
  const central = likeliest(chances);
  return {
    low: Math.min(central, headsAt(chances, 0.05)),
    central,
    high: Math.max(central, headsAt(chances, 0.95)),
  };
}

/** Twenty equally likely numbers of heads, the least first. */
export const headsOf20 = (chances: readonly number[]): number[] =>
  Array.from({ length: 20 }, (_, run) => headsAt(chances, (run + 0.5) / 20));
