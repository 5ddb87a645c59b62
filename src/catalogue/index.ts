/**
 * The catalogue: animals, parameters and sources of facts/, checked and typed when built (npm run facts).
 * Holds facts, decides nothing. How the files are laid out: docs/facts.md.
 */
import type { Animal } from "../engine/types/animal.ts";
import type { Parameter } from "../engine/types/parameter.ts";
import { data } from "./generated/catalogue.ts";
import type { Source } from "./source.ts";

export { findAnimal } from "./find-animal.ts";
export type { Source } from "./source.ts";

export const animals: readonly Animal[] = data.animals;

export const animalById: ReadonlyMap<string, Animal> = new Map(animals.map((animal) => [animal.id, animal]));

const byId = (parameters: readonly Parameter[]) =>
  new Map(parameters.map((parameter) => [parameter.id, parameter]));

/** Production, nutrients, decay and limits, by dotted id (`feed.pellet.protein`). */
export const supplyParameters: ReadonlyMap<string, Parameter> = byId(data.supply);

/** Symbols of the tank model (`kapFilm`): central values are its defaults. */
export const modelParameters: ReadonlyMap<string, Parameter> = byId(data.model);

export const sources: ReadonlyMap<string, Source> = new Map(
  data.sources.map((source) => [source.key, source]),
);
