/**
 * What putting a daybook and a tank's answers together needs to know. The answers say how the tank stood on the day they
 * were given; entries count from that day on, earlier ones are in the answers already.
 */
import type { FindAnimal } from "../../quantity/find-animal.ts";
import type { DaybookEntry } from "../kinds.ts";

/** Parts of the answers that the daybook goes on with. */
export const PARTS = [
  "animals_present",
  "fish",
  "feeding",
  "light",
  "equipment",
  "care",
  "sightings",
  "medicines",
] as const;
export type Part = (typeof PARTS)[number];

/** When a part of the answers was given. */
export interface Given {
  /** ISO date. */
  readonly on: string;
  /** The instant, ms since 1970; null where only the day is known. */
  readonly atMs: number | null;
}
export type Since = Readonly<Partial<Record<Part, Given>>>;

export interface ApplyScene {
  /** ISO date. */
  readonly today: string;
  readonly findAnimal: FindAnimal;
  /** A part that is absent was given before every entry. */
  readonly since: Since;
}

/** Whether an entry is news to a part of the answers, or was in it when it was given. */
export function isNews({ id, on }: Pick<DaybookEntry, "id" | "on">, given: Given | undefined): boolean {
  if (given === undefined || on > given.on) return true;
  if (on < given.on) return false;
  // Of the very day: kept before the answer was given, it was known to who gave it.
  const keptMs = timeOf(id);
  return keptMs === null || given.atMs === null || keptMs > given.atMs;
}

/** The millisecond that an id of version 7 was made in; null for other ids. */
function timeOf(id: string): number | null {
  const match = /^([0-9a-f]{8})-([0-9a-f]{4})-7[0-9a-f]{3}-/i.exec(id);
  return match === null ? null : Number.parseInt(`${match[1] ?? ""}${match[2] ?? ""}`, 16);
}
