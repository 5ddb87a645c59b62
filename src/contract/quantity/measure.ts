/**
 * The one way a measured amount is read, for every quantity: number, unit, bounds, then judgement.
 * A rule says what is particular to the quantity; nothing here knows any of them by name.
 * Where a number or a unit can mean two things inside the bounds, it asks; it never picks.
 */
import { type Amount, asked, type Choice, kept, type MessageKind, type Outcome, refused } from "./outcome.ts";
import { parseAmount } from "./parse.ts";
import { decimalSign } from "./preferences.ts";
import { type Candidate, type Judgement, type MeasureContext, type MeasureRule, spelled } from "./rule.ts";
import { figure, shown } from "./show.ts";

const ABOUT = 0.15;

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
  const typedUnit = parsed.unit === null ? null : spelled(parsed.unit);
  const chosen = context.unit == null ? rule.offered : [context.unit];
  const meant = typedUnit === null ? chosen : unitsFor(typedUnit, rule);
  if (meant.length === 0) {
    const why = rule.refuseUnit?.(typedUnit ?? "") ?? `"${shown(parsed.unit ?? "")}" is not a unit of this.`;
    const list = rule.offered.join(", ");
    return refused(original, say("UNIT", `${why} Known here: ${list}`));
  }
  const units = rule.narrow?.(meant, context) ?? meant;
  const all = parsed.candidates.flatMap(({ low, high }) =>
    units.map((unit): Candidate => {
      const middle = rule.toCanonical((low + high) / 2, unit);
      return { low, high, form: parsed.form, unit, middle };
    }),
  );
  const possible = distinct(
    all.filter(({ low, high, unit }) => [low, high].every((v) => fits(v, unit, rule))),
  );
  const typed = { ...original, unit: parsed.unit ?? context.unit ?? null };
  const [first] = all;
  const [only, ...others] = possible;
  if (first === undefined) throw new TypeError(`Cannot read ${label}: the rule offers no unit`);
  const judged = (j: Judgement) => ({ message: say(j.kind, j.text), choices: j.choices ?? [] });
  if (only === undefined) {
    const rescue = parsed.checked ? null : rule.rescue?.(first, context);
    if (rescue != null) {
      const { message, choices } = judged(rescue);
      return rescue.verdict === "ask" ? asked(typed, message, choices) : refused(typed, message, choices);
    }
    return refused(typed, say("RANGE", outside(first, rule)), mirrored(first));
  }
  if (others.length > 0) {
    const words =
      rule.whichUnit?.(possible) ?? `could be ${possible.map((c) => inWords(c, rule)).join(" or ")}. Which?`;
    // Whoever picks a reading has looked: it must not lead to a second question.
    const unlikely = (c: Candidate) => rule.judge?.(c, context)?.verdict === "ask";
    const choices = possible.map((c) => ({
      label: inWords(c, rule),
      text: `${phrase(c)}${unlikely(c) ? " (checked)" : ""}`,
    }));
    return asked(typed, say("AMBIG", words), choices);
  }
  const value = amount(only, rule, context);
  const judgement = rule.judge?.(only, context) ?? null;
  if (judgement !== null && judgement.verdict !== "convert") {
    const { message, choices } = judged(judgement);
    if (judgement.verdict === "refuse") return refused(typed, message, choices);
    if (judgement.verdict === "flag" || parsed.checked) return kept("flag", value, typed, message);
    return asked(typed, message, choices);
  }
  const sameUnit =
    rule.plain.includes(only.unit) &&
    (typedUnit !== null || context.unit != null || rule.offered.length === 1);
  const asTyped = sameUnit && !parsed.rewritten && parsed.form === "exact" && value.censored === null;
  if (judgement === null && asTyped) return kept("accept", value, typed);
  const echo =
    judgement === null ? say("ECHO", `read as ${echoed(only, value, rule)}`) : judged(judgement).message;
  return kept("convert", value, typed, echo);
}

function unitsFor(spelling: string, rule: Pick<MeasureRule<MeasureContext>, "spellings">): readonly string[] {
  return Object.hasOwn(rule.spellings, spelling) ? (rule.spellings[spelling] ?? []) : [];
}

