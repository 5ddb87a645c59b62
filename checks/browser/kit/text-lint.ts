/**
 * What no page may say, read from its words alone: a likelihood word without its number or with another's, a word that
 * promises, blames or hurries, a line too long for a crisis. Judges wording, not truth.
 */

export interface WordFault {
  readonly rule: string;
  /** The sentence it stands in. */
  readonly sentence: string;
}

/** Each likelihood word with the fewest and most of 20 that it may stand for (words.md). */
const LIKELIHOOD: readonly (readonly [word: string, fewest: number, most: number])[] = [
  ["rarely", 0, 2],
  ["seldom", 3, 7],
  ["about even", 8, 12],
  ["usually", 13, 17],
  ["nearly always", 18, 20],
];

const COUNT = /(\d+)(?: to (\d+))? of 20\b/;

/** Words that promise, blame or hurry, and those of machines that scold; `safety` may stand in a caution. */
const NOT_USED: readonly RegExp[] = [
  /\bsafe(?:ly|r|st)?\b/i,
  /\bperfect(?:ly)?\b/i,
  /\bguarante\w*/i,
  /\boops\b/i,
  /\bplease\b/i,
  /\binvalid\b/i,
  /\bforbidden\b/i,
  /\bsorry\b/i,
  /\bunfortunately\b/i,
  /\bhurry\b/i,
  /\bas soon as possible\b/i,
  /\byour (?:fault|mistake)\b/i,
];

/** Sentences of rendered text: a line break ends one, a table's row (cells apart by tabs) is one. */
export function sentencesOf(text: string): string[] {
  return text
    .split(/\n+|(?<=[.!?])\s+(?=\p{Lu}|\d)/u)
    .map((sentence) => sentence.replaceAll(/\s+/g, " ").trim())
    .filter((sentence) => sentence !== "");
}

/** Likelihood words of one sentence: each is followed by its count of 20, and the count is one of the word's. */
function likelihoodFaults(sentence: string): WordFault[] {
  return LIKELIHOOD.flatMap(([word, fewest, most]) =>
    [...sentence.matchAll(new RegExp(`\\b${word}\\b`, "gi"))].flatMap(({ index }) => {
      const count = COUNT.exec(sentence.slice(index));
      if (count === null) return [{ rule: `"${word}" without its number`, sentence }];
      const [low, high] = [Number(count[1]), Number(count[2] ?? count[1])];
      return low < fewest || high > most ? [{ rule: `"${word}" stands for ${count[0]}`, sentence }] : [];
    }),
  );
}

export function wordFaults(text: string): WordFault[] {
  return sentencesOf(text).flatMap((sentence) => [
    ...likelihoodFaults(sentence),
    ...NOT_USED.filter((word) => word.test(sentence)).map((word) => ({
      rule: `not used: ${word.exec(sentence)?.[0] ?? ""}`,
      sentence,
    })),
  ]);
}
