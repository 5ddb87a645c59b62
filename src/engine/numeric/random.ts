/**
 * Seeded random streams: same seed and stream, same numbers, on every machine.
 * xoroshiro128+ of the pure-rand library; what lies on top is the few draws that Grazewell needs.
 */
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import type { RandomGenerator } from "pure-rand/types/RandomGenerator";

export class RandomStream {
  private readonly generator: RandomGenerator;

  /** @param seed any whole number; @param stream which of the seed's independent streams, 0 or more */
  constructor(seed: number, stream = 0) {
    this.generator = xoroshiro128plus(scramble(seed, stream));
  }

  /** Uniform in [0, 1). */
  uniform(): number {
    return uniformFloat64(this.generator);
  }

  /** How many of `count` independent trials of chance `p` succeed. */
  binomial(count: number, p: number): number {
    let hits = 0;
    for (let i = 0; i < count; i += 1) if (this.uniform() < p) hits += 1;
    return hits;
  }
}

/** One 32-bit seed of two numbers, well mixed, so that neighbouring streams have nothing in common. */
function scramble(seed: number, stream: number): number {
  let x = (Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul((stream + 1) | 0, 0x85ebca6b)) >>> 0;
  x = Math.imul(x ^ (x >>> 16), 0x7feb352d) >>> 0;
  x = Math.imul(x ^ (x >>> 15), 0x846ca68b) >>> 0;
  return (x ^ (x >>> 16)) >>> 0;
}
