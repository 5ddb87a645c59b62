/** From the words of an answer to entries of a tank file. What they mean is judged by the file's own reader. */
import { readDate } from "../../contract/quantity/date.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { readSandDepth } from "../../contract/quantity/sand-depth.ts";
import { nearest } from "../../contract/tank-file/suggest.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import { GROWTHS, type Growth } from "../../engine/types/tank.ts";
import { type Answer, type AnswerContext, again, doubtOf, entries, partsOf } from "./answer.ts";

export function parseWater(text: string): Answer {
  const sides = /\d\s*(?:[a-z"]*\s*)(?:[x×*]|by)\s*\d/i.test(text);
  return entries(sides ? { display_sides_cm: text } : { water_l: text });
}

export function parseStart(text: string, { preferences, today }: AnswerContext): Answer {
  const word = /\b(?:(live|dry|mixed)(?: rock)?|(no rock|rockless))\b/i.exec(text);
  const day = text.replace(word?.[0] ?? "", "").replace(/^[\s,;]+|[\s,;]+$/g, "");
  const start = word?.[1]?.toLowerCase() ?? (word === null ? undefined : "none");
  const rock = start === undefined ? {} : { rock: { start } };
  if (day === "") return entries(rock);
  const outcome = readDate(day, { preferences, today, future: "planned", label: "First seawater" });
  if (!isKept(outcome)) return again(day, outcome.message.text, outcome.choices);
  // Written out: "yesterday" or a day without its year would mean another day when the file is read again.
  return entries(
    { first_seawater_on: outcome.value, ...rock },
    outcome.message === null ? [] : [outcome.message.text],
  );
}

/** Described growths, by the letter they are offered under. */
export const GROWTH_WORDS: Readonly<Record<Growth, string>> = {
  film_glass: "a green or brown haze on the glass",
  film_rock: "a thin green or brown coat on the rock",
  film_sand: "a coat on the sand",
  diatoms: "brown dust that wipes off, in a young tank",
  hair_algae: "green threads, short or long",
  bubble_algae: "green bubbles",
  cyanobacteria: "a dark red or blue-green skin that lifts off in sheets",
  dinoflagellates: "brown slime with strings and bubbles",
  detritus_sand: "brown fluff on the sand",
  detritus_crevice: "brown fluff between the rocks",
  leftovers: "food that lies about",
};

export const letterOf = (growth: Growth): string => String.fromCharCode(97 + GROWTHS.indexOf(growth));

export function parseGrowths(text: string): Answer {
  if (/^(?:none|nothing|no)$/i.test(text)) {
    return entries({
      sightings: { film_glass: "none", film_rock: "none", hair_algae: "none", detritus_sand: "none" },
    });
  }
  const sightings: Record<string, string> = {};
  for (const part of partsOf(text)) {
    const match = /^(.*?)[\s:]+(none|(?:a )?trace|patches|patchy|covered|all over|everywhere|\d.*%)$/i.exec(
      part,
    );
    const growth = growthOf(match?.[1] ?? part);
    if (growth === null) {
      const letters = GROWTHS.map((one) => `${letterOf(one)} ${plainName(one)}`).join(", ");
      return again(part, `Growth "${part}": not one of those described. They are: ${letters}`);
    }
    if (match?.[2] === undefined) {
      const choices = ["a trace", "patches", "covered"].map((cover) => ({
        label: cover,
        text: `${part} ${cover}`,
      }));
      return again(part, `Growth "${part}": how much of it?`, choices);
    }
    sightings[growth] = match[2].toLowerCase();
  }
  return entries({ sightings });
}

const plainName = (growth: Growth): string =>
  (SHELF_NAME[growth as ShelfId] as string | undefined) ?? growth.replaceAll("_", " ");

function growthOf(name: string): Growth | null {
  const typed = name.trim().toLowerCase();
  const exact = GROWTHS.find((one) => [letterOf(one), one, plainName(one)].includes(typed));
  if (exact !== undefined || typed.length < 3) return exact ?? null;
  return nearest(typed, GROWTHS) as Growth | null;
}

const NUMBERS: Readonly<Record<string, string>> = {
  a: "1",
  an: "1",
  one: "1",
  two: "2",
  three: "3",
  four: "4",
  five: "5",
  six: "6",
};

export function parseAnimals(text: string): Answer {
  if (/^(?:none|nothing|no|no one)$/i.test(text)) return entries({ animals_present: [], fish: [] });
  const animals_present = partsOf(text.replace(/\band\b/gi, ",  ")).map((part) => {
    const [, count, name] = /^(\S+)\s+(.+)$/.exec(part) ?? [];
    const figure = count === undefined ? undefined : (NUMBERS[count.toLowerCase()] ?? count);
    return figure !== undefined && name !== undefined && /^(?:many|[~<]?\p{Nd}[\p{Nd}.,?]*)$/iu.test(figure)
      ? { animal: name, count: /^\d+$/.test(figure) ? Number(figure) : figure }
      : { animal: part };
  });
  return entries({ animals_present });
}

export function parseFloor(text: string, { preferences }: AnswerContext): Answer {
  const kind =
    /\b(bare|sand|rubble)\b/i.exec(text)?.[1]?.toLowerCase() ??
    (/\bnothing\b/i.test(text) ? "bare" : undefined);
  const grain = /\b(fine|medium|coarse)\b/i.exec(text)?.[1]?.toLowerCase();
  const depth = text
    .replace(/\b(?:bare|floor|bottom|sand|rubble|fine|medium|coarse|deep|nothing|grains?|of)\b/gi, "")
    .replace(/[\s,;]+/g, " ")
    .trim();
  if (kind === undefined && depth === "")
    return again(
      text,
      `Floor "${text}": say bare, sand or rubble; for sand its depth, such as sand 3 cm fine`,
    );
  const outcome = depth === "" ? null : readSandDepth(depth, { preferences });
  const doubt = outcome === null ? null : doubtOf(outcome);
  if (doubt !== null) return doubt;
  return entries({
    floor: {
      kind: kind ?? "sand",
      ...(depth === "" ? {} : { depth_mm: depth }),
      ...(grain === undefined ? {} : { grain }),
    },
  });
}

const FOOD_WORDS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:frozen )?(?:artemia|brine shrimps?)\b/i, "frozen_artemia"],
  [/\b(?:frozen )?(?:mysis|mysids?)(?: shrimps?)?\b/i, "frozen_mysis"],
  [/\b(?:nori|seaweed|laver)(?: sheets?)?\b/i, "nori"],
  [/\b(?:dry )?flakes?\b/i, "dry_flake"],
  [/\b(?:dry )?(?:pellets?|granules?|food)\b/i, "dry_pellet"],
  [/\b(?:frozen )?(?:seafood(?: mix)?|krill|mix|chopped shrimp)\b/i, "seafood_mix"],
];

