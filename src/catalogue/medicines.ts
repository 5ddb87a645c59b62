/** Medicines by active ingredient, and the one that a text means: facts/medicines, checked and typed when built. */
import type { Medicine } from "../engine/types/medicine.ts";
import { data } from "./generated/medicines.ts";

export const medicines: readonly Medicine[] = data;

export const medicineById: ReadonlyMap<string, Medicine> = new Map(data.map((one) => [one.id, one]));

const NAMES: readonly (readonly [name: string, medicine: Medicine])[] = data
  .flatMap((medicine) =>
    [medicine.name, medicine.id.replaceAll("-", " "), ...medicine.also].map(
      (name) => [plainly(name), medicine] as const,
    ),
  )
  // Longer names first: "oxytetracycline" before "tetracycline", "low salinity" before a word in it.
  .sort(([a], [b]) => b.length - a.length);

function plainly(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, " ")
    .trim();
}

/**
 * The medicine that a text names by active ingredient; null where it names none of them, or more than one: what nobody
 * can resolve stays unknown, and closes gates.
 */
export function findMedicine(text: string): Medicine | null {
  let rest = ` ${plainly(text)} `;
  const found = new Set<Medicine>();
  for (const [name, medicine] of NAMES) {
    const whole = ` ${name} `;
    if (!rest.includes(whole)) continue;
    found.add(medicine);
    rest = rest.replaceAll(whole, " ");
  }
  const [only, ...others] = found;
  return only === undefined || others.length > 0 ? null : only;
}
