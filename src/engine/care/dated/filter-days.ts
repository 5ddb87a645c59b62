/**
 * What a mechanical filter gives back: what it holds decays where it hangs, so that only what is taken out in time counts.
 * Caught at an even rate and decaying by a share k a day. Equations: docs/model/almanac.md#filter.
 */
import { exp } from "../../numeric/elementary.ts";

/** Share of what was caught that has decayed by the day the filter is changed; 0 at once, towards 1 if it never is. */
export function sharedBack(decayPerDay: number, days: number): number {
  const kt = decayPerDay * days;
  if (kt <= 0) return 0;
  // Below this the difference of near numbers would eat the digits: the series' next term is kt squared over 6.
  return kt < 1e-4 ? kt / 2 : 1 - (1 - exp(-kt)) / kt;
}

/** The longest time between changes at which no more than `share` of what was caught decays, in days. */
export function daysToShare(decayPerDay: number, share: number): number {
  if (!(share > 0 && share < 1) || !(decayPerDay > 0)) {
    throw new RangeError(
      `Cannot say how long a filter may hang as share must be between 0 and 1 and decay above 0: received ${share} and ${decayPerDay}`,
    );
  }
  // Rises with the days all the way, so halving finds it.
  let [below, above] = [0, 1 / decayPerDay];
  while (sharedBack(decayPerDay, above) < share) above *= 2;
  for (let round = 0; round < 60; round++) {
    const middle = (below + above) / 2;
    if (sharedBack(decayPerDay, middle) < share) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
