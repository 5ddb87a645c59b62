/**
 * Where invented numbers come from: a seeded stream. The laws let fast-check choose the seed; a counterexample is
 * that one number, and `drawOf(it)` invents the same world again.
 */
import { RandomStream } from "../../numeric/random.ts";

export interface Draw {
  readonly between: (low: number, high: number) => number;
  /** A whole number, both ends included. */
  readonly whole: (low: number, high: number) => number;
}

export function drawOf(seed: number): Draw {
  const random = new RandomStream(seed);
  return {
    between: (low, high) => low + (high - low) * random.uniform(),
    whole: (low, high) => low + Math.floor((high - low + 1) * random.uniform()),
  };
}

export const oneOf = <Item>(draw: Draw, items: readonly Item[]): Item =>
  items[draw.whole(0, items.length - 1)]!;

export const chance = (draw: Draw, share: number): boolean => draw.between(0, 1) < share;

/** Between the two with even odds for every power of ten: for what spans scales. */
export const acrossScales = (draw: Draw, low: number, high: number): number =>
  Math.exp(draw.between(Math.log(low), Math.log(high)));
