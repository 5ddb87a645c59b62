/** `grazewell animals` for a person: the list by kind, one entry, and how they fit a tank. */

import { dietParts } from "../../answers/animals/diet.ts";
import { entryOf, list } from "../../answers/animals/entry.ts";
import { type AnimalRow, capital, fitWords } from "../../answers/animals/fit-words.ts";
import { plain } from "../../answers/sentence.ts";
import { STATEMENT } from "../../answers/statement.ts";
import { dateWords, wrap } from "../../answers/words.ts";
import type { Animal, AnimalGroup } from "../../engine/types/animal.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";

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

export function listText(animals: readonly Animal[], io: Io): string {
  const groups = Object.entries(GROUPS).map(([group, title]) => {
    const lines = animals
      .filter((animal) => animal.group === group)
      .map((animal) => {
        const foods = dietParts(animal).slice(0, FOODS_NAMED);
        const eats = list(
          foods.map(({ name }) => name),
          "and",
        );
        return wrap(
          `${animal.commonName} (${animal.id}): eats ${eats}.${ROLE[animal.role]}`,
          io.width,
          "  ",
          "    ",
        );
      });
    return [io.bold(title), ...lines].join("\n");
  });
  const more = "grazewell animals ID tells all of one; grazewell animals FILE, which fit your tank.";
  return [`${animals.length} animals, by kind.`, ...groups, wrap(more, io.width)].join("\n\n");
}

/** `row`: the same animal as data, with how it fits the tank where there is one. */
export function entryText(animal: Animal, row: AnimalRow, facts: TankFacts | null, io: Io): string {
  const { commonName, id, scientificName, alsoSoldAs, nameConfidence } = animal;
  const names = alsoSoldAs.filter((name) => name !== commonName);
  const sold = names.length === 0 ? "" : ` Also sold as ${list(names, "or")}.`;
  const heading = `${io.bold(capital(commonName))} (${id}), ${scientificName}: ${nameConfidence}.${sold}`;
  const here =
    row.fit === null || facts === null
      ? []
      : [section(`In ${facts.name}, on ${dateWords(facts.asOf)}`, fitWords(row, row.fit).map(plain))];
  const sections = entryOf(animal).map(({ title, sentences }) => section(title, sentences));
  return [wrap(heading, io.width), ...here, ...sections, wrap(STATEMENT, io.width)].join("\n\n");

  function section(title: string, sentences: readonly string[]): string {
    return [io.bold(title), ...sentences.map((text) => wrap(text, io.width, "  ", "    "))].join("\n");
  }
}
