/** How each figure of `grazewell water` comes about: shown under it, and its sources in the data. */
import type { SeawaterSource } from "../../engine/seawater/sources.ts";
import type { Equation } from "../../engine/seawater/validity.ts";

export interface FigureRule {
  readonly label: string;
  readonly unit: string;
  readonly digits: number;
  /** Shown times this: 100 for a share in per cent. */
  readonly times?: number;
  readonly how: string;
  readonly equations: readonly Equation[];
  readonly sources: readonly SeawaterSource[];
}

const DENSITY = { equations: ["density"], sources: ["millero-poisson-1981", "unesco-44"] } as const;
const CONDUCTIVITY = { equations: ["conductivity"], sources: ["unesco-44", "culkin-smith-1980"] } as const;
const AMMONIA = {
  equations: ["ammonia", "phScale"],
  sources: [
    "clegg-whitfield-1995",
    "takahashi-1982",
    "dickson-1990",
    "dickson-riley-1979",
    "bower-bidwell-1978",
  ],
} as const;

export const FIGURES = {
  density_kg_per_m3: {
    ...{ label: "density", unit: "kg/m3", digits: 2, ...DENSITY },
    how: "salinity and temperature through the equation of state of 1980",
  },
  specific_gravity_25_25: {
    ...{ label: "specific gravity 25/25 C", unit: "", digits: 4, ...DENSITY },
    how: "density at 25 C over that of pure water at 25 C; a floating hydrometer shows another number",
  },
  specific_gravity_20_20: {
    ...{ label: "specific gravity 20/20 C", unit: "", digits: 4, ...DENSITY },
    how: "the same at 20 C, the scale of most refractometers",
  },
  conductivity_mS_per_cm: {
    ...{ label: "conductivity, uncorrected", unit: "mS/cm", digits: 2, ...CONDUCTIVITY },
    how: "practical salinity scale of 1978, at the water's own temperature",
  },
  conductivity_at_25_c_mS_per_cm: {
    ...{ label: "conductivity at 25 C", unit: "mS/cm", digits: 2, ...CONDUCTIVITY },
    how: "the same, as a meter shows it that corrects to 25 C",
  },
  oxygen_saturation_mg_per_l: {
    ...{ label: "oxygen when saturated", unit: "mg/L", digits: 2, equations: ["oxygen"] },
    sources: ["garcia-gordon-1992", "benson-krause-1984", "icao-atmosphere"],
    how: "balance with moist air at this altitude; the range is what weather does to air pressure, 3 %",
  },
  unionised_ammonia_fraction: {
    ...{ label: "un-ionised share of ammonia", unit: "%", digits: 1, times: 100, ...AMMONIA },
    how: "pH on the total scale against the pKa of ammonium; the range is 15 % for the equation on top of the pH reading's own error",
  },
  unionised_ammonia_mg_n_per_l: {
    ...{ label: "un-ionised ammonia, NH3-N", unit: "mg/L", digits: 3, ...AMMONIA },
    how: "that share of the total ammonia typed",
  },
} as const satisfies Readonly<Record<string, FigureRule>>;

export type FigureKey = keyof typeof FIGURES;
