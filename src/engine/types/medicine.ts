/** What a substance that goes into the water does, by active ingredient. Read from facts/medicines; no dose, ever. */
import type { SaidFact } from "./diagnosis.ts";
import type { Spread } from "./estimate.ts";

export const MEDICINE_GROUPS = [
  "snails",
  "hermits_and_crabs",
  "shrimps",
  "stars_and_urchins",
  "cucumbers",
  "worms_and_conchs",
  "corals",
  "fish",
] as const;
export type MedicineGroup = (typeof MEDICINE_GROUPS)[number];

export const REMOVERS = ["carbon", "water_changes", "uv", "time"] as const;
export type Remover = (typeof REMOVERS)[number];

export type MedicineEffect = "kills" | "harms" | "risky" | "bears" | "unknown";

/** A word with what it rests on. */
export interface Rested<Value> {
  readonly value: Value;
  readonly evidence: string;
  readonly sources: readonly string[];
}

export interface Medicine {
  readonly id: string;
  readonly name: string;
  readonly also: readonly string[];
  readonly use: "bath" | "dip" | "food";
  readonly groups: Readonly<Record<MedicineGroup, Rested<MedicineEffect>>>;
  readonly nitrifiers: Rested<"stops" | "slows" | "little" | "unknown">;
  readonly oxygen: Rested<"lowers" | "little" | "unknown">;
  readonly said: SaidFact;
  readonly remove: Readonly<
    Record<Remover, { readonly works: Rested<"well" | "partly" | "no">; readonly said: SaidFact }>
  >;
  /** Days until none could be found; null where no source was found. */
  readonly goneDays: (Spread & { readonly evidence: string; readonly sources: readonly string[] }) | null;
  /** Days from its end before a crew comes back, and the test that must pass besides. */
  readonly returnDays: Rested<number>;
  readonly returnTest: SaidFact;
  readonly dont: readonly SaidFact[];
  /** Where it hurts people. */
  readonly people: SaidFact | null;
}
