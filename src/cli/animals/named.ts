/** Which animal a person means: one, or an end that offers what it could be. */
import { animalById, findAnimal } from "../../catalogue/index.ts";
import type { Animal } from "../../engine/types/animal.ts";
import { CliError, EXIT } from "../io.ts";

/** @throws CliError with code 65 where the name fits several, or none */
export function animalNamed(text: string): Animal {
  const found = findAnimal(text);
  if (found.kind === "one") return animalById.get(found.animal.id)!;
  if (found.kind === "none") {
    throw new CliError(EXIT.badData, [
      `Animal "${text}": not in our list. grazewell animals names every kind.`,
    ]);
  }
  const asked = found.kind === "several" ? "could be several. Which?" : "not in our list. Did you mean:";
  throw new CliError(EXIT.badData, [
    `Animal "${text}": ${asked}`,
    ...found.animals.map(
      ({ id, commonName, scientificName }) => `  grazewell animals ${id}   ${commonName}, ${scientificName}`,
    ),
  ]);
}
