/** Un-ionised ammonia against the limits for animals of salt water, in mg of nitrogen per litre. */
import type { WaterOutput } from "../../contract/output/water.ts";
import { SALTWATER_NH3_LIMITS } from "../../engine/seawater/ammonia.ts";
import { SEAWATER_SOURCES } from "../../engine/seawater/sources.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { ammoniaToN } from "../../engine/units/nutrients.ts";

export function ammoniaLimits(nh3N: Spread): NonNullable<WaterOutput["ammonia_limits"]> {
  const chronic = ammoniaToN(SALTWATER_NH3_LIMITS.chronicMgPerL);
  const acute = ammoniaToN(SALTWATER_NH3_LIMITS.acuteMgPerL);
  return {
    chronic_mg_n_per_l: chronic,
    acute_mg_n_per_l: acute,
    against_chronic: against(nh3N, chronic),
    against_acute: against(nh3N, acute),
    source: SEAWATER_SOURCES["epa-1989"],
  };
}

function against({ low, high }: Spread, limit: number): "below" | "either" | "above" {
  if (high < limit) return "below";
  return low > limit ? "above" : "either";
}

/** Above what is borne for days, or about what kills within an hour. */
export const isDanger = (limits: NonNullable<WaterOutput["ammonia_limits"]>): boolean =>
  limits.against_acute !== "below" || limits.against_chronic === "above";

export const ACT_TODAY =
  "Danger: if animals are in this water, act today. Stop feeding, change a quarter of the water for new water of " +
  "the same salinity and temperature, then test again.";
