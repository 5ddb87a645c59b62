/** Food a day: a weight, a pinch, cubes of unknown weight, or how often. */
import { toCanonical } from "../../engine/units/convert.ts";
import { readMeasure } from "./measure.ts";
import { type Amount, asked, kept, type Outcome } from "./outcome.ts";
import { parseAmount, tidy } from "./parse.ts";
import { decimalSign } from "./preferences.ts";
import { type Candidate, type Judgement, type MeasureContext, type MeasureRule, spelled } from "./rule.ts";
import { figure, shown } from "./show.ts";

export interface FeedingContext extends MeasureContext {
  /** Water of the tank, L; null where unknown. */
  readonly waterL?: number | null;
}

/** A pinch of dry food, g; common practice, no source. */
const PINCH_G = { low: 0.05, central: 0.12, high: 0.3 };
/** A frozen cube, thawed and drained, g; common practice, no source. */
const CUBE_G = { low: 2, high: 5 };
/** More than this a litre and day is a slip of the unit. */
const MOST_G_PER_LITRE = 0.1;

const MASSES = {
  "g/day": ["g", "gram", "grams", "gr"],
  "mg/day": ["mg", "milligram", "milligrams"],
  "oz/day": ["oz", "ounce", "ounces"],
};
const EVERY_DAY = ["", "/day", "/d", " a day", " daily", " each day"];

const spellings = Object.fromEntries(
  Object.entries(MASSES).flatMap(([unit, words]) =>
    words.flatMap((word) => EVERY_DAY.map((day) => [spelled(`${word}${day}`), [unit]] as const)),
  ),
);

const rule: MeasureRule<FeedingContext> = {
  label: "Feed a day",
  unit: "g/day",
  example: "0.2",
  spellings,
  toCanonical: (value, unit) => {
    const mass = unit.replace("/day", "");
    return mass === "g" || mass === "mg" || mass === "oz" ? toCanonical("mass", value, mass) : Number.NaN;
  },
  plain: ["g/day"],
  offered: ["g/day"],
  hard: { min: 0, max: 10_000 },
  judge: judgeFeed,
  words: (text, context) => pinches(text, context) ?? cubes(text, context),
};

function judgeFeed({ low, middle, unit }: Candidate, { waterL }: FeedingContext): Judgement | null {
  if (waterL == null || middle <= MOST_G_PER_LITRE * waterL) return null;
  const number = unit.startsWith("g") ? low : middle;
  const grams = { label: `${figure(number / 1000)} g/day`, text: `${number / 1000} g/day` };
  const asTyped = { label: `${figure(low)} ${unit}, as typed`, text: `${low} ${unit} (checked)` };
  const text = `${figure(middle)} g a day is ${figure(middle / waterL)} g a litre. Did you mean ${figure(number / 1000)} g, or ${figure(number)} mg?`;
  return { verdict: "ask", kind: "UNUSUAL", text, choices: [grams, asTyped] };
}

const WORDS: Readonly<Record<string, number>> = { a: 1, an: 1, one: 1, two: 2, three: 3, four: 4, half: 0.5 };

function pinches(text: string, context: FeedingContext): Outcome<Amount> | null {
  const match =
    /^(?:(a|one|two|three|four|\d+(?:\.\d+)?) )?pinch(?:es)?(?: (?:a|per|each) day| daily|\/day)?$/.exec(
      tidy(text).toLowerCase(),
    );
  if (match === null) return null;
  const times = WORDS[match[1] ?? "a"] ?? Number(match[1]);
  const label = context.label ?? rule.label;
  const { low, central, high } = PINCH_G;
  const value: Amount = {
    low: low * times,
    central: central * times,
    high: high * times,
    unit: "g/day",
    censored: null,
  };
  const words = `read as ${figure(value.low)} to ${figure(value.high)} g a day of dry food`;
  return kept(
    "convert",
    value,
    { text, unit: "pinch" },
    { kind: "ECHO", text: `${label} "${shown(text)}": ${words}` },
  );
}

function cubes(text: string, context: FeedingContext): Outcome<Amount> | null {
  const typed = tidy(text)
    .toLowerCase()
    .replace(/^(?:a|one) /, "1 ");
  if (!/\bcubes?\b/.test(typed)) return null;
  const parsed = parseAmount(typed.replace(/ ?\bcubes?\b.*$/, ""), decimalSign(context.preferences.locale));
  const count = parsed?.candidates[0]?.low;
  if (count === undefined || parsed?.unit !== null || count <= 0 || count > 100) return null;
  const label = context.label ?? rule.label;
  const range = `${figure(count * CUBE_G.low)}-${figure(count * CUBE_G.high)}`;
  const words = "is the weight on the pack? Otherwise a typical weight is taken, with a wide band";
  const choices = [
    { label: "enter the weight from the pack, in grams", text: null },
    { label: `typical cubes, ${range} g a day in all`, text: `${range} g/day` },
  ];
  return asked(
    { text, unit: "cubes" },
    { kind: "AMBIG", text: `${label} "${shown(text)}": ${words}` },
    choices,
  );
}

/** Grams of food a day, as fed. */
export function readFeedAmount(text: string, context: FeedingContext): Outcome<Amount> {
  return readMeasure(text, rule, { unit: "g/day", ...context });
}

/** A weight a day, or how often food goes in (unit `times/day`). */
export function readFeeding(text: string, context: FeedingContext): Outcome<Amount> {
  const perDay = timesPerDay(tidy(text).toLowerCase());
  if (perDay === null) return readFeedAmount(text, context);
  const label = context.label ?? "Feeding";
  const value: Amount = { low: perDay, central: perDay, high: perDay, unit: "times/day", censored: null };
  const message = {
    kind: "ECHO" as const,
    text: `${label} "${shown(text)}": read as ${figure(perDay)} times a day`,
  };
  return kept("convert", value, { text, unit: null }, message);
}

const OFTEN: Readonly<Record<string, number>> = {
  daily: 1,
  "every day": 1,
  "once a day": 1,
  "twice a day": 2,
  "twice daily": 2,
  "three times a day": 3,
  "every other day": 0.5,
  "every second day": 0.5,
  "once a week": 1 / 7,
  weekly: 1 / 7,
  "twice a week": 2 / 7,
};

function timesPerDay(typed: string): number | null {
  const known = Object.hasOwn(OFTEN, typed) ? OFTEN[typed] : undefined;
  if (known !== undefined) return known;
  const every = /^every (\d{1,2}) days$/.exec(typed)?.[1];
  const times = /^(\d{1,2}) times (?:a|per) (day|week)$/.exec(typed);
  if (every !== undefined && Number(every) > 0) return 1 / Number(every);
  return times === null ? null : Number(times[1]) / (times[2] === "day" ? 1 : 7);
}
