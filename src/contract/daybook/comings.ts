/**
 * Entries that change how many live in a tank, as comings and goings: the one place that says which do. A move between
 * two tanks is a going in one and a coming in the other. A feared loss is neither: nothing was found.
 */
import type { DaybookEntry } from "./kinds.ts";

export type Coming = Extract<DaybookEntry, { kind: "addition" | "move" }>;
export type Going = Extract<DaybookEntry, { kind: "loss" | "departure" | "move" }>;

export const isComing = (entry: DaybookEntry): entry is Coming =>
  entry.kind === "addition" || (entry.kind === "move" && entry.body.from !== null);

export const isGoing = (entry: DaybookEntry): entry is Going =>
  entry.kind === "departure" ||
  (entry.kind === "loss" && entry.body.certainty === "found") ||
  (entry.kind === "move" && entry.body.to !== null);
