/** Binomial and beta-binomial chances on whole numbers, by products: no table, no rounding to speak of below 300 heads. */

/** How many ways to choose `k` of `n`. */
export function choose(n: number, k: number): number {
  if (k < 0 || k > n) return 0;
  let ways = 1;
  const less = Math.min(k, n - k);
  for (let i = 1; i <= less; i += 1) ways = (ways * (n - less + i)) / i;
  return ways;
}

/** Chance that `k` of `n` succeed, each with chance `p`. */
export const binomial = (k: number, n: number, p: number): number =>
  k < 0 || k > n ? 0 : choose(n, k) * p ** k * (1 - p) ** (n - k);

/**
 * Chance that `k` of `n` are seen when the chance itself differs from count to count: beta-distributed about `mean`,
 * as narrow as `strength` says (the sum of its two shape parameters).
 */
export function betaBinomial(k: number, n: number, mean: number, strength: number): number {
  if (k < 0 || k > n) return 0;
  const a = mean * strength;
  const b = (1 - mean) * strength;
  let chance = choose(n, k);
  for (let i = 0; i < k; i += 1) chance *= (a + i) / (strength + i);
  for (let i = 0; i < n - k; i += 1) chance *= (b + i) / (strength + k + i);
  return chance;
}
