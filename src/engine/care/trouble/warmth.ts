/**
 * How fast a tank warms by a heater that sticks on, and cools with none. docs/model/trouble.md, "Warmth".
 * Newton's law of cooling with one loss for walls, floor, surface and evaporation together; a box nearly as wide as high.
 */
import { exp, log } from "../../numeric/elementary.ts";

/** Heat to warm a litre of seawater by a degree, J: 1.0235 kg/L by 3990 J/kg/K at salinity 35 and 25 °C. */
export const JOULE_PER_LITRE = 4080;
/**
 * Loss through a square metre of the tank's outside, W for each degree above the room: air inside a room takes 5 to 14
 * by currents and radiation, glass of 6 to 12 mm hinders little, evaporation adds. Judgement.
 */
export const LOSS_W_PER_M2 = { low: 5, central: 8, high: 14 } as const;
/** Outside of a box of 1 m3, m2, all six sides; a cube has 6, a long tank 7. */
const BOX_M2 = 6.4;

/** Outside of a tank of so many litres, m2. */
export const outsideM2 = (litres: number): number => BOX_M2 * (litres / 1000) ** (2 / 3);

/** Degrees an hour by a heater of `watts`, nothing lost: the most that it can do. */
export const warmingPerHour = (watts: number, litres: number): number =>
  (watts * 3600) / (litres * JOULE_PER_LITRE);

/** Degrees above the room at which a heater that never stops holds the tank. */
export const settlesAboveRoom = (watts: number, litres: number, lossPerM2: number): number =>
  watts / (lossPerM2 * outsideM2(litres));

/** Hours in which the distance to the room falls to 37 % (1/e). */
export const coolingHours = (litres: number, lossPerM2: number): number =>
  (litres * JOULE_PER_LITRE) / (lossPerM2 * outsideM2(litres) * 3600);

/** Hours until water of `from` has cooled to `to`; null where the room is as warm as that, 0 where it is there. */
export function hoursToCool(from: number, to: number, room: number, coolingH: number): number | null {
  if (from <= to) return 0;
  if (room >= to) return null;
  return coolingH * log((from - room) / (to - room));
}

/** Temperature after so many hours without a heater. */
export const cooledTo = (from: number, room: number, hours: number, coolingH: number): number =>
  room + (from - room) * exp(-hours / coolingH);
