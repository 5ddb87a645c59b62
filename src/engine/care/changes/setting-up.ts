/**
 * Masses, loads and heat of a tank that is not there yet. docs/model/water-changes.md, "Setting up". Estimates for
 * carrying and for asking the right people: no proof that a floor or a stand holds.
 */
import { LOSS_W_PER_M2, outsideM2, warmingPerHour } from "../trouble/warmth.ts";

/** kg/m3 of soda-lime glass; from memory. */
export const GLASS_KG_PER_M3 = 2500;
/** kg a litre of dry sand as poured, of shell or aragonite; judgement. */
export const SAND_KG_PER_L = { low: 1.2, central: 1.45, high: 1.7 } as const;
/** Sand in water: its grains displace what they weigh less; solid grains of carbonate, kg a litre. From memory. */
export const GRAIN_KG_PER_L = 2.75;

/** kg of glass in an open box measured outside, all five panes as thick. */
export function glassKg(lengthCm: number, widthCm: number, heightCm: number, thickMm: number): number {
  const t = thickMm / 10;
  const outside = lengthCm * widthCm * heightCm;
  const inside = Math.max(0, lengthCm - 2 * t) * Math.max(0, widthCm - 2 * t) * Math.max(0, heightCm - t);
  return ((outside - inside) / 1e6) * GLASS_KG_PER_M3;
}

/** W that hold a tank of so many litres `degrees` above its room. */
export const holdingWatts = (litres: number, degrees: number, lossPerM2: number): number =>
  Math.max(0, degrees) * lossPerM2 * outsideM2(litres);

export const HOLDING = LOSS_W_PER_M2;

/**
 * Hours to warm new water by `degrees` with so many watts, the mean loss on the way taken off; null where the heater
 * can't bring it there.
 */
export function hoursToWarm(
  watts: number,
  litres: number,
  degrees: number,
  lossPerM2: number,
): number | null {
  if (degrees <= 0) return 0;
  if (watts <= holdingWatts(litres, degrees, lossPerM2)) return null;
  return degrees / warmingPerHour(watts - holdingWatts(litres, degrees / 2, lossPerM2), litres);
}
