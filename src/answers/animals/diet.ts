/** What an animal eats, in words and per cent, and how much of it. */
import type { Animal } from "../../engine/types/animal.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import { rations } from "../words.ts";

interface Part {
  readonly name: string;
  readonly share: number;
}

/** Foods by share, the largest first; what lies outside the shelves last. */
export function dietParts({ diet, dietOther, otherFoods }: Animal): Part[] {
  const shelves = SHELVES.filter((shelf) => diet[shelf] > 0)
    .map((shelf) => ({ name: SHELF_NAME[shelf], share: diet[shelf] }))
    .sort((a, b) => b.share - a.share);
  const other = { name: otherFoods ?? "food from outside the shelves", share: dietOther };
  return dietOther > 0 ? [...shelves, other] : shelves;
}

const SHARE_WORDS: readonly (readonly [least: number, words: string])[] = [
  [0.995, "only"],
  [0.85, "nearly all is"],
  [0.6, "most is"],
  [0.45, "about half is"],
  [0.38, "about two fifths is"],
  [0.3, "about a third is"],
  [0.2, "about a quarter is"],
  [0.1, "some is"],
  [0, "a little is"],
];

/** "Of its food about a third is film on rock (40 %), ..." */
export function dietSentence(animal: Animal): string {
  const parts = dietParts(animal);
  const [first] = parts;
  if (first === undefined) return "What it eats is not known.";
  if (first.share >= 0.995) return `It eats only ${first.name}.`;
  const told = parts.map(({ name, share }) => {
    const words = SHARE_WORDS.find(([least]) => share >= least)![1];
    return `${words} ${name} (${Math.round(100 * share)} %)`;
  });
  return `Of its food ${told.join(", ")}.`;
}

export function amountSentences(animal: Animal): string[] {
  const { low, central, high } = animal.intakeMgCPerDay;
  const reserve = animal.starvationToleranceDays;
  const fullOf = central < TINY_MG_C ? "A thousand eat" : "One eats";
  const times = central < TINY_MG_C ? 1000 : 1;
  return [
    `${fullOf} about ${rations(central * times)} rations a day (${rations(low * times)} to ${rations(high * times)}) and ${times === 1 ? "keeps its" : "keep their"} weight on ${rations(animal.breakEvenIntakeMgCPerDay * times)}; a ration is 10 mg of carbon, about what one 22 mm trochus eats.`,
    `Without food its reserve lasts about ${reserve.central} days (${reserve.low} to ${reserve.high}).`,
    ...(animal.supplementalFood === null || animal.supplementalFood === "none needed"
      ? []
      : [`Food by hand, where it runs short: ${animal.supplementalFood}.`]),
  ];
}
/** Below this an animal's food is told for a thousand of them. */
const TINY_MG_C = 0.05;
