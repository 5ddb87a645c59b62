/** What a dose of ammonia nitrogen is in grams of ammonium chloride, and in dry food. Mass balance: no kinetics. */
import type { Spread } from "../../engine/types/estimate.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { ATOMIC_MASS } from "../../engine/units/masses.ts";

const { N, H, Cl } = ATOMIC_MASS;
/** mg of pure ammonium chloride for a mg of nitrogen. */
export const CHLORIDE_PER_N = (N + 4 * H + Cl) / N;

const spreadOf = (of: (end: "low" | "central" | "high") => number): Spread => ({
  low: of("low"),
  central: of("central"),
  high: of("high"),
});

/** Grams for so much nitrogen a litre of all the water. */
export const ammoniumChlorideG = (waterL: Spread, mgNPerL: number): Spread =>
  spreadOf((end) => (waterL[end] * mgNPerL * CHLORIDE_PER_N) / 1000);

/** Grams of dry food that hold as much nitrogen: more water and leaner food make more of it. */
export const dryFoodG = (
  { waterL, feedNMgPerG }: Pick<TankFacts, "waterL" | "feedNMgPerG">,
  mgNPerL: number,
): Spread => ({
  low: (waterL.low * mgNPerL) / feedNMgPerG.high,
  central: (waterL.central * mgNPerL) / feedNMgPerG.central,
  high: (waterL.high * mgNPerL) / feedNMgPerG.low,
});
