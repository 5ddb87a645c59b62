/**
 * Every unit keepers use, and the canonical one each is stored in: data, and the two functions that read it.
 * Knows units, not text: which spelling means which unit is the contract's business.
 * Equal amounts per volume only; per-mass units (mg/kg) need the density and live with the seawater.
 */
import { ATOMIC_MASS, MOLAR_MASS } from "./masses.ts";
import { ZERO_CELSIUS_IN_KELVIN } from "./temperature.ts";

/** Canonical value = (value − offset) × factor. */
interface UnitRule {
  readonly factor: number;
  readonly offset?: number;
}

interface QuantityRule {
  readonly canonical: string;
  readonly units: Readonly<Record<string, UnitRule>>;
}

const { N, P, Ca, Mg } = ATOMIC_MASS;
const { nitrate, nitrite, ammonia, ammonium, phosphate, calciumCarbonate, calciumOxide } = MOLAR_MASS;

const INCH_CM = 2.54;
const FOOT_CM = 30.48;
const POUND_G = 453.59237;

/** Quantity → its canonical unit and every unit it may come in. Gallons, feet, pounds: exact by definition. */
export const QUANTITIES = {
  volume: {
    canonical: "L",
    units: {
      L: { factor: 1 },
      mL: { factor: 0.001 },
      m3: { factor: 1000 },
      "US gal": { factor: 3.785411784 },
      "imp gal": { factor: 4.54609 },
      "US fl oz": { factor: 0.0295735295625 },
      in3: { factor: INCH_CM ** 3 / 1000 },
      ft3: { factor: FOOT_CM ** 3 / 1000 },
    },
  },
  length: {
    canonical: "cm",
    units: {
      cm: { factor: 1 },
      mm: { factor: 0.1 },
      m: { factor: 100 },
      in: { factor: INCH_CM },
      ft: { factor: FOOT_CM },
    },
  },
  area: {
    canonical: "m2",
    units: {
      m2: { factor: 1 },
      cm2: { factor: 1e-4 },
      in2: { factor: INCH_CM ** 2 * 1e-4 },
      ft2: { factor: FOOT_CM ** 2 * 1e-4 },
    },
  },
  mass: {
    canonical: "g",
    units: {
      g: { factor: 1 },
      mg: { factor: 0.001 },
      kg: { factor: 1000 },
      lb: { factor: POUND_G },
      oz: { factor: POUND_G / 16 },
    },
  },
  temperature: {
    canonical: "C",
    units: {
      C: { factor: 1 },
      F: { factor: 1 / 1.8, offset: 32 },
      K: { factor: 1, offset: ZERO_CELSIUS_IN_KELVIN },
    },
  },
  no3: {
    canonical: "mg/L as NO3",
    units: {
      "mg/L as NO3": { factor: 1 },
      "mg/L as N": { factor: nitrate / N },
      "umol/L": { factor: nitrate / 1000 },
    },
  },
  nitrite: {
    canonical: "mg/L as NO2",
    units: {
      "mg/L as NO2": { factor: 1 },
      "mg/L as N": { factor: nitrite / N },
      "umol/L": { factor: nitrite / 1000 },
    },
  },
  /** Total ammonia: NH3 and NH4 together, whatever the kit reports it as. */
  tan: {
    canonical: "mg/L as N",
    units: {
      "mg/L as N": { factor: 1 },
      "mg/L as NH3": { factor: N / ammonia },
      "mg/L as NH4": { factor: N / ammonium },
      "umol/L": { factor: N / 1000 },
    },
  },
  phosphate: {
    canonical: "mg/L as PO4",
    units: {
      "mg/L as PO4": { factor: 1 },
      "mg/L as P": { factor: phosphate / P },
      "ug/L as PO4": { factor: 0.001 },
      "ug/L as P": { factor: phosphate / P / 1000 },
      "umol/L": { factor: phosphate / 1000 },
    },
  },
  /** A German degree is 10 mg CaO per litre; CaO and CaCO3 take up two equivalents a mole. */
  alkalinity: {
    canonical: "meq/L",
    units: {
      "meq/L": { factor: 1 },
      dKH: { factor: (2 * 10) / calciumOxide },
      "mg/L as CaCO3": { factor: 2 / calciumCarbonate },
    },
  },
  calcium: {
    canonical: "mg/L",
    units: {
      "mg/L": { factor: 1 },
      "mmol/L": { factor: Ca },
      "mg/L as CaCO3": { factor: Ca / calciumCarbonate },
    },
  },
  magnesium: {
    canonical: "mg/L",
    units: {
      "mg/L": { factor: 1 },
      "mmol/L": { factor: Mg },
      "mg/L as CaCO3": { factor: Mg / calciumCarbonate },
    },
  },
  conductivity: {
    canonical: "mS/cm",
    units: {
      "mS/cm": { factor: 1 },
      "uS/cm": { factor: 0.001 },
      "S/m": { factor: 10 },
    },
  },
} as const satisfies Readonly<Record<string, QuantityRule>>;

export type QuantityKey = keyof typeof QUANTITIES;

/** The units a quantity may come in. */
export type UnitOf<Q extends QuantityKey> = keyof (typeof QUANTITIES)[Q]["units"] & string;

/** The units a quantity may come in, canonical first. */
export function unitsOf<Q extends QuantityKey>(quantity: Q): readonly UnitOf<Q>[] {
  return Object.keys(QUANTITIES[quantity].units) as UnitOf<Q>[];
}

export function isUnitOf<Q extends QuantityKey>(quantity: Q, unit: string): unit is UnitOf<Q> {
  return Object.hasOwn(QUANTITIES[quantity].units, unit);
}

/** `value` in `unit`, as the quantity's canonical unit. */
export function toCanonical<Q extends QuantityKey>(quantity: Q, value: number, unit: UnitOf<Q>): number {
  const { factor, offset = 0 } = ruleOf(quantity, unit);
  return (value - offset) * factor;
}

/** The inverse of `toCanonical`: a canonical value as `unit`. */
export function fromCanonical<Q extends QuantityKey>(quantity: Q, value: number, unit: UnitOf<Q>): number {
  const { factor, offset = 0 } = ruleOf(quantity, unit);
  return value / factor + offset;
}

function ruleOf(quantity: QuantityKey, unit: string): UnitRule {
  const units: Readonly<Record<string, UnitRule>> = QUANTITIES[quantity].units;
  const rule = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (rule === undefined) {
    throw new TypeError(
      `Cannot convert ${quantity}: unit must be one of ${Object.keys(units).join(", ")}; received ${unit}`,
    );
  }
  return rule;
}
