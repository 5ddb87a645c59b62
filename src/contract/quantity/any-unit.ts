/**
 * A number with whatever unit stands behind it, and a unit alone: where the question is what the unit means. Which units
 * there are is the asker's business; here only number and wording are read.
 */
import { type Amount, asked, kept, type Outcome, refused } from "./outcome.ts";
import { parseAmount } from "./parse.ts";
import { decimalSign } from "./preferences.ts";
import { type MeasureContext, spelled } from "./rule.ts";
import { shown } from "./show.ts";

/** "8 dKH": the amount, its unit spelled as `spelled` has it. */
export function readWithUnit(text: string, context: MeasureContext): Outcome<Amount> {
  const label = context.label ?? "Value";
  const original = { text, unit: context.unit ?? null };
  const say = (words: string) => `${label} "${shown(text)}": ${words}`;
  const parsed = parseAmount(text, decimalSign(context.preferences.locale));
  if (parsed === null || parsed.form === "below" || parsed.form === "above")
    return refused(original, { kind: "FORMAT", text: say("enter a number and its unit, such as 8 dKH") });
  const unit = spelled(parsed.unit ?? context.unit ?? "");
  if (unit === "") return refused(original, { kind: "UNIT", text: say("enter its unit too, such as 8 dKH") });
  const [only, other] = parsed.candidates;
  if (only === undefined || other !== undefined) {
    const choices = parsed.candidates.map(({ low }) => ({
      label: `${low}`,
      text: `${low} ${parsed.unit ?? ""}`,
    }));
    return asked(original, { kind: "AMBIG", text: say("which number is meant?") }, choices);
  }
  const { low, high } = only;
  return kept("accept", { low, central: (low + high) / 2, high, unit, censored: null }, original);
}

/** "mg/L": a unit alone, as an amount of one. */
export function readUnitAlone(text: string, context: MeasureContext): Outcome<Amount> {
  const unit = spelled(text);
  const original = { text, unit: null };
  if (unit !== "" && !/^\d/.test(unit))
    return kept("accept", { low: 1, central: 1, high: 1, unit, censored: null }, original);
  const words = `${context.label ?? "Unit"} "${shown(text)}": enter a unit alone, such as mg/L`;
  return refused(original, { kind: "FORMAT", text: words });
}
