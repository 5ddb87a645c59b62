/**
 * CO2 of water and of the air above it: fugacity and partial pressure, and what air of so many ppm presses with.
 * Equations: docs/model/seawater.md, "CO2".
 */
import { exp } from "../numeric/elementary.ts";
import {
  type Atmosphere,
  atmosphere,
  type Celsius,
  type Microatmosphere,
  microatmosphere,
} from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";
import { toKelvin } from "../units/temperature.ts";
import type { Water } from "./carbonate.ts";
import { vapourPressure } from "./oxygen.ts";
import { requireWater } from "./validity.ts";

/** cm3 atm/(mol K). */
const GAS_CONSTANT = 82.0574;
const ONE_ATMOSPHERE = atmosphere(1);

const PPM: Range = {
  ...{ name: "CO2 of the air", unit: "ppm", min: 100, max: 50_000, source: "weiss-1974" },
  wayOut: (value) => (value > 0 && value <= 5 ? `if that was per cent, it is ${value * 10_000} ppm` : null),
};

/**
 * Fugacity over partial pressure at one atmosphere: 0.9968 at 25 °C. The air above is taken to hold little CO2.
 * @source weiss-1974, in copies
 */
export function fugacityShare(temperature: Celsius): number {
  const t = toKelvin(temperature);
  const ofCo2 = -1636.75 + 12.0408 * t - 0.0327957 * t ** 2 + 3.16528e-5 * t ** 3;
  const withAir = 57.7 - 0.118 * t;
  return exp((ofCo2 + 2 * withAir) / (GAS_CONSTANT * t));
}

/** Partial pressure of CO2 from its fugacity. */
export const partialPressure = (fco2: Microatmosphere, temperature: Celsius): Microatmosphere =>
  microatmosphere(fco2 / fugacityShare(temperature));

/** Fugacity of CO2 from its partial pressure. */
export const fugacity = (pco2: Microatmosphere, temperature: Celsius): Microatmosphere =>
  microatmosphere(pco2 * fugacityShare(temperature));

/**
 * What CO2 of the air presses with on water, in µatm: ppm of dry air, less what water vapour takes of the pressure.
 * @throws OutOfRange beyond 100 to 50,000 ppm, salinity 0 to 45, -2 to 45 °C
 * @source weiss-1974; vapour after benson-krause-1984
 */
export function pressureOfAir(
  ppm: number,
  { temperature, salinity }: Water,
  pressure: Atmosphere = ONE_ATMOSPHERE,
): Microatmosphere {
  const task = "work out CO2 of the air";
  requireRange(task, [PPM, ppm]);
  requireWater(task, "co2Solubility", temperature, salinity);
  return microatmosphere(ppm * (pressure - vapourPressure(temperature, salinity)));
}
