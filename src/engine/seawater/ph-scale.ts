/**
 * pH from the scale keepers' electrodes are set with (NBS, low-salt buffers) to the total hydrogen ion scale the
 * constants are made for, and back. The route is old: in practice electrodes differ by 0.01 to 0.05 around it,
 * while leaving it out makes un-ionised ammonia a quarter too high.
 * Equations: docs/model/seawater.md, "pH scales".
 */
import { exp, log, log10 } from "../numeric/elementary.ts";
import {
  type Celsius,
  type Kelvin,
  type PhNbs,
  type PhTotal,
  type PracticalSalinity,
  phNbs,
  phTotal,
} from "../units/quantity.ts";
import { toKelvin } from "../units/temperature.ts";
import { requireWater } from "./validity.ts";

export type PhScale = "nbs" | "total";

/** Chlorinity from salinity. */
export const SALINITY_PER_CHLORINITY = 1.80655;

/** Total sulfate of seawater, mol/kg. @source morris-riley-1966 */
export const totalSulfate = (salinity: PracticalSalinity): number =>
  ((0.14 / 96.062) * salinity) / SALINITY_PER_CHLORINITY;

/** Total fluoride of seawater, mol/kg. @source riley-1965 */
export const totalFluoride = (salinity: PracticalSalinity): number =>
  ((0.000067 / 18.998) * salinity) / SALINITY_PER_CHLORINITY;

/**
 * Dissociation constant of bisulfate, mol/kg-seawater, free hydrogen ion scale.
 * Fitted for salinity 5 to 45, 0 to 45 °C.
 * @source dickson-1990
 */
export function bisulfateConstant(temperature: Kelvin, salinity: PracticalSalinity): number {
  const t = temperature;
  const logT = log(t);
  const i = ionicStrength(salinity);
  const ln =
    -4276.1 / t +
    141.328 -
    23.093 * logT +
    (-13856 / t + 324.57 - 47.986 * logT) * Math.sqrt(i) +
    (35474 / t - 771.54 + 114.723 * logT) * i -
    (2698 / t) * i ** 1.5 +
    (1776 / t) * i ** 2;
  return exp(ln) * waterShare(salinity);
}

/** Dissociation constant of hydrogen fluoride, mol/kg-seawater, free hydrogen ion scale. @source dickson-riley-1979 */
export function fluorideConstant(temperature: Kelvin, salinity: PracticalSalinity): number {
  const ln = 1590.2 / temperature - 12.641 + 1.525 * Math.sqrt(ionicStrength(salinity));
  return exp(ln) * waterShare(salinity);
}

/**
 * pH on the total scale less pH on the seawater scale: about 0.0097 at salinity 35 and 25 °C.
 * @source dickson-1990, dickson-riley-1979
 */
export function totalLessSeawaterScale(temperature: Celsius, salinity: PracticalSalinity): number {
  const t = toKelvin(temperature);
  const sulfate = totalSulfate(salinity) / bisulfateConstant(t, salinity);
  const fluoride = totalFluoride(salinity) / fluorideConstant(t, salinity);
  return log10((1 + sulfate + fluoride) / (1 + sulfate));
}

/**
 * pH on the NBS scale less pH on the total scale: 0.137 at salinity 35 and 25 °C.
 *
 * Rough below salinity 20; real electrodes scatter by 0.01 to 0.05 around it.
 * @throws OutOfRange beyond salinity 0 to 45, -2 to 45 °C
 * @source takahashi-1982, dickson-1990, dickson-riley-1979
 */
export function nbsLessTotal(temperature: Celsius, salinity: PracticalSalinity): number {
  requireWater("turn pH to another scale", "phScale", temperature, salinity);
  const t = toKelvin(temperature);
  const activity = 1.2948 - 0.002036 * t + (0.0004607 - 0.000001475 * t) * salinity ** 2;
  return -log10(activity) - totalLessSeawaterScale(temperature, salinity);
}

/** pH read with NBS buffers as pH on the total scale. Range, error and source: `nbsLessTotal`. */
export const nbsToTotal = (ph: PhNbs, temperature: Celsius, salinity: PracticalSalinity): PhTotal =>
  phTotal(ph - nbsLessTotal(temperature, salinity));

/** pH on the total scale as an electrode set with NBS buffers would show it. Inverse of `nbsToTotal`. */
export const totalToNbs = (ph: PhTotal, temperature: Celsius, salinity: PracticalSalinity): PhNbs =>
  phNbs(ph + nbsLessTotal(temperature, salinity));

/** Molal ionic strength. */
const ionicStrength = (salinity: PracticalSalinity): number =>
  (19.924 * salinity) / (1000 - 1.005 * salinity);

/** kg of water in a kg of seawater: turns mol/kg-water into mol/kg-seawater. */
export const waterShare = (salinity: PracticalSalinity): number => 1 - 0.001005 * salinity;
