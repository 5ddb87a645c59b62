/** Draws for invented worlds: one seeded stream, and the few ways a check wants to draw from it. */
import { RandomStream } from "../../src/engine/numeric/random.ts";

export class Chance {
  private readonly stream: RandomStream;

  constructor(seed: number, stream = 0) {
    this.stream = new RandomStream(seed, stream);
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.stream.uniform();
  }

  /** Even over the logarithm: as many tanks of 10 to 100 L as of 100 to 1,000 L. */
  logBetween(low: number, high: number): number {
    return low * (high / low) ** this.stream.uniform();
  }

  /** A standard normal score. */
  normal(): number {
    return Math.sqrt(-2 * Math.log(this.between(1e-9, 1))) * Math.cos(2 * Math.PI * this.between(0, 1));
  }

  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number {
    return Math.floor(this.between(low, high + 1));
  }

  /** True in a share `p` of the draws. */
  is(p: number): boolean {
    return this.stream.uniform() < p;
  }

  pick<T>(items: readonly T[]): T {
    return items[this.whole(0, items.length - 1)]!;
  }

  /** Up to `most` different items. */
  some<T>(items: readonly T[], most: number): T[] {
    const picked = new Set<T>();
    const count = this.whole(0, most);
    for (let i = 0; i < count; i += 1) picked.add(this.pick(items));
    return [...picked];
  }
}
