/**
 * Where feed goes and what fish need, by the shares of the tank model (docs/model/balance.md, "Feed and fish"), for one day
 * of feeding. docs/model/feeding.md. Limits: nothing here runs the tank; what becomes of it over weeks is the forecast's.
 */
import { eatenFeed } from "../../balance/eaten.ts";
import { exp, log } from "../../numeric/elementary.ts";

/** Share of a day's feed that stays in the water: what fish miss, and what is past the most that they can take. */
export const leftShare = (feedGPerDay: number, mostGPerDay: number, missed: number): number =>
  feedGPerDay > 0 ? 1 - eatenFeed(feedGPerDay, mostGPerDay, missed) / feedGPerDay : missed;

/** The model's shares, of 1: left by fish; of eaten: f in faeces, g kept; o of what is excreted dissolved organic. */
interface FeedShares {
  readonly left: number;
  readonly faeces: number;
  readonly kept: number;
  readonly organic: number;
}

/** Of what was fed, of 1; the five add up to it. */
export interface FedGoes {
  readonly leftovers: number;
  readonly faeces: number;
  readonly fish: number;
  readonly organic: number;
  readonly dissolved: number;
}

/** Of nitrogen `dissolved` is ammonia, of phosphorus phosphate (with `organic` 0). */
export function fedGoes({ left, faeces, kept, organic }: FeedShares): FedGoes {
  const eaten = 1 - left;
  const excreted = eaten * Math.max(0, 1 - faeces - kept);
  return {
    leftovers: left,
    faeces: eaten * faeces,
    fish: eaten * kept,
    organic: excreted * organic,
    dissolved: excreted * (1 - organic),
  };
}

/** What warmth does to what fish need, against 25 °C. */
export const warmer = (q10: number, temperatureC: number): number =>
  exp((log(q10) * (temperatureC - 25)) / 10);

/** Share of days fed when `fasts` days of seven nothing is given. */
export const fedDays = (fasts: number): number => (7 - fasts) / 7;
