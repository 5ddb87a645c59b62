/**
 * What a change of water does to something dissolved, all at once and well mixed. docs/model/trouble.md, "Dilution".
 * Limits: nothing is made or taken up meanwhile.
 */
import { log } from "../../numeric/elementary.ts";

/** Level after a share of the water was changed. */
export const afterChange = (level: number, fresh: number, share: number): number =>
  level + share * (fresh - level);

/**
 * Share to change at once so that `level` comes to `target`, 0 to 1; 0 where it is there already, null where new water
 * can't bring it there.
 */
export function shareToReach(level: number, target: number, fresh: number): number | null {
  if (level <= target) return 0;
  if (fresh >= target) return null;
  return (level - target) / (level - fresh);
}

/** How many changes of `share` each do the same; null where none can. @param share above 0, below 1 */
export function changesToReach(level: number, target: number, fresh: number, share: number): number | null {
  const whole = shareToReach(level, target, fresh);
  if (whole === null) return null;
  if (whole === 0) return 0;
  // Rounded down by a hair: a quarter brings a quarter, not two.
  return Math.ceil(log(1 - whole) / log(1 - share) - 1e-9);
}
