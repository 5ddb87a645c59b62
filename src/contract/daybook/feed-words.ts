/** A feeding in words taken apart: the food it names, how often, and the amount that is left: "1 g mysis every other day". */
import { readFeeding } from "../quantity/feeding.ts";
import { isKept } from "../quantity/outcome.ts";
import { tidy } from "../quantity/parse.ts";
import { NO_PREFERENCES } from "../quantity/preferences.ts";
import type { FoodKind } from "../tank-file/assumptions.ts";

export interface FeedWords {
  /** What is left without food and how often; empty where nothing is. */
  readonly amount: string;
  readonly food: { readonly kind: FoodKind; readonly word: string } | null;
  /** Times a day; null where not said, or where the amount itself says "a day". */
  readonly times: { readonly perDay: number; readonly words: string } | null;
}

/** Words for foods, the longer first. */
const FOOD_WORDS: readonly (readonly [RegExp, FoodKind])[] = [
  [/\b(?:dry )?pellets?\b/i, "dry_pellet"],
  [/\b(?:dry )?flakes?\b/i, "dry_flake"],
  [/\b(?:frozen )?(?:artemia|brine shrimps?)\b/i, "frozen_artemia"],
  [/\b(?:frozen )?mysis(?: shrimps?)?\b/i, "frozen_mysis"],
  [/\b(?:frozen )?seafood(?: mix)?\b/i, "seafood_mix"],
  [/\b(?:nori|seaweed)\b/i, "nori"],
];
const OFTEN =
  /\s*\b((?:once|twice|(?:three|\d{1,2}) times)(?: (?:a|per) (?:day|week)| daily)|every (?:other|second) day|every \d{1,2} days|weekly)(?= \(checked\)$|$)/i;

export function feedWords(text: string): FeedWords {
  const named = foodIn(tidy(text));
  const rest = named?.rest ?? tidy(text);
  const words = OFTEN.exec(rest)?.[1];
  const food = named === null ? null : { kind: named.kind, word: named.word };
  const perDay = words === undefined ? null : timesOf(words);
  if (words === undefined || perDay === null) return { amount: rest, food, times: null };
  return { amount: rest.replace(OFTEN, "").trim(), food, times: { perDay, words } };
}

function foodIn(text: string): { kind: FoodKind; word: string; rest: string } | null {
  for (const [pattern, kind] of FOOD_WORDS) {
    const word = pattern.exec(text)?.[0];
    if (word !== undefined) {
      const rest = text.replace(pattern, " ").replace(/\bof\s*$|\bof\s{2,}/i, " ");
      return { kind, word, rest: tidy(rest) };
    }
  }
  return null;
}

function timesOf(words: string): number | null {
  const read = readFeeding(words, { preferences: NO_PREFERENCES });
  return isKept(read) && read.value.unit === "times/day" ? read.value.central : null;
}
