/** The keeper's usual care as dated events: water changes, wiping, filter cleaning, the sorbent renewed. */
import type { TankEvent } from "../balance/events.ts";
import type { TankFacts } from "../types/tank.ts";

/** Share of the wiped film that a cloth or scraper takes out; the rest floats. Judgement (reference scenarios). */
export const WIPED_OUT = 0.2;
/** Share of the film that one wiping takes. */
export const WIPED = 0.9;
/** Share of detritus on sand that goes with a water change. */
export const SIPHONED = 0.2;
const SORBENT_DAYS = 60;

/**
 * Events of `days` days, from day `from` on.
 * Intervals are whole days, at least one, so that a run lands on midnights.
 */
export function careEvents(facts: TankFacts, days: number, from = 0): TankEvent[] {
  const every = (interval: number, make: (t: number) => TankEvent): TankEvent[] => {
    const step = Math.max(1, Math.round(interval));
    const dates: TankEvent[] = [];
    for (let t = from + step; t < days; t += step) dates.push(make(t));
    return dates;
  };
  const fraction = Math.min(1, facts.waterChangeFraction.central);
  const events: TankEvent[] = [];
  if (fraction > 0) {
    events.push(
      ...every(facts.waterChangeEveryDays.central, (t) => ({
        t,
        kind: "waterChange",
        fraction,
        newNO3N: facts.newWaterNo3NMgPerL.central,
        newPO4P: facts.newWaterPo4PMgPerL.central,
        siphon: SIPHONED,
      })),
    );
  }
  if (facts.wipeGlassEveryDays.central > 0) {
    events.push(
      ...every(facts.wipeGlassEveryDays.central, (t) => ({
        t,
        kind: "wipeGlass",
        fraction: WIPED,
        removed: WIPED_OUT,
      })),
    );
  }
  if (facts.filterChangeDays !== null) {
    events.push(...every(facts.filterChangeDays, (t) => ({ t, kind: "changeFilter" })));
  }
  if (facts.phosphateSorbentMgP !== null)
    events.push(...every(SORBENT_DAYS, (t) => ({ t, kind: "renewSorbent" })));
  if (facts.refugium !== null) {
    events.push(...every(28, (t) => ({ t, kind: "harvestRefugium", fraction: 0.5 })));
  }
  return events;
}
