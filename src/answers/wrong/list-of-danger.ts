/** The list of what to do first that fits a dangerous reading. Ammonia and temperature alone can be flagged so. */
import type { CrisisId } from "./list-ids.ts";

/**
 * @param quantity as readings are named (`Measured`)
 * @returns null where no list fits better than the entry of all
 */
export function listOfDanger(quantity: string, cold: boolean): CrisisId | null {
  if (quantity === "tan_mg_n_per_l" || quantity === "no2_mg_per_l") return "ammonia";
  if (quantity === "salinity_psu") return "salinity";
  if (quantity === "temperature_c") return cold ? "cold" : "warm";
  return null;
}

/** A dangerous temperature below it is a danger by cold, C. */
const COLDER_THAN = 25;
export const dangerByCold = (value: number): boolean => value < COLDER_THAN;
/** The same, by what was said of the reading. */
export const saidCold = (said: string | null): boolean => (said ?? "").includes("too cold");
