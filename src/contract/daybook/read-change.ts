/**
 * Changes that hold from their day on. Feed: the whole feed of a usual day, in words that may name the food ("0.4 g
 * pellet") and how often ("1 g every other day"). Strength of light: a share of what it was before.
 */

import { readFeeding } from "../quantity/feeding.ts";
import { isKept, type NotKept } from "../quantity/outcome.ts";
import { tidy } from "../quantity/parse.ts";
import { readPlain } from "../quantity/plain.ts";
import { figure, shown } from "../quantity/show.ts";
import { FOODS, type FoodKind } from "../tank-file/assumptions.ts";
import { type FeedWords, feedWords } from "./feed-words.ts";
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
  const named = changed === "feed" ? feedWords(text).food : null;
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

/** Grams a day as fed; null where only how often was said. */
function readFeed(gather: Gather, text: string): number | null | undefined {
  const { preferences, waterL } = gather.context;
  const label = gather.label("to");
  const words = feedWords(text);
  const context = { preferences, label, waterL };
  const alone = words.amount === "" && words.times !== null;
  const outcome = alone ? readFeeding(words.times?.words ?? "", context) : readFeeding(words.amount, context);
  if (!isKept(outcome)) return gather.take("to", asTyped(outcome, text, words));
  if (outcome.value.unit === "times/day") {
    const said = `read as ${figure(outcome.value.central)} times a day; the weight stays as it was`;
    gather.say("to", "ECHO", said);
    return null;
  }
  if (words.times === null) return gather.take("to", outcome)?.central;
  const grams = outcome.value.central * words.times.perDay;
  gather.say("to", "ECHO", `read as ${figure(grams)} g a day`);
  return grams;
}

/** Choices as they replace the whole text: the food and how often go along. */
function asTyped(outcome: NotKept, text: string, { food, times }: FeedWords): NotKept {
  const more = [food?.word, times?.words].filter((part) => part !== undefined).join(" ");
  const whole = (choice: string): string => {
    if (more === "") return choice;
    const checked = / \(checked\)$/.test(choice) ? " (checked)" : "";
    const bare = choice.replace(/ \(checked\)$/, "");
    return `${times === null ? bare : bare.replace(/\/day$/, "")} ${more}${checked}`;
  };
  const { message, choices } = outcome;
  return {
    ...outcome,
    message: {
      ...message,
      text: message.text.replace(/^([^"]*)"[^"]*"/, () => `${label(message.text)}"${shown(text)}"`),
    },
    choices: choices.map((choice) => ({ ...choice, text: choice.text === null ? null : whole(choice.text) })),
  };
}

/** What stands before the typed value. */
const label = (text: string): string => text.slice(0, text.indexOf('"'));

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
