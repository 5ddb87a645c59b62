/**
 * Mass of salt for new water and to raise salinity, by the balance of water and salt. docs/model/water-changes.md,
 * "Salt". Of sea salt free of bound water: a dry mix takes more, by the yield that its keeper measured.
 */
import { gramsOfSaltPerKg } from "../../seawater/composition.ts";
import { density } from "../../seawater/density.ts";
import { type Celsius, type PracticalSalinity, practicalSalinity } from "../../units/quantity.ts";

const saltShare = (psu: PracticalSalinity): number => gramsOfSaltPerKg(psu) / 1000;

/** What stands in so many litres: kg of water alone and of salt. @throws OutOfRange as the density */
export function contentsOf(litres: number, temperature: Celsius, psu: PracticalSalinity) {
  const kg = (litres * density(temperature, psu)) / 1000;
  const saltKg = kg * saltShare(psu);
  return { waterKg: kg - saltKg, saltKg };
}

/** Litres that so much water and salt make, and their salinity. */
export function mixedOf(waterKg: number, saltKg: number, temperature: Celsius) {
  const kg = waterKg + saltKg;
  const psu = practicalSalinity((saltKg / kg) * (35 / gramsOfSaltPerKg(practicalSalinity(35))) * 1000);
  return { psu, litres: (1000 * kg) / density(temperature, psu) };
}

export interface Salting {
  readonly saltKg: number;
  /** Litres in the end: salt takes some room. */
  readonly litres: number;
}

/** Salt to take `litres` from one salinity to a higher one; the water stays in. @throws OutOfRange as the density */
export function saltToRaise(
  litres: number,
  temperature: Celsius,
  from: PracticalSalinity,
  to: PracticalSalinity,
): Salting {
  const { waterKg, saltKg } = contentsOf(litres, temperature, from);
  const share = saltShare(to);
  const added = (waterKg * share) / (1 - share) - saltKg;
  return { saltKg: added, litres: mixedOf(waterKg, saltKg + added, temperature).litres };
}

/** Salt and water to end with so many litres of a salinity. */
export function saltForNew(litres: number, temperature: Celsius, to: PracticalSalinity) {
  const { waterKg, saltKg } = contentsOf(litres, temperature, to);
  return { saltKg, waterL: (1000 * waterKg) / density(temperature, practicalSalinity(0)) };
}

/** Sea salt that a gram of the keeper's own mix brought, from a batch that was weighed and read. */
export function yieldOf(
  mixG: number,
  waterL: number,
  temperature: Celsius,
  from: PracticalSalinity,
  read: PracticalSalinity,
): number {
  return (1000 * saltToRaise(waterL, temperature, from, read).saltKg) / mixG;
}
