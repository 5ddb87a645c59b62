/** Quantiles of a sample: linear between order statistics, the usual definition (type 7). */

/** `share` of the sample lies below the result. The sample need not be sorted. @throws RangeError when empty */
export function quantile(sample: ArrayLike<number>, share: number): number {
  return quantileOfSorted(Float64Array.from(sample).sort(), share);
}

/** The same for a sorted sample. */
export function quantileOfSorted(sorted: ArrayLike<number>, share: number): number {
  const { length } = sorted;
  if (length === 0) throw new RangeError("Cannot take a quantile of an empty sample");
  const at = share * (length - 1);
  const below = Math.floor(at);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, length - 1)]!;
  return low + (at - below) * (high - low);
}

/** 5 %, 50 % and 95 %: the 90 % band that every figure is shown with. */
export function bandOf(sample: ArrayLike<number>): { low: number; central: number; high: number } {
  const sorted = Float64Array.from(sample).sort();
  return {
    low: quantileOfSorted(sorted, 0.05),
    central: quantileOfSorted(sorted, 0.5),
    high: quantileOfSorted(sorted, 0.95),
  };
}

/** A sample as twenty runs of equal weight: its quantiles of 2.5, 7.5 ... 97.5 %, the least first. */
export function twentyOf(sample: ArrayLike<number>): number[] {
  const sorted = Float64Array.from(sample).sort();
  return Array.from({ length: 20 }, (_, run) => quantileOfSorted(sorted, (run + 0.5) / 20));
}
