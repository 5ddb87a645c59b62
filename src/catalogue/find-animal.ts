/** Finds the animal a keeper means by what they typed: an id, a common name or a name it is sold under. */
import type { Animal } from "../engine/types/animal.ts";
import { editDistance } from "./edit-distance.ts";
import { data } from "./generated/catalogue.ts";

type Found =
  | { readonly kind: "one"; readonly animal: Animal }
  | { readonly kind: "several"; readonly animals: readonly Animal[] }
  /** No such name, but names like it: ask. */
  | { readonly kind: "near"; readonly animals: readonly Animal[] }
  | { readonly kind: "none" };

/** `-ies`, `-es` and `-s` are dropped from both sides, so "hermits" meets "hermit" and "urchins" "urchin". */
const singular = (word: string) =>
  word.length < 4 || word.endsWith("ss") || word.endsWith("us")
    ? word
    : word
        .replace(/ies$/, "y")
        .replace(/(s|x|ch|sh)es$/, "$1")
        .replace(/s$/, "");

/** Words of a name, without what stands in brackets, hyphens, case and plurals. */
const wordsOf = (name: string) =>
  name
    .toLowerCase()
    .replace(/\([^)]*\)/g, " ")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "")
    .map(singular);

const join = (words: readonly string[]) => words.join("");

interface Entry {
  readonly animal: Animal;
  readonly id: string;
  /** Names without spaces: "fire worm" and "fireworm" are one. */
  readonly names: readonly string[];
  readonly words: ReadonlySet<string>;
}

function entryOf(animal: Animal): Entry {
  const names = [animal.commonName, ...animal.alsoSoldAs].map(wordsOf);
  return {
    animal,
    id: join(wordsOf(animal.id)),
    names: names.map(join),
    words: new Set([...names.flat(), ...wordsOf(animal.id), ...wordsOf(animal.scientificName)]),
  };
}

/** Made at the first search: a program that never searches should not wait for it. */
let made: readonly Entry[] | undefined;
function entries(): readonly Entry[] {
  made ??= data.animals.map(entryOf);
  return made;
}

/** Slips allowed in a name of this length: none in a short one, two in a long one. */
const slipsAllowed = (length: number) => (length < 4 ? 0 : length < 8 ? 1 : 2);

/** The nearest animals by edit distance, the closest first; ties in the order of the catalogue. */
function misspelt(typed: string): Animal[] {
  const most = slipsAllowed(typed.length);
  return entries()
    .map(({ animal, id, names }) => ({
      animal,
      slips: Math.min(...[id, ...names].map((name) => editDistance(typed, name, most))),
    }))
    .filter(({ slips }) => slips <= most)
    .sort((a, b) => a.slips - b.slips)
    .map(({ animal }) => animal);
}

export function findAnimal(text: string): Found {
  const words = wordsOf(text);
  const typed = join(words);
  if (typed === "") return { kind: "none" };

  const byId = entries().find(({ id }) => id === typed);
  if (byId !== undefined) return { kind: "one", animal: byId.animal };

  const named = entries()
    .filter(({ names }) => names.includes(typed))
    .map(({ animal }) => animal);
  if (named[0] !== undefined) {
    return named.length === 1 ? { kind: "one", animal: named[0] } : { kind: "several", animals: named };
  }

  const sameWords = entries().filter((entry) => words.every((word) => entry.words.has(word)));
  const near = new Set([...misspelt(typed), ...sameWords.map(({ animal }) => animal)]);
  return near.size === 0 ? { kind: "none" } : { kind: "near", animals: [...near] };
}
