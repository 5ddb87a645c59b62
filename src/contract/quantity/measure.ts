/**
 * The one way a measured amount is read, for every quantity: number, unit, bounds, then judgement.
 * A rule says what is particular to the quantity; nothing here knows any of them by name.
 * Where a number or a unit can mean two things inside the bounds, it asks; it never picks.
 */
import { amount, distinct, echoed, fits, inWords, mirrored, outside, phrase } from "./candidates.ts";
import {
  type Amount,
  asked,
  kept,
  type Message,
  type MessageKind,
  type Original,
  type Outcome,
  refused,
} from "./outcome.ts";
import { type ParsedAmount, parseAmount } from "./parse.ts";
import { decimalSign } from "./preferences.ts";
import { type Candidate, type MeasureContext, type MeasureRule, spelled } from "./rule.ts";
import { shown } from "./show.ts";

/** One reading under way: what every step of it needs. */
interface Reading<C extends MeasureContext> {
  readonly rule: MeasureRule<C>;
  readonly context: C;
  readonly original: Original;
  readonly say: (kind: MessageKind, words: string) => Message;
}

export function readMeasure<C extends MeasureContext>(
  text: string,
  rule: MeasureRule<C>,
  context: C,
): Outcome<Amount> {
  const label = context.label ?? rule.label;
  const original = { text, unit: context.unit ?? null };
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  if (text.trim() === "") {
    const words = rule.missing ?? `Enter a number such as ${rule.example}`;
    return refused(original, { kind: "MISSING", text: `${label}: nothing entered. ${words}` });
  }
  const special = rule.words?.(text, context);
  if (special != null) return special;
  const parsed = parseAmount(text, decimalSign(context.preferences.locale));
  if (parsed === null) {
    return refused(
      original,
      say("FORMAT", `not a number we can read. Enter a number such as ${rule.example}`),
    );
  }
  return understand(parsed, { rule, context, original: { text, unit: parsed.unit ?? original.unit }, say });
}

/** Which units it can be in, and which of the readings are possible at all. */
function understand<C extends MeasureContext>(parsed: ParsedAmount, reading: Reading<C>): Outcome<Amount> {
  const { rule, context, original, say } = reading;
  // "25 degrees" names no unit, for all that it has a word.
  const spelling = parsed.unit === null ? null : spelled(parsed.unit) || null;
  const meant = spelling === null ? chosenUnits(reading) : spelledUnits(spelling, rule);
  if (meant.length === 0) {
    const why = rule.refuseUnit?.(spelling ?? "") ?? `"${shown(parsed.unit ?? "")}" is not a unit of this.`;
    return refused(original, say("UNIT", `${why} Known here: ${rule.offered.join(", ")}`));
  }
  const units = rule.narrow?.(meant, context) ?? meant;
  const all = parsed.candidates.flatMap(({ low, high }) =>
    units.map((unit): Candidate => {
      const middle = rule.toCanonical((low + high) / 2, unit);
      return { low, high, form: parsed.form, unit, middle };
    }),
  );
  const within = ({ low, high, unit }: Candidate) => fits(low, unit, rule) && fits(high, unit, rule);
  const [only, ...others] = distinct(all.filter(within));
  const [first] = all;
  if (first === undefined) throw new TypeError(`Cannot read ${rule.label}: the rule offers no unit`);
  if (only === undefined) return outOfBounds(first, parsed, reading);
  return others.length > 0 ? which([only, ...others], reading) : settle(only, parsed, reading);
}

function chosenUnits<C extends MeasureContext>({ rule, context }: Reading<C>): readonly string[] {
  return context.unit == null ? rule.offered : [context.unit];
}

function spelledUnits<C extends MeasureContext>(
  spelling: string,
  { spellings }: MeasureRule<C>,
): readonly string[] {
  return Object.hasOwn(spellings, spelling) ? (spellings[spelling] ?? []) : [];
}

function outOfBounds<C extends MeasureContext>(
  first: Candidate,
  { checked }: ParsedAmount,
  { rule, context, original, say }: Reading<C>,
): Outcome<Amount> {
  const rescue = checked ? null : rule.rescue?.(first, context);
  if (rescue == null) return refused(original, say("RANGE", outside(first, rule)), mirrored(first));
  const end = rescue.verdict === "ask" ? asked : refused;
  return end(original, say(rescue.kind, rescue.text), rescue.choices ?? []);
}

/** More than one reading is possible: all are offered. */
function which<C extends MeasureContext>(
  possible: readonly Candidate[],
  { rule, context, original, say }: Reading<C>,
): Outcome<Amount> {
  const either = possible.map((c) => inWords(c, rule)).join(" or ");
  const words = rule.whichUnit?.(possible) ?? `could be ${either}. Which?`;
  // Whoever picks a reading has looked: it must not lead to a second question.
  const unlikely = (c: Candidate) => rule.judge?.(c, context)?.verdict === "ask";
  const choices = possible.map((c) => ({
    label: inWords(c, rule),
    text: `${phrase(c)}${unlikely(c) ? " (checked)" : ""}`,
  }));
  return asked(original, say("AMBIG", words), choices);
}

/** One reading is left: is it likely, and does it need saying? */
function settle<C extends MeasureContext>(
  only: Candidate,
  { checked, form, rewritten, unit }: ParsedAmount,
  { rule, context, original, say }: Reading<C>,
): Outcome<Amount> {
  const value = amount(only, rule, context);
  const judgement = rule.judge?.(only, context) ?? null;
  if (judgement !== null) {
    const { verdict, kind, text, choices = [] } = judgement;
    const message = say(kind, text);
    if (verdict === "convert") return kept("convert", value, original, message);
    if (verdict === "refuse") return refused(original, message, choices);
    return verdict === "flag" || checked
      ? kept("flag", value, original, message)
      : asked(original, message, choices);
  }
  const unitGiven = unit !== null || context.unit != null || rule.offered.length === 1;
  const asTyped = form === "exact" && !rewritten && value.censored === null;
  return asTyped && unitGiven && rule.plain.includes(only.unit)
    ? kept("accept", value, original)
    : kept("convert", value, original, say("ECHO", `read as ${echoed(only, value, rule)}`));
}
