/**
 * Changes that hold from their day on. Feed: the whole feed of a usual day, in words that may name the food ("0.4 g
 * pellet") and how often ("1 g every other day"). Strength of light: a share of what it was before.
 */

import { readFeedAmount, readFeeding } from "../quantity/feeding.ts";
import { type Amount, isKept, type Message, type Outcome } from "../quantity/outcome.ts";
import { tidy } from "../quantity/parse.ts";
import { readPlain } from "../quantity/plain.ts";
import { NO_PREFERENCES } from "../quantity/preferences.ts";
import { figure, shown } from "../quantity/show.ts";
import { FOODS, type FoodKind } from "../tank-file/assumptions.ts";
import type { Gather } from "./gather.ts";
import { CHANGED } from "./kinds/care.ts";
import type { EntryBody } from "./kinds.ts";
import { shareWord } from "./read-numbers.ts";

export function readChange(gather: Gather): EntryBody<"change"> | undefined {
  const changed = gather.choice("changed", CHANGED);
  const food = gather.choice("food", Object.keys(FOODS) as FoodKind[]);
  const text = gather.words("to");
  const when = gather.when();
  if (text == null || changed == null) return undefined;
  const named = changed === "feed" ? foodIn(text) : null;
  if (food != null && changed !== "feed") {
    return gather.doubt("food", "CONFLICT", "belongs to a change of feed; leave it empty here", [
      { label: "leave it empty", text: "" },
    ]);
  }
  if (food != null && named !== null && named.kind !== food) {
    const label = FOODS[named.kind].label;
    return gather.doubt("food", "CONFLICT", `but "${shown(text)}" names ${label}. Which?`, [
      { label, text: named.kind },
    ]);
  }
  const to = readTo(gather, changed, text);
  if (food === undefined || to === undefined || when === undefined) return undefined;
  return { ...when, changed, to_text: text, to, food: food ?? named?.kind ?? null };
}

function readTo(gather: Gather, changed: (typeof CHANGED)[number], text: string): number | null | undefined {
  const { preferences } = gather.context;
  const label = gather.label("to");
  switch (changed) {
    case "feed":
      return readFeed(gather, text);
    case "light_hours":
      return gather.take("to", readPlain("hours", text, { preferences, label, unit: "h" }))?.central;
    case "light_strength":
      return readStrength(gather, text);
    case "skimmer":
      return readOnOff(gather, text);
    default:
      return null;
  }
}

/** Words for foods, the longer first. */
const FOOD_WORDS: readonly (readonly [RegExp, FoodKind])[] = [
  [/\b(?:dry )?pellets?\b/i, "dry_pellet"],
  [/\b(?:dry )?flakes?\b/i, "dry_flake"],
  [/\b(?:frozen )?(?:artemia|brine shrimps?)\b/i, "frozen_artemia"],
  [/\b(?:frozen )?mysis(?: shrimps?)?\b/i, "frozen_mysis"],
  [/\b(?:frozen )?(?:seafood(?: mix)?)\b/i, "seafood_mix"],
  [/\b(?:nori|seaweed)\b/i, "nori"],
];

function foodIn(
  text: string,
): { readonly kind: FoodKind; readonly word: string; readonly rest: string } | null {
  for (const [pattern, kind] of FOOD_WORDS) {
    const word = pattern.exec(text)?.[0];
    if (word !== undefined) {
      const rest = text.replace(pattern, " ").replace(/\bof\s*$|\bof\s{2,}/i, " ");
      return { kind, word, rest: tidy(rest) };
    }
  }
  return null;
}

/** Grams a day as fed; null where only how often was said. */
function readFeed(gather: Gather, text: string): number | null | undefined {
  const { preferences, waterL } = gather.context;
  const label = gather.label("to");
  const named = foodIn(text);
  const { amount, perDay } = often(named?.rest ?? text);
  const context = { preferences, label, waterL };
  const outcome = amount === "" ? readFeeding(text, context) : readFeedAmount(amount, context);
  if (!isKept(outcome))
    return gather.take("to", { ...outcome, ...asTyped(outcome, text, named?.word, perDay) });
  if (outcome.value.unit === "times/day") {
    const words = `read as ${figure(outcome.value.central)} times a day; the weight is kept as it was`;
    gather.say("to", "ECHO", words);
    return null;
  }
  const grams = outcome.value.central * (perDay?.times ?? 1);
  const message: Message | null =
    perDay === null
      ? outcome.message
      : { kind: "ECHO", text: `${label} "${shown(text)}": read as ${figure(grams)} g a day` };
  return gather.take("to", { ...outcome, value: { ...outcome.value, central: grams }, message })?.central;
}