export function parseFood(text: string): Answer {
  if (/^(?:none|nothing|no)$/i.test(text)) return entries({ feeding: { foods: [] } });
  const foods: { kind: string; g_per_day?: string }[] = [];
  let left: string | undefined;
  for (const part of partsOf(text)) {
    const leftover = /^(none|nothing|some|a lot|lots)(?: is)? left\b/i.exec(part)?.[1]?.toLowerCase();
    if (leftover !== undefined) {
      left = leftover.endsWith("ing") ? "none" : leftover.replace(/^a lot$|^lots$/, "a_lot");
      continue;
    }
    const found = FOOD_WORDS.find(([pattern]) => pattern.test(part));
    if (found === undefined) {
      return again(
        part,
        `Food "${part}": say what it is: pellets, flake, artemia, mysis, seafood mix or nori`,
      );
    }
    const much = part
      .replace(found[0], "")
      .replace(/\bof\b/gi, "")
      .replace(/\s+/g, " ")
      .trim();
    foods.push(much === "" ? { kind: found[1] } : { kind: found[1], g_per_day: much });
  }
  return entries({ feeding: { foods, ...(left === undefined ? {} : { left_after_two_minutes: left }) } });
}

const MEDICINE = /\b(?:copper|medic\w*|antibiotics?|formalin|praziquantel|chloroquine|treat\w*|dewormer)\b/i;

export function parseTrouble(text: string): Answer {
  if (/^(?:no|none|nothing)$/i.test(text)) return entries({});
  if (/^yes$/i.test(text))
    return again(text, `Trouble "${text}": say what: something dead, gasping, or the medicine by name`);
  return entries(
    MEDICINE.test(text)
      ? { medicines: [text.replace(/^(?:yes|treated with|treating with)[\s,:]+/i, "")] }
      : { trouble: text },
  );
}
