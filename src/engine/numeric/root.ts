/** One root of a function of one number, found for certain: Newton's steps, kept inside a bracket by bisection. */

/** Value and slope of a function at one point. */
export interface Slope {
  readonly value: number;
  readonly slope: number;
}

/** Bisection alone narrows a bracket to the last bit of a double in about 60 halvings. */
const MOST_ROUNDS = 100;

/**
 * The x between `low` and `high` where `f` is 0, to within `tolerance` of x.
 * Newton's step is taken where it stays inside the bracket and shrinks fast enough; else the bracket is halved,
 * so that any continuous function that changes sign is solved.
 * @throws RangeError if `f` has one sign at both ends: the caller must bracket the root
 */
export function findRoot(f: (x: number) => Slope, low: number, high: number, tolerance: number): number {
  const atLow = f(low).value;
  const atHigh = f(high).value;
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (!(atLow * atHigh < 0)) {
    throw new RangeError(
      `Cannot find a root between ${low} and ${high} as the function must change sign: ` +
        `received ${atLow} and ${atHigh}; widen the bracket`,
    );
  }
  let [below, above] = atLow < 0 ? [low, high] : [high, low];
  let x = (below + above) / 2;
  let lastStep = Math.abs(above - below);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { value, slope } = f(x);
    if (value === 0) return x;
    if (value < 0) below = x;
    else above = x;
    const newton = x - value / slope;
    const inside = (newton - below) * (newton - above) < 0;
    const next = inside && Math.abs(newton - x) < lastStep / 2 ? newton : (below + above) / 2;
    lastStep = Math.abs(next - x);
    x = next;
    if (lastStep <= tolerance) return x;
  }
  return x;
}
