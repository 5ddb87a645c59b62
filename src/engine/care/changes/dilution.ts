/**
 * What water changes do to anything that is dissolved and conserved: closed forms of dilution, and of a steady rise
 * against them. Equations: docs/model/water-changes.md. Limits: new and old water mix fully before the next change; the
 * water is that in the tank and its sump, without rock and sand. pH, saturation, un-ionised ammonia and specific gravity
 * do not mix like this: mix alkalinity, carbon and salt first, then work them out.
 */
import { exp, log } from "../../numeric/elementary.ts";

/** x^n of a share for any n of 0 or more, the same bits everywhere. */
const power = (share: number, n: number): number =>
  n === 0 ? 1 : share <= 0 ? 0 : share === 1 ? 1 : exp(n * log(share));

/** Share of the first water that is still there after so many changes of `share` each. */
export const oldLeft = (share: number, changes: number): number => power(1 - share, changes);

/** The same where water runs in and out at once; `volumes` is what has passed, in volumes of the tank. */
export const oldLeftContinuous = (volumes: number): number => exp(-volumes);

/** @param left share of the first water still there */
export const mixed = (before: number, fresh: number, left: number): number => fresh + (before - fresh) * left;

/** Share of the first water that may be left at `target`; null where changes with this water never lead there. */
export function leftAt(before: number, fresh: number, target: number): number | null {
  if (target === before) return 1;
  const left = (target - fresh) / (before - fresh);
  return Number.isFinite(left) && left >= 0 && left < 1 ? left : null;
}

/** Share of each of `changes` equal changes after which so much is left. */
export const shareOfEach = (left: number, changes: number): number => 1 - power(left, 1 / changes);

/** Changes of `share` until so little is left, as a real number; infinite where all must go. */
export const changesUntil = (left: number, share: number): number =>
  left >= 1 ? 0 : share >= 1 ? 1 : left <= 0 ? Number.POSITIVE_INFINITY : log(left) / log(1 - share);

/** Volumes of the tank that must run through until so little is left. */
export const volumesUntil = (left: number): number =>
  left >= 1 ? 0 : left <= 0 ? Number.POSITIVE_INFINITY : -log(left);

/** Level after a share of the water was changed, all at once. */
export const afterChange = (before: number, fresh: number, share: number): number =>
  mixed(before, fresh, 1 - share);

/**
 * Share to change at once so that `level` comes down to `target`, 0 to 1; 0 where it is there already, null where new
 * water can't bring it there.
 */
export function shareToReach(level: number, target: number, fresh: number): number | null {
  if (level <= target) return 0;
  if (fresh >= target) return null;
  const left = leftAt(level, fresh, target);
  return left === null ? null : 1 - left;
}

/** How many changes of `share` each do the same; null where none can. @param share above 0, below 1 */
export function changesToReach(level: number, target: number, fresh: number, share: number): number | null {
  const whole = shareToReach(level, target, fresh);
  // Rounded down by a hair: a quarter brings a quarter, not two.
  return whole === null ? null : Math.max(0, Math.ceil(changesUntil(1 - whole, share) - 1e-9));
}

/** Where a rise between changes settles: just before each change, and just after. */
export const settlesAt = (
  fresh: number,
  rise: number,
  share: number,
): { readonly before: number; readonly after: number } => ({
  before: fresh + rise / share,
  after: fresh + (rise * (1 - share)) / share,
});

/** Where it settles when `perDay` of the tank's volume runs through steadily. */
export const settlesContinuous = (fresh: number, risePerDay: number, perDay: number): number =>
  fresh + risePerDay / perDay;

/** Share that must go at each change for the level just before it to settle at `target`; null where none does. */
export function shareToSettle(fresh: number, rise: number, target: number): number | null {
  if (rise <= 0) return 0;
  const share = rise / (target - fresh);
  return share > 0 && share <= 1 ? share : null;
}

export interface ChangeStep {
  readonly before: number;
  readonly after: number;
}

/** Levels before and after each of so many changes, each after a rise. */
export function courseOfChanges(
  now: number,
  fresh: number,
  rise: number,
  share: number,
  changes: number,
): ChangeStep[] {
  const steps: ChangeStep[] = [];
  let level = now;
  for (let i = 0; i < changes; i += 1) {
    const before = level + rise;
    const after = mixed(before, fresh, 1 - share);
    steps.push({ before, after });
    level = after;
  }
  return steps;
}
