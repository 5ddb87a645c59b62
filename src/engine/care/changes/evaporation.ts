/**
 * Water that leaves as vapour, and what that does to salinity: three ways to tell how much. Salt stays.
 * Equations: docs/model/water-changes.md, "Evaporation".
 */
import { vapourPressure } from "../../seawater/oxygen.ts";
import { type Celsius, type PracticalSalinity, practicalSalinity } from "../../units/quantity.ts";

/** kg of water in each kg of dry air. */
const moisture = (atm: number): number => (0.62198 * atm) / (1 - atm);

/**
 * Litres a day from an open surface: (25 + 19 v) kg an hour for each m2 and each kg/kg of difference in moisture, v the
 * air's speed in m/s. A handbook's rule for open water indoors; from memory. Zero where the air is wetter.
 */
export function evaporationFromArea(
  areaM2: number,
  water: { readonly temperature: Celsius; readonly salinity: PracticalSalinity },
  room: { readonly temperature: Celsius; readonly humidity: number },
  airMs: number,
): number {
  const over = moisture(vapourPressure(water.temperature, water.salinity));
  const air = moisture(room.humidity * vapourPressure(room.temperature, practicalSalinity(0)));
  return Math.max(0, 24 * (25 + 19 * airMs) * areaM2 * (over - air));
}

/** Litres that left, from salinity that rose with nothing topped up; by volume, within 0.3 % of the loss. */
export const evaporationFromDrift = (litres: number, from: number, to: number): number =>
  litres * (1 - from / to);

/** Heat that takes with it, W: 2440 kJ a kg near 25 °C. */
export const evaporationWatts = (litresPerDay: number): number => (litresPerDay * 2_440_000) / 86_400;

/** Litres of fresh water that bring salinity down by `fall`. */
export const freshForFall = (litres: number, psu: number, fall: number): number =>
  fall >= psu ? Number.POSITIVE_INFINITY : litres * (psu / (psu - fall) - 1);
