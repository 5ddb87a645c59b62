/** Density of seawater and of pure water at one atmosphere (EOS-80). Equations: docs/model/seawater.md, "Density". */
import {
  type Celsius,
  type KilogramPerCubicMetre,
  kilogramPerCubicMetre,
  type PracticalSalinity,
  practicalSalinity,
} from "../units/quantity.ts";
import { toT68 } from "../units/temperature.ts";
import { requireWater } from "./validity.ts";

/**
 * Density of seawater in kg/m3.
 *
 * Fitted for salinity 0 to 42, -2 to 40 °C; agrees with the printed table to its last digit (1e-5), and with the
 * newer TEOS-10 within 0.008 kg/m3 up to salinity 45.
 * @throws OutOfRange beyond salinity 0 to 50, -2 to 45 °C
 * @source millero-poisson-1981 as in unesco-44, pages 17 to 19
 */
export function density(temperature: Celsius, salinity: PracticalSalinity): KilogramPerCubicMetre {
  requireWater("work out density", "density", temperature, salinity);
  const t = toT68(temperature);
  return kilogramPerCubicMetre(
    pureWater(t) + salinity * linear(t) + salinity ** 1.5 * threeHalves(t) + 4.8314e-4 * salinity ** 2,
  );
}

/**
 * How density in kg/m3 rises with each psu of salinity, at this temperature: the slope root finding goes by.
 * @source millero-poisson-1981, differentiated
 */
export function densityPerSalinity(temperature: Celsius, salinity: PracticalSalinity): number {
  const t = toT68(temperature);
  return linear(t) + 1.5 * Math.sqrt(salinity) * threeHalves(t) + 2 * 4.8314e-4 * salinity;
}

/**
 * Density of pure water in kg/m3, -2 to 45 °C, to 1e-5: the water a specific gravity is measured against.
 * @throws OutOfRange beyond -2 to 45 °C
 * @source millero-poisson-1981 as in unesco-44, page 17
 */
export function pureWaterDensity(temperature: Celsius): KilogramPerCubicMetre {
  requireWater("work out the density of pure water", "density", temperature, practicalSalinity(0));
  return kilogramPerCubicMetre(pureWater(toT68(temperature)));
}

function pureWater(t: number): number {
  return (
    999.842594 +
    t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))))
  );
}

function linear(t: number): number {
  return 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
}

function threeHalves(t: number): number {
  return -5.72466e-3 + t * (1.0227e-4 + t * -1.6546e-6);
}