type Bounds = Pick<MeasureRule<MeasureContext>, "hard" | "toCanonical" | "unit">;

function fits(value: number, unit: string, { hard, toCanonical }: Bounds): boolean {
  const canonical = toCanonical(value, unit);
  return (
    Number.isFinite(canonical) &&
    canonical <= hard.max &&
    (hard.open ? canonical > hard.min : canonical >= hard.min)
  );
}

function distinct(candidates: readonly Candidate[]): Candidate[] {
  const near = (a: Candidate, b: Candidate) =>
    Math.abs(a.middle - b.middle) <= 1e-9 * Math.max(1, Math.abs(a.middle));
  return candidates.filter((c, i) => candidates.findIndex((other) => near(c, other)) === i);
}

function outside({ middle }: Candidate, { hard, unit }: Bounds): string {
  const most = `${hard.max.toLocaleString("en-GB")} ${unit}`.trim();
  const bounds = hard.open
    ? middle > hard.max
      ? `must be ${most} or less`
      : `must be more than ${hard.min} ${unit}`.trim()
    : `must be ${hard.min} to ${most}`;
  return middle < 0 && hard.min >= 0 ? `${bounds}. Did you mean ${figure(-middle)}?` : bounds;
}

function mirrored({ low, high, form, unit, middle }: Candidate): Choice[] {
  if (middle >= 0 || form !== "exact") return [];
  const positive = phrase({ low: -high, high: -low, form, unit });
  return [{ label: positive, text: positive }];
}

/** What to type for a candidate. */
export function phrase({ low, high, form, unit }: Omit<Candidate, "middle">): string {
  const sign = { exact: "", about: "about ", range: "", below: "<", above: ">" }[form];
  const number = form === "range" ? `${low}-${high}` : String(low);
  return `${sign}${number} ${unit}`.trim();
}

function inWords(candidate: Candidate, rule: Bounds): string {
  const typed = phrase(candidate);
  return candidate.unit === rule.unit ? typed : `${typed} (${figure(candidate.middle)} ${rule.unit})`;
}

function amount<C extends MeasureContext>(c: Candidate, rule: MeasureRule<C>, context: C): Amount {
  const ends = [c.low, c.high].map((value) => rule.toCanonical(value, c.unit));
  const low = Math.min(...ends);
  const high = Math.max(...ends);
  const { unit } = rule;
  const step = context.kitStep ?? null;
  // A kit that shows nothing has only shown that there is less than its smallest step.
  if (step !== null && step > 0 && c.form === "exact" && c.low === 0) {
    const limit = rule.toCanonical(step, c.unit);
    return { low: 0, central: limit / 2, high: limit, unit, censored: "below" };
  }
  if (c.form === "below")
    return { low: rule.hard.min, central: (rule.hard.min + high) / 2, high, unit, censored: "below" };
  if (c.form === "above") {
    const high3 = Math.min(3 * low, rule.hard.max);
    return { low, central: Math.min(1.5 * low, (low + high3) / 2), high: high3, unit, censored: "above" };
  }
  if (c.form === "about") {
    const spread = ABOUT * Math.abs(c.middle);
    return { low: c.middle - spread, central: c.middle, high: c.middle + spread, unit, censored: null };
  }
  const open = rule.openBy?.(c.unit) ?? 0;
  return { low: low - open, central: c.middle, high: high + open, unit, censored: null };
}

function echoed(c: Candidate, value: Amount, rule: Bounds): string {
  if (value.censored !== null) {
    const limit = value.censored === "below" ? value.high : value.low;
    return `${value.censored === "below" ? "less" : "more"} than ${figure(limit)} ${rule.unit}`.trim();
  }
  const converted =
    c.unit === rule.unit ? "" : `${phrase({ ...c, form: c.form === "about" ? "exact" : c.form })}, `;
  const central = `${converted}${figure(value.central)} ${rule.unit}`.trim();
  if (c.form === "about")
    return `${central}, give or take ${figure(value.high - value.central)} ${rule.unit}`.trim();
  return c.form === "range" ? `${central}, ${figure(value.low)} to ${figure(value.high)}` : central;
}
