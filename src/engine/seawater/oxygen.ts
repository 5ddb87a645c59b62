/**
 * How much oxygen water holds when it is in balance with moist air.
 * Equations: docs/model/seawater.md, "Oxygen". Why to trust them: docs/validation.md.
 */
import { exp, log } from "../numeric/elementary.ts";
import { MOLAR_MASS } from "../units/masses.ts";
import {
  type Atmosphere,
  atmosphere,
  type Celsius,
  type MicromolePerKilogram,
  type MilligramPerLitre,
  micromolePerKilogram,
  milligramPerLitre,
  type PracticalSalinity,
} from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";
import { toKelvin, toT68 } from "../units/temperature.ts";
import { density } from "./density.ts";
import { requireWater } from "./validity.ts";

const ONE_ATMOSPHERE = atmosphere(1);

const PRESSURE: Range = {
  ...{ name: "air pressure", unit: "atm", min: 0.45, max: 1.15, source: "benson-krause-1984" },
  wayOut: (value) => {
    if (value >= 450 && value <= 1150) return `if that was hPa, it is ${(value / 1013.25).toFixed(3)} atm`;
    return null;
  },
};

const A = [5.80871, 3.20291, 4.17887, 5.10006, -9.86643e-2, 3.80369] as const;
const B = [-7.01577e-3, -7.70028e-3, -1.13864e-2, -9.51519e-3] as const;
const C0 = -2.75915e-7;

/**
 * Oxygen at saturation under one atmosphere of moist air, in µmol/kg.
 *
 * Fitted from freezing to 40 °C, salinity 0 to 42; agrees with the TEOS-10 manual's values to 1e-9.
 * @throws OutOfRange beyond salinity 0 to 45, -2 to 45 °C
 * @source garcia-gordon-1992, coefficients for the data of benson-krause-1984
 */
export function oxygenSaturationPerKg(
  temperature: Celsius,
  salinity: PracticalSalinity,
): MicromolePerKilogram {
  requireWater("work out oxygen saturation", "oxygen", temperature, salinity);
  const t = toT68(temperature);
  const ts = log((298.15 - t) / (273.15 + t));
  const fresh = A[0] + ts * (A[1] + ts * (A[2] + ts * (A[3] + ts * (A[4] + ts * A[5]))));
  const salting = B[0] + ts * (B[1] + ts * (B[2] + ts * B[3]));
  return micromolePerKilogram(exp(fresh + salinity * salting + C0 * salinity ** 2));
}

/**
 * Oxygen at saturation in mg/L, at sea level or under the air pressure given.
 *
 * Two equations fitted apart agree within 0.0018 mg/L in reef water, 0.0035 from 5 to 35 °C up to salinity 45.
 * @throws OutOfRange as above, and for pressures no town on Earth has
 * @source garcia-gordon-1992, millero-poisson-1981; pressure after benson-krause-1984
 */
export function oxygenSaturation(
  temperature: Celsius,
  salinity: PracticalSalinity,
  pressure: Atmosphere = ONE_ATMOSPHERE,
): MilligramPerLitre {
  requireRange("work out oxygen saturation", [PRESSURE, pressure]);
  const perKg = oxygenSaturationPerKg(temperature, salinity);
  const atSeaLevel = perKg * MOLAR_MASS.oxygen * 1e-6 * density(temperature, salinity);
  return milligramPerLitre(atSeaLevel * pressureFactor(temperature, salinity, pressure));
}

/**
 * Second opinion on `oxygenSaturation` at one atmosphere, in mg/L: fitted apart, to the same measurements.
 * Valid for salinity 0 to 40, 0 to 40 °C.
 * @throws OutOfRange beyond salinity 0 to 45, -2 to 45 °C
 * @source benson-krause-1984
 */
export function oxygenSaturationSecondOpinion(
  temperature: Celsius,
  salinity: PracticalSalinity,
): MilligramPerLitre {
  requireWater("work out oxygen saturation", "oxygen", temperature, salinity);
  const t = toKelvin(temperature);
  const fresh = -139.34411 + 1.575701e5 / t - 6.642308e7 / t ** 2 + 1.2438e10 / t ** 3 - 8.621949e11 / t ** 4;
  return milligramPerLitre(exp(fresh - salinity * (1.7674e-2 - 10.754 / t + 2140.7 / t ** 2)));
}

/** Share of the sea-level value that is left under another pressure; water vapour takes its part first. */
function pressureFactor(temperature: Celsius, salinity: PracticalSalinity, pressure: Atmosphere): number {
  const theta = 9.75e-4 - 1.426e-5 * temperature + 6.436e-8 * temperature ** 2;
  const vapour = vapourPressure(temperature, salinity);
  return (pressure * (1 - vapour / pressure) * (1 - theta * pressure)) / ((1 - vapour) * (1 - theta));
}

/** Vapour pressure over seawater, atm. @source benson-krause-1984 */
export function vapourPressure(temperature: Celsius, salinity: PracticalSalinity): number {
  const t = toKelvin(temperature);
  return (
    (1 - 5.37e-4 * salinity) *
    exp(
      18.1973 * (1 - 373.16 / t) +
        3.1813e-7 * (1 - exp(26.1205 * (1 - t / 373.16))) -
        1.8726e-2 * (1 - exp(8.03945 * (1 - 373.16 / t))) +
        5.02802 * log(373.16 / t),
    )
  );
}
