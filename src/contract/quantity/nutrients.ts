/**
 * Nitrate, nitrite and phosphate: as the ion or as the element, in mg, µg (ppb) or µmol per litre.
 * "mg/L" alone is taken for the unit chosen beside the field, and asked about where nobody chose.
 */
import { isUnitOf, type QuantityKey, toCanonical, unitsOf } from "../../engine/units/convert.ts";
import { phrase } from "./candidates.ts";
import { readMeasure } from "./measure.ts";
import { type Amount, asked, type Outcome } from "./outcome.ts";
import {
  type Candidate,
  type Judgement,
  type MeasureContext,
  type MeasureRule,
  spellingsOf,
} from "./rule.ts";
import { figure, shown } from "./show.ts";

interface Nutrient {
  readonly key: QuantityKey;
  readonly label: string;
  readonly unit: string;
  readonly example: string;
  readonly offered: readonly string[];
  readonly max: number;
  readonly words: Readonly<Record<string, readonly string[]>>;
  readonly judge: (candidate: Candidate) => Judgement | null;
  readonly rescue?: (candidate: Candidate) => Judgement | null;
}

function ruleFor({
  key,
  label,
  unit,
  offered,
  max,
  words,
  judge,
  rescue,
  example,
}: Nutrient): MeasureRule<MeasureContext> {
  return {
    label,
    unit,
    example,
    offered,
    judge,
    spellings: spellingsOf(unitsOf(key), words),
    toCanonical: (value, from) => (isUnitOf(key, from) ? toCanonical(key, value, from) : Number.NaN),
    plain: [unit],
    hard: { min: 0, max },
    narrow: (units, { unit: chosen }) => (chosen != null && units.includes(chosen) ? [chosen] : units),
    whichUnit: (list) =>
      `${list.map((c) => (c.unit === unit ? phrase(c) : `${phrase(c)} (${figure(c.middle)} ${unit})`)).join(", or ")}? The kit leaflet says which`,
    ...(rescue === undefined ? {} : { rescue }),
    words: (text, context) => traceIsNoFigure(text, label, context),
  };
}

/** Words that say "very little" are no figure, yet not nothing. */
function traceIsNoFigure(text: string, label: string, context: MeasureContext): Outcome<Amount> | null {
  if (!/^\s*(?:trace|traces|low|none|undetectable|not detectable|clear|nil)\s*$/i.test(text)) return null;
  const step = context.kitStep ?? null;
  const message = {
    kind: "FORMAT" as const,
    text: `${context.label ?? label} "${shown(text)}": enter a figure or 'less than' your kit's smallest step`,
  };
  const choices = [
    {
      label: step === null ? "less than the kit's smallest step" : `less than ${step}`,
      text: step === null ? null : `<${step}`,
    },
  ];
  return asked({ text, unit: context.unit ?? null }, message, choices);
}

const above = ({ form, middle }: Candidate): Judgement | null =>
  form === "above" && middle > 0
    ? { verdict: "convert", kind: "UNUSUAL", text: "kept as 'more than'. Dilute and test again for a figure" }
    : null;

const tooMuch = (limit: number, unit: string, candidate: Candidate): Judgement | null =>
  candidate.middle > limit
    ? {
        verdict: "flag",
        kind: "UNUSUAL",
        text: `${figure(candidate.middle)} ${unit} is kept. Reef tanks are mostly below ${limit}; test again`,
      }
    : null;

const NITRATE = ruleFor({
  key: "no3",
  label: "Nitrate",
  unit: "mg/L as NO3",
  example: "10",
  offered: ["mg/L as NO3", "mg/L as N"],
  max: 1000,
  words: {
    "mg/L as NO3": ["no3", "mg/l no3", "ppm no3", "nitrate", "mg/l nitrate", "no3-"],
    "mg/L as N": [
      "no3-n",
      "mg/l no3-n",
      "ppm no3-n",
      "n",
      "mg/l n",
      "ppm n",
      "mg n/l",
      "nitrate-n",
      "mg/l nitrate-n",
    ],
    "umol/L": ["umol/l", "um", "umol"],
    "mg/L as NO3|mg/L as N": ["mg/l", "ppm"],
  },
  judge: (c) => above(c) ?? (c.form === "range" ? null : tooMuch(50, "mg/L", c)),
  rescue: ({ low, middle }) => {
    const thousandth = low / 1000;
    if (middle <= 1000 || thousandth > 1000) return null;
    const choices = [{ label: `${thousandth} mg/L as NO3`, text: `${thousandth} mg/L as NO3` }];
    return {
      verdict: "refuse",
      kind: "RANGE",
      text: `must be 0 to 1000 mg/L. Is it ${thousandth.toFixed(3)}?`,
      choices,
    };
  },
});

const NITRITE = ruleFor({
  key: "nitrite",
  label: "Nitrite",
  unit: "mg/L as NO2",
  example: "0.1",
  offered: ["mg/L as NO2", "mg/L as N"],
  max: 1000,
  words: {
    "mg/L as NO2": ["no2", "mg/l no2", "ppm no2", "nitrite"],
    "mg/L as N": ["no2-n", "mg/l no2-n", "ppm no2-n", "n", "mg/l n", "mg n/l"],
    "umol/L": ["umol/l", "um"],
    "mg/L as NO2|mg/L as N": ["mg/l", "ppm"],
  },
  judge: (c) => above(c) ?? tooMuch(5, "mg/L as NO2", c),
});

const PHOSPHATE = ruleFor({
  key: "phosphate",
  label: "Phosphate",
  unit: "mg/L as PO4",
  example: "0.03",
  offered: ["mg/L as PO4", "mg/L as P"],
  max: 50,
  words: {
    "mg/L as PO4": ["po4", "mg/l po4", "ppm po4", "phosphate"],
    "mg/L as P": ["p", "mg/l p", "ppm p", "po4-p", "mg/l po4-p", "mg p/l"],
    "ug/L as PO4": ["ppb po4", "ug/l po4"],
    "ug/L as P": ["ppb p", "ug/l p", "ppb phosphorus", "ppb po4-p"],
    "umol/L": ["umol/l", "um"],
    "mg/L as PO4|mg/L as P": ["mg/l", "ppm"],
    "ug/L as P|ug/L as PO4": ["ppb", "ug/l"],
  },
  judge: judgePhosphate,
});

function judgePhosphate(candidate: Candidate): Judgement | null {
  const { low, unit, form } = candidate;
  const asPpb = toCanonical("phosphate", low, "ug/L as P");
  if (form === "exact" && unit.startsWith("mg/L") && low >= 5) {
    const label = `${figure(low)} ppb P (${figure(asPpb)} mg/L PO4)`;
    const choices = [
      { label, text: `${low} ppb P` },
      { label: `${figure(low)} ${unit}, as typed`, text: `${low} ${unit} (checked)` },
    ];
    return {
      verdict: "ask",
      kind: "UNIT",
      text: `${figure(low)} mg/L is beyond any tank. Read as ${label}?`,
      choices,
    };
  }
  return above(candidate) ?? tooMuch(0.5, "mg/L PO4", candidate);
}

export const readNitrate = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, NITRATE, context);
export const readNitrite = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, NITRITE, context);
export const readPhosphate = (text: string, context: MeasureContext): Outcome<Amount> =>
  readMeasure(text, PHOSPHATE, context);
