/** Ways to make an estimate, and what a filler of gaps is handed. */
import type { Estimate, Origin, Spread } from "../../engine/types/estimate.ts";
import type { AssumedField } from "./assumptions.ts";
import type { Told } from "./stated.ts";

export const estimate = (origin: Origin, band: Spread, how: string): Estimate => ({
  low: band.low,
  central: band.central,
  high: band.high,
  origin,
  how,
});

export const statedAs = (told: Told): Estimate => estimate("stated", told, told.how);

export interface Filler {
  readonly assume: (field: AssumedField) => Estimate;
  readonly assumed: string[];
}
