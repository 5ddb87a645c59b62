/** Water volume: litres, millilitres, cubic metres, and the two gallons, which are never taken for each other. */
import { isUnitOf, toCanonical, unitsOf } from "../../engine/units/convert.ts";
import { phrase } from "./candidates.ts";
import { readMeasure } from "./measure.ts";
import type { Amount, Outcome } from "./outcome.ts";
import {
  type Candidate,
  type Judgement,
  type MeasureContext,
  type MeasureRule,
  spellingsOf,
} from "./rule.ts";
import { figure } from "./show.ts";

const GALLONS = ["US gal", "imp gal"];

const rule: MeasureRule<MeasureContext> = {
  label: "Water volume",
  unit: "L",
  example: "200",
  spellings: spellingsOf(unitsOf("volume"), {
    L: ["l", "litre", "litres", "liter", "liters", "ltr", "lt"],
    mL: ["ml", "millilitres", "milliliters"],
    m3: ["m3", "cubic metres", "cubic meters", "cbm"],
    "US gal": ["us gallon", "us gallons", "gal us", "gallon us", "gallons us", "us gals", "usg"],
    "imp gal": [
      "imperial gal",
      "imperial gallon",
      "imperial gallons",
      "imp gallons",
      "imp gallon",
      "uk gal",
      "uk gallons",
      "uk gallon",
      "gal imp",
      "gallon imp",
      "gallons imp",
      "gallons imperial",
      "gallons uk",
      "gal uk",
    ],
    "US gal|imp gal": ["gal", "gals", "gallon", "gallons", "g", "galls"],
  }),
  toCanonical: (value, unit) => (isUnitOf("volume", unit) ? toCanonical("volume", value, unit) : Number.NaN),
  plain: ["L"],
  offered: ["L", ...GALLONS],
  hard: { min: 0, max: 100_000, open: true },
  missing: "Enter the water volume, or choose 'I'm not sure' and give the tank's sides",
  // A gallon that was spelled out stands, whichever its writer is used to.
  narrow: (units, { preferences: { gallon } }) =>
    gallon === null || units.length === 1
      ? units
      : units.filter((unit) => unit !== (gallon === "us" ? "imp gal" : "US gal")),
  whichUnit: (candidates) =>
    candidates.every(({ unit }) => GALLONS.includes(unit))
      ? `which gallon? ${candidates.map((c) => `${c.unit === "US gal" ? "US" : "imperial"} (${figure(c.middle)} L)`).join(" or ")}`
      : `could be ${candidates.map((c) => (c.unit === "L" ? phrase(c) : `${phrase(c)} (${figure(c.middle)} L)`)).join(" or ")}. Which?`,
  rescue: ({ low, unit, middle }) => {
    if (unit !== "L" || middle <= 100_000 || middle > 1e8) return null;
    const text = `must be 100,000 L or less. Did you type millilitres? ${low.toLocaleString("en-GB")} mL is ${figure(low / 1000)} L`;
    return { verdict: "refuse", kind: "RANGE", text, choices: [{ label: `${low} mL`, text: `${low} mL` }] };
  },
  judge: judgeVolume,
};

function judgeVolume({ middle }: Candidate): Judgement | null {
  if (middle >= 10) return null;
  const text = `${figure(middle)} L is kept. Tanks below 10 L change fast, and a crew for them is rarely a whole animal`;
  return { verdict: "flag", kind: "UNUSUAL", text };
}

export function readVolume(text: string, context: MeasureContext): Outcome<Amount> {
  return readMeasure(text, rule, context);
}
