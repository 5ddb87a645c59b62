/**
 * Masses, loads and heat of a tank that is not there yet. docs/model/water-changes.md, "Setting up". Estimates for
 * carrying and for asking the right people: no proof that a floor or a stand holds.
 */
import { outsideM2, warmingPerHour } from "../trouble/warmth.ts";
import { evaporationWatts } from "./evaporation.ts";

/** kg/m3 of soda-lime glass; from memory. */
export const GLASS_KG_PER_M3 = 2500;
/** kg a litre of dry sand as poured, of shell or aragonite; judgement. */
export const SAND_KG_PER_L = { low: 1.2, central: 1.45, high: 1.7 } as const;

/** kg of glass in an open box measured outside, all five panes as thick. */
export function glassKg(lengthCm: number, widthCm: number, heightCm: number, thickMm: number): number {
  const t = thickMm / 10;
  const outside = lengthCm * widthCm * heightCm;
  const inside = Math.max(0, lengthCm - 2 * t) * Math.max(0, widthCm - 2 * t) * Math.max(0, heightCm - t);
  return ((outside - inside) / 1e6) * GLASS_KG_PER_M3;
}

/**
 * Heat through a square metre of the outside by currents of air and radiation, W for each degree above the room;
 * evaporation apart. Free air takes 8 to 10, a floor or a stand's side hinders it. Judgement.
 */
export const DRY_LOSS_W_PER_M2 = { low: 4, central: 7, high: 10 } as const;
/** Share of an open surface's evaporation that is left under a lid; judgement. */
export const UNDER_LID = 0.2;
/** The open surface of a box nearly as wide as high: a sixth of its outside, a little more as tanks are long. */
export const surfaceM2 = (litres: number): number => outsideM2(litres) / 5.8;

/** W that hold a tank of so many litres `degrees` above its room. @param evaporated litres a day */
export const holdingWatts = (litres: number, degrees: number, dryLoss: number, evaporated: number): number =>
  Math.max(0, degrees) * dryLoss * outsideM2(litres) + evaporationWatts(evaporated);

/** The same as one loss, W for each m2 of the outside and degree: for warming and for what a stuck heater does. */
export const lossPerM2 = (litres: number, degrees: number, watts: number): number =>
  watts / (Math.max(0.1, degrees) * outsideM2(litres));

/**
 * Hours to warm new water by `degrees` with so many watts, the mean loss on the way taken off; null where the heater
 * can't bring it there.
 */
export function hoursToWarm(watts: number, litres: number, degrees: number, holding: number): number | null {
  if (degrees <= 0) return 0;
  if (watts <= holding) return null;
  return degrees / warmingPerHour(watts - holding / 2, litres);
}
