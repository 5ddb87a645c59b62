/**
 * Practical salinity of 1978: what a conductivity means as salinity, and back. At the surface only.
 * Equations: docs/model/seawater.md, "Salinity from conductivity". Why to trust them: docs/validation.md.
 */
import { findRoot } from "../numeric/root.ts";
import {
  type Celsius,
  type MillisiemensPerCentimetre,
  millisiemensPerCentimetre,
  type PracticalSalinity,
  practicalSalinity,
} from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";
import { toT68 } from "../units/temperature.ts";
import { requireWater } from "./validity.ts";

/** mS/cm of seawater of salinity 35 at 15 °C (1968 scale), the point the scale hangs on. */
export const STANDARD_CONDUCTIVITY = 42.914;

const A = [0.008, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081] as const;
const B = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144] as const;

/** Square roots of the salinity ratio between which every salinity from 0.1 to 50 lies, with room to spare. */
const ROOT_BRACKET = [0.05, 1.4] as const;

const CONDUCTIVITY: Range = {
  ...{ name: "conductivity", unit: "mS/cm", min: 0.1, max: 110, source: "unesco-44" },
  wayOut: (value) => (value > 1000 ? `if that was µS/cm, it is ${value / 1000} mS/cm` : null),
};

/**
 * Practical salinity from a conductivity in mS/cm and the temperature it holds for: the sample's own for a raw
 * reading, 25 °C for a meter that says it corrects to 25 °C.
 *
 * Fitted for salinity 2 to 42, -2 to 35 °C; agrees with the printed tables to their last digit (0.0001).
 * @throws OutOfRange when the conductivity, the temperature or the salinity that comes out is beyond the limits
 * @source unesco-44, culkin-smith-1980
 */
export function salinityFromConductivity(
  conductivity: MillisiemensPerCentimetre,
  temperature: Celsius,
): PracticalSalinity {
  const task = "work out salinity from conductivity";
  requireRange(task, [CONDUCTIVITY, conductivity]);
  const t68 = toT68(temperature);
  const ratio = conductivity / STANDARD_CONDUCTIVITY / temperatureFactor(t68);
  const salinity = salinityFromRatio(ratio, t68);
  requireWater(task, "conductivity", temperature, salinity);
  return salinity;
}

/**
 * Conductivity in mS/cm of seawater at its own temperature.
 *
 * Fitted for salinity 2 to 42, -2 to 35 °C; agrees with the printed ratios to 1e-6.
 * @throws OutOfRange beyond salinity 0.1 to 50, -2 to 45 °C
 * @source unesco-44, culkin-smith-1980
 */
export function conductivityOf(temperature: Celsius, salinity: PracticalSalinity): MillisiemensPerCentimetre {
  requireWater("work out conductivity", "conductivity", temperature, salinity);
  const t68 = toT68(temperature);
  const excess = (x: number) => {
    const { value, slope } = salinityAtRoot(x, t68);
    return { value: value - salinity, slope };
  };
  const root = findRoot(excess, ...ROOT_BRACKET, 1e-14);
  return millisiemensPerCentimetre(STANDARD_CONDUCTIVITY * temperatureFactor(t68) * root ** 2);
}

/**
 * Practical salinity from the salinity ratio Rt (the conductivity over that of salinity 35 at the same
 * temperature) and the temperature on the 1968 scale: the heart of the scale, as the printed check rows give it.
 * @source unesco-44, page 9
 */
export function salinityFromRatio(ratio: number, t68: number): PracticalSalinity {
  return practicalSalinity(salinityAtRoot(Math.sqrt(ratio), t68).value);
}

/** Conductivity of salinity 35 at this temperature over that at 15 °C. */
function temperatureFactor(t68: number): number {
  return 0.6766097 + t68 * (2.00564e-2 + t68 * (1.104259e-4 + t68 * (-6.9698e-7 + t68 * 1.0031e-9)));
}

/** Salinity and its slope as a polynomial in x, the square root of the salinity ratio. */
function salinityAtRoot(x: number, t68: number): { value: number; slope: number } {
  const offset = (t68 - 15) / (1 + 0.0162 * (t68 - 15));
  let value = 0;
  let slope = 0;
  for (let i = A.length - 1; i >= 0; i--) {
    slope = slope * x + value;
    value = value * x + (A[i] ?? 0) + offset * (B[i] ?? 0);
  }
  return { value, slope };
}
