/** Which animal a name means. A name that fits several is asked about; an unknown one is kept, and counts for nothing. */
import type { FindAnimal, FoundAnimal } from "./find-animal.ts";
import { asked, type Choice, kept, type MessageKind, type Outcome, refused } from "./outcome.ts";
import { shown } from "./show.ts";

export type Species =
  | { readonly kind: "known"; readonly animal: FoundAnimal }
  /** The keeper's own animal, without a diet. */
  | { readonly kind: "own"; readonly name: string };

const LONGEST_NAME = 100;

/** Not in the catalogue, but too well known as eaters of snails, crabs and shrimps to pass in silence. */
const EATERS =
  /\b(?:mantis shrimp|stomatopod|octopus|cone snail|eel|moray|grouper|scorpionfish|frogfish|anglerfish|stonefish)\b/i;

export function readSpecies(text: string, find: FindAnimal, label = "Animal"): Outcome<Species> {
  const original = { text, unit: null };
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  const name = text.trim();
  if (name === "")
    return refused(original, {
      kind: "MISSING",
      text: `${label}: nothing entered. Enter a name, such as trochus snail`,
    });
  if (name.length > LONGEST_NAME)
    return refused(original, say("TOOBIG", `must be ${LONGEST_NAME} characters or fewer`));
  const search = find(name);
  if (search.kind === "one") return judge(search.animal);
  const ofGenus = genusRecord(name, find);
  if (ofGenus !== null) return judge(ofGenus);
  const choices = search.kind === "none" ? [] : search.animals.map(choice);
  if (search.kind === "several")
    return asked(original, say("AMBIG", `could be ${list(choices)}. Which?`), choices);
  if (search.kind === "near")
    return asked(original, say("NOTFOUND", `not in our list. Did you mean ${list(choices)}?`), choices);
  const own: Species = { kind: "own", name };
  if (EATERS.test(name)) {
    return kept(
      "flag",
      own,
      original,
      say("DANGER", "eats the crew. A plan can only show what is not possible with it"),
    );
  }
  const words = "not in our list. Kept as your own; it counts for nothing until you say what it eats";
  return kept("accept", own, original, say("NOTFOUND", words));

  function judge(animal: FoundAnimal): Outcome<Species> {
    const value: Species = { kind: "known", animal };
    const prey = (animal.preysOn ?? []).filter(({ likelihood }) => likelihood === "likely").length;
    return prey < MANY_PREY
      ? kept("accept", value, original)
      : kept(
          "flag",
          value,
          original,
          say(
            "DANGER",
            `${animal.commonName}: eats the crew. A plan can only show what is not possible with it`,
          ),
        );
  }
}

/** The one record that stands for a whole genus: `Trochus sp.` */
function genusRecord(name: string, find: FindAnimal): FoundAnimal | null {
  const genus = /^(\p{L}+)\s+spp?\.?$/iu.exec(name)?.[1];
  if (genus === undefined) return null;
  const search = find(genus);
  if (search.kind === "one") return search.animal;
  const start = `${genus} spp.`.toLowerCase();
  const records = search.kind === "none" ? [] : search.animals;
  const [only, ...others] = records.filter(({ scientificName }) =>
    scientificName?.toLowerCase().startsWith(start),
  );
  return only !== undefined && others.length === 0 ? only : null;
}

/** From this many kinds of likely prey on, an animal is an eater of crews, not of one pest. */
const MANY_PREY = 5;

function choice({ id, commonName, scientificName, adultSizeMm }: FoundAnimal): Choice {
  const size = adultSizeMm === undefined ? null : `about ${adultSizeMm.central} mm`;
  const more = [scientificName, size].filter((part) => part != null).join(", ");
  return { label: more === "" ? commonName : `${commonName} (${more})`, text: id };
}

const list = (choices: readonly Choice[]): string => choices.map(({ label }) => label).join(" or ");
