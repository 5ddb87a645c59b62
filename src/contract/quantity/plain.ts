/**
 * Amounts that need no judgement beyond their bounds: sand depth, rock, hours, days, shares, light, lengths.
 * Bounds are what a person could mean, not what is good: common practice, no source.
 */
import { isUnitOf, type QuantityKey, toCanonical, unitsOf } from "../../engine/units/convert.ts";
import { readMeasure } from "./measure.ts";
import type { Amount, Outcome } from "./outcome.ts";
import { type MeasureContext, type MeasureRule, spellingsOf } from "./rule.ts";

const LENGTH_WORDS = {
  cm: ["centimetre", "centimetres", "centimeters", "centimeter"],
  mm: ["millimetre", "millimetres", "millimeters", "millimeter"],
  m: ["metre", "metres", "meter", "meters"],
  in: ["inch", "inches", '"', "''", "″"],
  ft: ["foot", "feet", "'", "′"],
};
const MASS_WORDS = {
  g: ["gram", "grams", "gramme", "grammes", "gr"],
  mg: ["milligram", "milligrams"],
  kg: ["kilo", "kilos", "kilogram", "kilograms", "kgs"],
  lb: ["lbs", "pound", "pounds"],
  oz: ["ounce", "ounces"],
};

interface Convertible {
  readonly label: string;
  readonly quantity: QuantityKey;
  readonly unit: string;
  readonly hard: MeasureRule<MeasureContext>["hard"];
  readonly example: string;
}

/** A rule for a quantity of the unit table, in a unit of our choice. */
export function convertible({
  label,
  quantity,
  unit,
  hard,
  example,
}: Convertible): MeasureRule<MeasureContext> {
  const canonical = (value: number, from: string) =>
    isUnitOf(quantity, from) ? toCanonical(quantity, value, from) : Number.NaN;
  const one = canonical(1, unit);
  const words = quantity === "length" ? LENGTH_WORDS : quantity === "mass" ? MASS_WORDS : {};
  return {
    label,
    unit,
    example,
    spellings: spellingsOf(unitsOf(quantity), words),
    toCanonical: (value, from) => canonical(value, from) / one,
    plain: [unit],
    offered: unitsOf(quantity),
    hard,
  };
}

/** A rule for an amount with one unit, whatever it is called. */
function single(
  label: string,
  unit: string,
  words: readonly string[],
  hard: MeasureRule<MeasureContext>["hard"],
  example: string,
): MeasureRule<MeasureContext> {
  return {
    label,
    unit,
    example,
    spellings: spellingsOf([unit], { [unit]: words }),
    toCanonical: (value) => value,
    plain: [unit],
    offered: [unit],
    hard,
  };
}

const RULES = {
  length_cm: convertible({
    label: "Length",
    quantity: "length",
    unit: "cm",
    hard: { min: 0, max: 1000, open: true },
    example: "60",
  }),
  area_m2: convertible({
    label: "Area",
    quantity: "area",
    unit: "m2",
    hard: { min: 0, max: 1000 },
    example: "0.25",
  }),
  rock_kg: convertible({
    label: "Rock",
    quantity: "mass",
    unit: "kg",
    hard: { min: 0, max: 50_000 },
    example: "11",
  }),
  mass_g: convertible({
    label: "Weight",
    quantity: "mass",
    unit: "g",
    hard: { min: 0, max: 100_000 },
    example: "5",
  }),
  hours: single(
    "Light hours",
    "h",
    ["hour", "hours", "hrs", "hr", "h/day", "hours a day"],
    { min: 0, max: 24 },
    "9",
  ),
  days: single("Days", "d", ["day", "days"], { min: 0, max: 3650, open: true }, "7"),
  par: single(
    "Light",
    "PAR",
    ["umol", "umol/m2/s", "umol photons m-2 s-1", "ppfd"],
    { min: 0, max: 2500 },
    "100",
  ),
  percent: single("Share", "%", ["percent", "per cent", "pct"], { min: 0, max: 100 }, "10"),
} as const satisfies Readonly<Record<string, MeasureRule<MeasureContext>>>;

export type PlainKey = keyof typeof RULES;

export function readPlain(key: PlainKey, text: string, context: MeasureContext): Outcome<Amount> {
  return readMeasure(text, RULES[key], context);
}
