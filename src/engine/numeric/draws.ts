/**
 * Draws from 90 % bands: the same number of members whatever the band, spread evenly over its quantiles
 * (a Latin hypercube), so that medians and quarters are steady from few members. One stream a quantity, named:
 * adding a quantity moves no other.
 */
import type { Spread } from "../types/estimate.ts";
import { normalQuantile } from "./normal.ts";
import { RandomStream } from "./random.ts";

/** z of the upper end of a 90 % band. */
const Z95 = 1.6448536269514722;

/** Standard normal scores of `count` members for one named quantity, each twentieth of the range met evenly. */
export function scores(name: string, count: number, seed: number): Float64Array {
  const random = new RandomStream(seed, hash(name));
  const order = Float64Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i -= 1) {
    const j = Math.floor(random.uniform() * (i + 1));
    const swapped = order[i]!;
    order[i] = order[j]!;
    order[j] = swapped;
  }
  return order.map((rank) => normalQuantile((rank + 0.02 + 0.96 * random.uniform()) / count));
}

/**
 * The value of a band at a score: log-normal to either side of the centre where the band is positive, normal
 * where it touches zero (never below it).
 */
export function valueAt({ low, central, high }: Spread, z: number): number {
  if (low === high) return central;
  if (low > 0) {
    return z < 0 ? central * (central / low) ** (z / Z95) : central * (high / central) ** (z / Z95);
  }
  const value = z < 0 ? central + (z / Z95) * (central - low) : central + (z / Z95) * (high - central);
  return low === 0 ? Math.max(0, value) : value;
}

/** FNV-1a over the name's UTF-16 units. */
function hash(name: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < name.length; i += 1) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193) >>> 0;
  return h;
}
