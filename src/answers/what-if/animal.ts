/** A head count and a kind in a flag's text, read as a tank file reads them. */
import { animalById, findAnimal } from "../../catalogue/index.ts";
import { readCount } from "../../contract/quantity/count.ts";
import { readSpecies } from "../../contract/quantity/species.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { AnimalCount, TankFacts } from "../../engine/types/tank.ts";
import { as, taken, unread } from "./read.ts";

export interface HeadsOf {
  readonly animal: Animal;
  readonly count: number;
}

/** "2 trochus-snail": the count, then the name. `around` puts a choice back into the flag's text. */
export function headsOf(
  flag: string,
  text: string,
  notes: string[],
  around: (heads: string) => string,
): HeadsOf {
  const [, number = "", name = ""] = /^(\S+) (.+)$/.exec(text) ?? [];
  if (name === "") {
    throw unread(
      flag,
      around(text),
      `a number and an animal are needed: write "${around("2 trochus-snail")}"`,
    );
  }
  const head = taken(flag, readCount(number, as(flag, null)), notes, (choice) => around(`${choice} ${name}`));
  if (head.kind === "many") throw unread(flag, around(text), "a number of animals is needed, not 'many'");
  const outcome = readSpecies(name, findAnimal, flag);
  const species = taken(flag, outcome, notes, (choice) => around(`${number} ${choice}`));
  const animal = species.kind === "known" ? animalById.get(species.animal.id) : undefined;
  if (animal === undefined) {
    throw unread(flag, around(text), `"${name}" is not in our list. grazewell animals names every kind`);
  }
  return { animal, count: head.count };
}

/** Heads of a kind that live in the tank now. */
export const livingOf = ({ present }: TankFacts, id: string): number =>
  present.reduce((sum, row) => sum + (row.id === id ? row.count : 0), 0);

/** The present animals with `count` heads of a kind in all, or without it. */
export function withHeads({ present, asOf }: TankFacts, id: string, count: number): AnimalCount[] {
  const others = present.filter((row) => row.id !== id);
  const on = present.find((row) => row.id === id)?.on ?? asOf;
  return count > 0 ? [...others, { id, count, on }] : others;
}
