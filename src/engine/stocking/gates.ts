/**
 * Between two waves stands a gate: something a keeper can see, for the animals that the wave brings. With it, what
 * may bring it forward and what stops it. Sentences only; no figure is decided here.
 */
import type { Animal } from "../types/animal.ts";
import type { ShelfId } from "../types/shelf.ts";
import { eatsFrom } from "./programme.ts";

export interface Gate {
  readonly onlyIf: readonly string[];
  readonly soonerIf: string;
  readonly stopIf: string;
}

export const SIGN_OF_SHELF: Readonly<Record<ShelfId, string>> = {
  film_glass: "film is back on the glass within a week of wiping",
  film_rock: "the rock wears a coat of film or diatoms, not bare patches",
  film_sand: "the sand has a brown or green bloom somewhere",
  hair_algae: "short tufts of hair algae stand on the rock",
  bubble_algae: "bubble algae can be seen",
  detritus_sand: "settled waste shows on the sand two days after cleaning",
  detritus_crevice: "a puff of a turkey baster lifts dust from the rock",
  uneaten_feed: "something is left two minutes after feeding",
  carrion: "fish or meaty food are fed",
};

export const MORE_THAN_EATEN: Readonly<Record<ShelfId, string>> = {
  film_glass: "the glass needs wiping twice as often as now",
  film_rock: "the coat on the rock thickens week by week",
  film_sand: "the bloom on the sand spreads although you stir it",
  hair_algae: "tufts of hair algae grow longer although something grazes them",
  bubble_algae: "bubble algae spread",
  detritus_sand: "waste gathers on the sand faster than you siphon it",
  detritus_crevice: "dust gathers in the rock although you blow it out",
  uneaten_feed: "food is left every day although you feed less",
  carrion: "a dead animal was found by you before the crew found it",
};

/** Conditions that are no sign of a shelf, as they begin. */
export const GATE_WORDS = {
  firstTests: "ammonia and nitrite are too low for the test to show, on two tests three days apart",
  testsSince:
    "ammonia and nitrite are still too low for the test to show, and nothing died that you can't explain",
  heads: "the animals there move and feed: count them by torch an hour after dark",
  open: "nothing: its window is open",
  stopGrazers:
    "the glass stays bare for a week, snails climb out of the water, or two animals die within a week",
  stopOthers: "a test shows ammonia, or two animals die within a week",
} as const;

/** Shelves that matter for a gate, the ones that most of the wave's needs rest on. */
function shelvesOf(animals: readonly Animal[]): ShelfId[] {
  const shelves: readonly ShelfId[] = [
    "film_glass",
    "film_rock",
    "hair_algae",
    "detritus_sand",
    "uneaten_feed",
  ];
  return shelves.filter((shelf) => animals.some((animal) => eatsFrom(animal, shelf))).slice(0, 3);
}

/** When a wave comes: before any crew was there, and with its window open on the plan's own day. */
interface WaveMoment {
  readonly first: boolean;
  readonly open: boolean;
}

const GRAZED: readonly ShelfId[] = ["film_glass", "film_rock", "film_sand", "hair_algae"];

/** @param earlier names of the kinds that came with the wave before, or live there; empty for a first wave */
export function gateFor(
  animals: readonly Animal[],
  earlier: readonly string[],
  { first, open }: WaveMoment,
): Gate {
  const signs = shelvesOf(animals).map((shelf) => SIGN_OF_SHELF[shelf]);
  const onlyIf: string[] = [first ? GATE_WORDS.firstTests : GATE_WORDS.testsSince, ...signs];
  if (!first && earlier.length > 0) onlyIf.push(`${GATE_WORDS.heads} (${earlier.slice(0, 3).join(", ")})`);
  const main = shelvesOf(animals)[0];
  return {
    onlyIf,
    soonerIf: open
      ? GATE_WORDS.open
      : main === undefined
        ? "nothing: waiting costs nothing"
        : MORE_THAN_EATEN[main],
    stopIf: animals.some((animal) => GRAZED.some((shelf) => eatsFrom(animal, shelf)))
      ? GATE_WORDS.stopGrazers
      : GATE_WORDS.stopOthers,
  };
}
