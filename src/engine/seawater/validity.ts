/**
 * Where each equation was fitted, and how far beyond it is still computed, as one table.
 * Inside the fit a figure has the error its source states. Between fit and limit it is computed but marked
 * low in confidence. Beyond the limit it is refused: nothing stands behind the number there.
 */
import type { Celsius, PracticalSalinity } from "../units/quantity.ts";
import { isWithin, type Range, requireRange } from "../units/range.ts";
import { ZERO_CELSIUS_IN_KELVIN } from "../units/temperature.ts";
import type { SeawaterSource } from "./sources.ts";

type Span = readonly [min: number, max: number];

interface Validity {
  readonly source: SeawaterSource;
  readonly temperature: { readonly fit: Span; readonly limit: Span };
  readonly salinity: { readonly fit: Span; readonly limit: Span };
}

const VALIDITY = {
  // Below 0.1 the 1978 scale's polynomial turns; fresh water has no practical salinity.
  conductivity: {
    source: "unesco-44",
    temperature: { fit: [-2, 35], limit: [-2, 45] },
    salinity: { fit: [2, 42], limit: [0.1, 50] },
  },
  // At salinity 45 still within 0.008 kg/m3 of the newer equation of state.
  density: {
    source: "millero-poisson-1981",
    temperature: { fit: [-2, 40], limit: [-2, 45] },
    salinity: { fit: [0, 42], limit: [0, 50] },
  },
  oxygen: {
    source: "garcia-gordon-1992",
    temperature: { fit: [-2, 40], limit: [-2, 45] },
    salinity: { fit: [0, 42], limit: [0, 45] },
  },
  ammonia: {
    source: "clegg-whitfield-1995",
    temperature: { fit: [-2, 40], limit: [-2, 45] },
    salinity: { fit: [0, 40], limit: [0, 45] },
  },
  // The bisulfate constant is fitted from 5 up; the activity coefficient is of ocean water: rough below 20.
  phScale: {
    source: "takahashi-1982",
    temperature: { fit: [0, 40], limit: [-2, 45] },
    salinity: { fit: [20, 42], limit: [0, 45] },
  },
  co2Solubility: {
    source: "weiss-1974",
    temperature: { fit: [-1, 45], limit: [-2, 45] },
    salinity: { fit: [0, 45], limit: [0, 45] },
  },
  // Narrowest of the constants: those of carbonic acid. Borate's and bisulfate's are fitted from salinity 5 up.
  carbonate: {
    source: "lueker-2000",
    temperature: { fit: [2, 35], limit: [0, 45] },
    salinity: { fit: [19, 43], limit: [5, 45] },
  },
  aragonite: {
    source: "mucci-1983",
    temperature: { fit: [5, 40], limit: [0, 45] },
    salinity: { fit: [5, 44], limit: [5, 45] },
  },
} as const satisfies Readonly<Record<string, Validity>>;

export type Equation = keyof typeof VALIDITY;

/** `fitted`: the source's own error holds. `low`: computed beyond the fit. */
export type FitConfidence = "fitted" | "low";

/** How far the figure of an equation may be trusted at this temperature and salinity. */
export function fitConfidence(
  equation: Equation,
  temperature: Celsius,
  salinity: PracticalSalinity,
): FitConfidence {
  const of = RANGES[equation];
  return isWithin(of.temperature.fit, temperature) && isWithin(of.salinity.fit, salinity) ? "fitted" : "low";
}

/**
 * Lets an equation go on only within its limits.
 * @throws OutOfRange that names the task, the limit, its source and the likely slip of unit
 */
export function requireWater(
  task: string,
  equation: Equation,
  temperature: Celsius,
  salinity: PracticalSalinity,
): void {
  const of = RANGES[equation];
  requireRange(task, [of.temperature.limit, temperature], [of.salinity.limit, salinity]);
}

function temperatureWayOut(value: number): string | null {
  const fromFahrenheit = (value - 32) / 1.8;
  if (value > 45 && fromFahrenheit <= 45) return `if that was °F, it is ${fromFahrenheit.toFixed(1)} °C`;
  const fromKelvin = value - ZERO_CELSIUS_IN_KELVIN;
  if (value > 45 && fromKelvin >= 0 && fromKelvin <= 45)
    return `if that was K, it is ${fromKelvin.toFixed(2)} °C`;
  return null;
}

function salinityWayOut(value: number): string | null {
  if (value > 45 && value <= 70) return "if that was a conductivity in mS/cm, convert it first";
  if (value > 1000 && value <= 1045) return "if that was a density or a specific gravity, convert it first";
  return null;
}

interface Ranges {
  readonly temperature: { readonly fit: Range; readonly limit: Range };
  readonly salinity: { readonly fit: Range; readonly limit: Range };
}

function ranges({ source, temperature, salinity }: Validity): Ranges {
  const t = ([min, max]: Span): Range => ({
    ...{ name: "temperature", unit: "°C", min, max, source },
    wayOut: temperatureWayOut,
  });
  const s = ([min, max]: Span): Range => ({
    ...{ name: "salinity", unit: "psu", min, max, source },
    wayOut: salinityWayOut,
  });
  return {
    temperature: { fit: t(temperature.fit), limit: t(temperature.limit) },
    salinity: { fit: s(salinity.fit), limit: s(salinity.limit) },
  };
}

/** Built once: the ammonia share is asked for at every step of a run. */
const RANGES: Readonly<Record<Equation, Ranges>> = {
  conductivity: ranges(VALIDITY.conductivity),
  density: ranges(VALIDITY.density),
  oxygen: ranges(VALIDITY.oxygen),
  ammonia: ranges(VALIDITY.ammonia),
  phScale: ranges(VALIDITY.phScale),
  co2Solubility: ranges(VALIDITY.co2Solubility),
  carbonate: ranges(VALIDITY.carbonate),
  aragonite: ranges(VALIDITY.aragonite),
};
