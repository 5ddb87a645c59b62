/** The field guide's list, for a page or a terminal to lay out: animals by kind, and what is said of each in its line. */
import type { Animal, AnimalGroup } from "../../engine/types/animal.ts";
import { dietParts } from "./diet.ts";
import { list } from "./entry.ts";

const GROUPS: Readonly<Record<AnimalGroup, string>> = {
  snail: "Snails",
  conch: "Conchs",
  hermit: "Hermit crabs",
  crab: "Crabs",
  shrimp: "Shrimp",
  star: "Sea stars",
  urchin: "Urchins",
  cucumber: "Sea cucumbers",
  slug: "Slugs",
  pod: "Pods",
  worm: "Worms",
  fish: "Fish",
};

const ROLE: Readonly<Record<Animal["role"], string>> = {
  crew: "",
  crew_with_caution: " With caution.",
  hitchhiker: " It comes by itself with rock; nobody buys it.",
  compatibility_only: " Not of the crew; listed for whom it gets on with.",
};

/** Foods named in the list; the rest stands in the entry. */
const FOODS_NAMED = 3;

/** Kinds that have an animal among these, always in one order. */
export function byKind(animals: readonly Animal[]): { title: string; animals: readonly Animal[] }[] {
  return (Object.keys(GROUPS) as AnimalGroup[])
    .map((group) => ({ title: GROUPS[group], animals: animals.filter((animal) => animal.group === group) }))
    .filter(({ animals: some }) => some.length > 0);
}

/** "eats film on rock, film on glass and hair algae. With caution." */
export function eatsLine(animal: Animal): string {
  const foods = dietParts(animal).slice(0, FOODS_NAMED);
  return `eats ${list(
    foods.map(({ name }) => name),
    "and",
  )}.${ROLE[animal.role]}`;
}
