/** Medicines in words: effects, groups, ways out. Plain, no metaphor. */
import type { AnimalGroup } from "../../engine/types/animal.ts";
import type { MedicineEffect, MedicineGroup, Remover } from "../../engine/types/medicine.ts";

export const GROUP_WORDS: Readonly<Record<MedicineGroup, string>> = {
  snails: "snails and slugs",
  hermits_and_crabs: "hermit crabs and crabs",
  shrimps: "shrimps and pods",
  stars_and_urchins: "stars and urchins",
  cucumbers: "sea cucumbers",
  worms_and_conchs: "worms and conchs",
  corals: "corals",
  fish: "fish",
};

export const EFFECT_WORDS: Readonly<Record<MedicineEffect, string>> = {
  kills: "kills",
  harms: "harms",
  risky: "risky: some die, or too little is known",
  bears: "borne, so far as is known",
  unknown: "not known",
};

export const REMOVER_WORDS: Readonly<Record<Remover, string>> = {
  carbon: "activated carbon",
  water_changes: "water changes",
  uv: "UV light",
  time: "time alone",
};

export const WORKS_WORDS = { well: "works well", partly: "works in part", no: "does nothing" } as const;

export const MEDICINE_GROUP_OF: Readonly<Record<AnimalGroup, MedicineGroup>> = {
  snail: "snails",
  slug: "snails",
  conch: "worms_and_conchs",
  worm: "worms_and_conchs",
  hermit: "hermits_and_crabs",
  crab: "hermits_and_crabs",
  shrimp: "shrimps",
  pod: "shrimps",
  star: "stars_and_urchins",
  urchin: "stars_and_urchins",
  cucumber: "cucumbers",
  fish: "fish",
};

/** "common practice, no source" where nothing was read; else how it is known. */
export function evidenceWords(evidence: string): string {
  const [kind = "", ...note] = evidence.split(": ");
  const said =
    kind === "read"
      ? "read in a source"
      : kind === "judgement"
        ? "judgement, no source"
        : "common practice, no source";
  return note.length === 0 ? said : `${said}: ${note.join(": ")}`;
}
