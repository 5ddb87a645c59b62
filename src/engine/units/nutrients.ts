/**
 * Nutrients between the form a kit reports and the element the balance counts, all in mg/L.
 * Ten of nitrate as NO3 is 2.3 of nitrogen: mixing the two up is the commonest fourfold error.
 */
import { ATOMIC_MASS, MOLAR_MASS } from "./masses.ts";

const { N, P } = ATOMIC_MASS;

/** mg/L NO3 → mg/L N. */
export const nitrateToN = (no3: number): number => (no3 * N) / MOLAR_MASS.nitrate;
/** mg/L N → mg/L NO3. */
export const nToNitrate = (n: number): number => (n * MOLAR_MASS.nitrate) / N;
/** mg/L NO2 → mg/L N. */
export const nitriteToN = (no2: number): number => (no2 * N) / MOLAR_MASS.nitrite;
/** mg/L N → mg/L NO2. */
export const nToNitrite = (n: number): number => (n * MOLAR_MASS.nitrite) / N;
/** mg/L NH3 → mg/L N. */
export const ammoniaToN = (nh3: number): number => (nh3 * N) / MOLAR_MASS.ammonia;
/** mg/L N → mg/L NH3. */
export const nToAmmonia = (n: number): number => (n * MOLAR_MASS.ammonia) / N;
/** mg/L PO4 → mg/L P. */
export const phosphateToP = (po4: number): number => (po4 * P) / MOLAR_MASS.phosphate;
/** mg/L P → mg/L PO4. */
export const pToPhosphate = (p: number): number => (p * MOLAR_MASS.phosphate) / P;
