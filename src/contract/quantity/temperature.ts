/** Water temperature. A figure that fits another scale far better is asked about, not converted. */
import { isUnitOf, toCanonical, unitsOf } from "../../engine/units/convert.ts";
import { readMeasure } from "./measure.ts";
import type { Amount, Choice, Outcome } from "./outcome.ts";
import {
  type Candidate,
  type Judgement,
  type MeasureContext,
  type MeasureRule,
  spellingsOf,
} from "./rule.ts";
import { figure } from "./show.ts";

const HARD = { min: 0, max: 45 };
/** What a reef may have on its worst day, C: a rival reading must fall here to be offered. */
const LIKELY = { min: 15, max: 35 };
/** Above it the tank is in danger today, C. */
const TOO_WARM = 30;

const SCALE: Readonly<Record<string, string>> = { C: "C", F: "F", K: "K" };

const convert = (value: number, unit: string): number =>
  isUnitOf("temperature", unit) ? toCanonical("temperature", value, unit) : Number.NaN;

const rule: MeasureRule<MeasureContext> = {
  label: "Temperature",
  unit: "C",
  example: "25.5",
  spellings: spellingsOf(unitsOf("temperature"), {
    C: ["celsius", "centigrade", "℃", "c"],
    F: ["fahrenheit", "℉", "f"],
    K: ["kelvin", "kelvins", "k"],
  }),
  toCanonical: convert,
  plain: ["C"],
  offered: ["C", "F", "K"],
  hard: HARD,
  rescue: otherScale,
  judge: judgeTemperature,
};

function otherScale({ low, unit }: Candidate): Judgement | null {
  const other = Object.keys(SCALE).find((name) => {
    const celsius = convert(low, name);
    return name !== unit && celsius >= LIKELY.min && celsius <= LIKELY.max;
  });
  if (other === undefined) return null;
  const reading = `${figure(low)} ${other}${other === "C" ? "" : ` (${convert(low, other).toFixed(1)} C)`}`;
  const why = convert(low, unit) > HARD.max ? "would boil the animals" : "is frozen";
  const choices: Choice[] = [{ label: reading, text: `${low} ${other}` }];
  return {
    verdict: "ask",
    kind: "UNIT",
    text: `${figure(low)} ${unit} ${why}. Read as ${reading}?`,
    choices,
  };
}

function judgeTemperature({ middle }: Candidate): Judgement | null {
  if (middle > TOO_WARM) {
    const text = `${figure(middle)} C is too warm. First steps: lights off, more movement at the surface, a fan over the water; no ice in the tank`;
    return { verdict: "flag", kind: "DANGER", text };
  }
  if (middle < 16) {
    return {
      verdict: "flag",
      kind: "DANGER",
      text: `${figure(middle)} C is too cold for reef animals. Warm it by 1 C an hour at most`,
    };
  }
  if (middle < 22 || middle > 29) {
    return {
      verdict: "flag",
      kind: "UNUSUAL",
      text: `${figure(middle)} C is kept. Reef tanks are mostly at 22 to 29 C`,
    };
  }
  return null;
}

export function readTemperature(text: string, context: MeasureContext): Outcome<Amount> {
  return readMeasure(text, rule, context);
}
