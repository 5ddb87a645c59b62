/**
 * Constants of the carbonate system, total hydrogen ion scale, mol/kg of seawater, and the totals that go with salinity.
 * Equations: docs/model/seawater.md, "Carbonate system". Why to trust them: docs/validation.md.
 */
import { exp, log, log10 } from "../numeric/elementary.ts";
import type { Celsius, PracticalSalinity } from "../units/quantity.ts";
import { toKelvin } from "../units/temperature.ts";
import {
  bisulfateConstant,
  fluorideConstant,
  SALINITY_PER_CHLORINITY,
  totalFluoride,
  totalLessSeawaterScale,
  totalSulfate,
} from "./ph-scale.ts";
import { requireWater } from "./validity.ts";

export interface CarbonateConstants {
  /** Solubility of CO2, mol/kg/atm. */
  readonly k0: number;
  readonly k1: number;
  readonly k2: number;
  readonly borate: number;
  /** mol²/kg². */
  readonly water: number;
  /** Free scale. */
  readonly bisulfate: number;
  /** Free scale. */
  readonly fluoride: number;
  readonly totalBoron: number;
  readonly totalSulfate: number;
  readonly totalFluoride: number;
}

/**
 * All of them for one water.
 *
 * The first two fitted for salinity 19 to 43, 2 to 35 °C (within 2 and 5 % of what was measured, by memory of the
 * paper); below salinity 19 the figure is rough.
 * @throws OutOfRange beyond salinity 5 to 45, 0 to 45 °C
 * @source lueker-2000, dickson-1990-borate, millero-1995, weiss-1974, dickson-1990, dickson-riley-1979, uppstrom-1974
 */
export function carbonateConstants(temperature: Celsius, salinity: PracticalSalinity): CarbonateConstants {
  requireWater("work out the carbonate system", "carbonate", temperature, salinity);
  const t = toKelvin(temperature);
  const s = salinity;
  const logT = log(t);
  const root = Math.sqrt(s);
  const pK1 = 3633.86 / t - 61.2172 + 9.6777 * logT - 0.011555 * s + 0.0001152 * s ** 2;
  const pK2 = 471.78 / t + 25.929 - 3.16967 * logT - 0.01781 * s + 0.0001122 * s ** 2;
  const lnBorate =
    (-8966.9 - 2890.53 * root - 77.942 * s + 1.728 * s * root - 0.0996 * s ** 2) / t +
    148.0248 +
    137.1942 * root +
    1.62142 * s +
    (-24.4344 - 25.085 * root - 0.2474 * s) * logT +
    0.053105 * root * t;
  const lnWater =
    148.9802 - 13847.26 / t - 23.6521 * logT + (118.67 / t - 5.977 + 1.0495 * logT) * root - 0.01615 * s;
  return {
    k0: co2Solubility(temperature, salinity),
    k1: 10 ** -pK1,
    k2: 10 ** -pK2,
    borate: exp(lnBorate),
    // Fitted on the seawater scale: brought to the total scale exactly, where the Guide takes a fixed step.
    water: exp(lnWater) * 10 ** -totalLessSeawaterScale(temperature, salinity),
    bisulfate: bisulfateConstant(t, salinity),
    fluoride: fluorideConstant(t, salinity),
    totalBoron: totalBoron(salinity),
    totalSulfate: totalSulfate(salinity),
    totalFluoride: totalFluoride(salinity),
  };
}

/**
 * Solubility of CO2 in mol/kg/atm. Valid for salinity 0 to 45, -1 to 45 °C; agrees with the printed table to its last
 * digit.
 * @throws OutOfRange beyond salinity 0 to 45, -2 to 45 °C
 * @source weiss-1974, table III
 */
export function co2Solubility(temperature: Celsius, salinity: PracticalSalinity): number {
  requireWater("work out how CO2 dissolves", "co2Solubility", temperature, salinity);
  const hundreds = toKelvin(temperature) / 100;
  const fresh = -60.2409 + 93.4517 / hundreds + 23.3585 * log(hundreds);
  return exp(fresh + salinity * (0.023517 - 0.023656 * hundreds + 0.0047036 * hundreds ** 2));
}

/** Total boron of seawater, mol/kg. @source uppstrom-1974 */
const totalBoron = (salinity: PracticalSalinity): number => (0.0004157 * salinity) / 35;

/** Calcium of natural seawater of this salinity, mol/kg: where nobody measured it. @source riley-tongudai-1967 */
export const referenceCalcium = (salinity: PracticalSalinity): number =>
  ((0.02128 / 40.087) * salinity) / SALINITY_PER_CHLORINITY;

/**
 * Solubility product of aragonite, mol²/kg². Fitted for salinity 5 to 44, 5 to 40 °C; the value measured at salinity 35
 * and 25 °C lies 2.5 % above the equation.
 * @throws OutOfRange beyond salinity 5 to 45, 0 to 45 °C
 * @source mucci-1983
 */
export function aragoniteProduct(temperature: Celsius, salinity: PracticalSalinity): number {
  requireWater("work out aragonite", "aragonite", temperature, salinity);
  const t = toKelvin(temperature);
  const root = Math.sqrt(salinity);
  return (
    10 **
    (-171.945 -
      0.077993 * t +
      2903.293 / t +
      71.595 * log10(t) +
      (-0.068393 + 0.0017276 * t + 88.135 / t) * root -
      0.10018 * salinity +
      0.0059415 * salinity * root)
  );
}
