/**
 * What natural seawater of a salinity holds, so that a tank is compared with its own salinity and not with 35.
 * Everything but water goes with salinity. Equations: docs/model/seawater.md, "Composition".
 */
import { ATOMIC_MASS } from "../units/masses.ts";
import {
  type MicromolePerKilogram,
  micromolePerKilogram,
  type PracticalSalinity,
  practicalSalinity,
} from "../units/quantity.ts";
import type { Water } from "./carbonate.ts";
import { density } from "./density.ts";

/** g/kg of dissolved salt at practical salinity 35. @source millero-2008 (read, abstract) */
const REFERENCE_SALINITY = 35.16504;

/** Mass fractions of sea salt. @source millero-2008, in copies */
export const SALT_FRACTIONS = {
  chloride: 0.5503396,
  sodium: 0.3065958,
  sulfate: 0.0771319,
  magnesium: 0.0365055,
  calcium: 0.0117186,
  potassium: 0.0113495,
  bicarbonate: 0.0029805,
  bromide: 0.0019134,
  boricAcid: 0.0005527,
  carbonate: 0.0004078,
  strontium: 0.000226,
  borate: 0.0002259,
  fluoride: 0.0000369,
  carbonDioxide: 0.0000121,
  hydroxide: 0.0000038,
} as const;
export type SaltPart = keyof typeof SALT_FRACTIONS;

/** Alkalinity of the Reference Composition at salinity 35, µmol/kg. @source millero-2008, worked out from its ions */
const REFERENCE_ALKALINITY = 2304;

/** Grams of salt in a kg of seawater. @source millero-2008 */
export const gramsOfSaltPerKg = (salinity: PracticalSalinity): number => (REFERENCE_SALINITY / 35) * salinity;

/** The inverse. */
export const salinityOfGrams = (gramsPerKg: number): PracticalSalinity =>
  practicalSalinity((gramsPerKg * 35) / REFERENCE_SALINITY);

/** mg/kg of one part of the salt. @source millero-2008 */
export const naturalMgPerKg = (part: SaltPart, salinity: PracticalSalinity): number =>
  1000 * SALT_FRACTIONS[part] * gramsOfSaltPerKg(salinity);

/** mg/L of one part. @throws OutOfRange as the density */
export const naturalMgPerL = (part: SaltPart, { temperature, salinity }: Water): number =>
  (naturalMgPerKg(part, salinity) * density(temperature, salinity)) / 1000;

/** Alkalinity of natural seawater in meq/L: 2.358 at salinity 35, 25 °C. @throws OutOfRange as the density */
export const naturalAlkalinityMeqPerL = (water: Water): number =>
  meqPerL(micromolePerKilogram((REFERENCE_ALKALINITY * water.salinity) / 35), water);

/** An amount in µmol/kg as mmol/L, of alkalinity as meq/L. @throws OutOfRange as the density */
export const meqPerL = (perKg: MicromolePerKilogram, { temperature, salinity }: Water): number =>
  (perKg * density(temperature, salinity)) / 1e6;

/** mmol/L (of alkalinity meq/L) as µmol/kg. @throws OutOfRange as the density */
export const perKilogram = (perL: number, { temperature, salinity }: Water): MicromolePerKilogram =>
  micromolePerKilogram((perL * 1e6) / density(temperature, salinity));

/** Calcium in mg/L as µmol/kg. @throws OutOfRange as the density */
export const calciumPerKilogram = (mgPerL: number, water: Water): MicromolePerKilogram =>
  perKilogram(mgPerL / ATOMIC_MASS.Ca, water);