/** Choices as they replace the whole text: the food and how often go along. */
function asTyped(
  { message, choices }: Extract<Outcome<Amount>, { choices: unknown }>,
  text: string,
  food: string | undefined,
  perDay: Often["perDay"],
): Pick<Extract<Outcome<Amount>, { choices: unknown }>, "message" | "choices"> {
  const more = [food, perDay?.words].filter((part) => part !== undefined).join(" ");
  const whole = (choice: string): string => {
    if (more === "") return choice;
    const checked = / \(checked\)$/.test(choice) ? " (checked)" : "";
    const bare = choice.replace(/ \(checked\)$/, "");
    return `${perDay === null ? bare : bare.replace(/\/day$/, "")} ${more}${checked}`;
  };
  return {
    message: { ...message, text: message.text.replace(/^([^"]*)"[^"]*"/, `$1"${shown(text)}"`) },
    choices: choices.map((choice) => ({ ...choice, text: choice.text === null ? null : whole(choice.text) })),
  };
}

interface Often {
  /** What is left without the words for how often; empty where there was nothing else. */
  readonly amount: string;
  readonly perDay: { readonly times: number; readonly words: string } | null;
}

const OFTEN_WORDS =
  /\s*\b((?:once|twice|(?:three|\d{1,2}) times)(?: (?:a|per) (?:day|week)| daily)|every (?:other|second) day|every \d{1,2} days|weekly)$/i;

/** "1 g every other day" apart; "a day" and "daily" stay with the amount, whose reader knows them. */
function often(text: string): Often {
  const words = OFTEN_WORDS.exec(text)?.[1];
  if (words === undefined) return { amount: isOften(text) ? "" : text, perDay: null };
  const amount = text.replace(OFTEN_WORDS, "").trim();
  const read = readFeeding(words, { preferences: NO_PREFERENCES });
  const times = isKept(read) && read.value.unit === "times/day" ? read.value.central : 1;
  return { amount, perDay: { times, words } };
}

const isOften = (text: string): boolean => /^(?:daily|every day)$/i.test(tidy(text));

const CHANGES: Readonly<Record<string, number>> = {
  double: 2,
  doubled: 2,
  twice: 2,
  "as before": 1,
  full: 1,
};

/** "half", "80 %", "+20 %", "double": as a share of what it was. */
function readStrength(gather: Gather, text: string): number | undefined {
  const typed = tidy(text).toLowerCase();
  const word = shareWord(typed) ?? (Object.hasOwn(CHANGES, typed) ? CHANGES[typed] : undefined);
  if (word !== undefined && word !== null) {
    gather.say("to", "ECHO", `read as ${figure(100 * word)} % of what it was`);
    return word;
  }
  const match =
    /^([+-]?)\s*(\d+(?:[.,]\d+)?)\s*(%|percent|per cent)?(?: of (?:it|before|what it was))?$/.exec(typed);
  if (match === null) {
    return gather.doubt("to", "FORMAT", "enter a share of what it was, such as half, 80 % or +20 %");
  }
  const number = Number((match[2] ?? "").replace(",", "."));
  if (match[3] === undefined) {
    const ways = [`${number} %`, ...(number <= 5 ? [`${figure(100 * number)} %`] : [])];
    const choices = ways.map((way) => ({ label: `${way} of what it was`, text: `${match[1] ?? ""}${way}` }));
    return gather.doubt("to", "AMBIG", `${ways.join(" or ")} of what it was?`, choices);
  }
  const share = match[1] === "" ? number / 100 : 1 + ((match[1] === "-" ? -1 : 1) * number) / 100;
  if (share < 0 || share > 10) return gather.doubt("to", "RANGE", "must be 0 to 1000 % of what it was");
  gather.say("to", "ECHO", `read as ${figure(100 * share)} % of what it was`);
  return share;
}

function readOnOff(gather: Gather, text: string): number | undefined {
  const typed = tidy(text).toLowerCase();
  if (["on", "yes", "running", "started", "1"].includes(typed)) return 1;
  if (["off", "no", "stopped", "removed", "none", "0"].includes(typed)) return 0;
  return gather.doubt("to", "FORMAT", "enter on or off", [
    { label: "on", text: "on" },
    { label: "off", text: "off" },
  ]);
}
