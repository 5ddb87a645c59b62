/** `grazewell animals` for a person: the list by kind, one entry, and how they fit a tank. */

import { entryOf, list } from "../../answers/animals/entry.ts";
import { type AnimalRow, capital, fitWords } from "../../answers/animals/fit-words.ts";
import { byKind, eatsLine } from "../../answers/animals/guide.ts";
import { plain } from "../../answers/sentence.ts";
import { STATEMENT } from "../../answers/statement.ts";
import { dateWords, wrap } from "../../answers/words.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";

export function listText(animals: readonly Animal[], io: Io): string {
  const groups = byKind(animals).map(({ title, animals: some }) => {
    const lines = some.map((animal) =>
      wrap(`${animal.commonName} (${animal.id}): ${eatsLine(animal)}`, io.width, "  ", "    "),
    );
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
