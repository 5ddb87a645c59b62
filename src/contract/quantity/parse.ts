/**
 * The grammar of an amount: `about 200 L`, `180-220`, `<2`, `8?`, `25 ppb P`, `53 psu (checked)`.
 * Knows numbers and their wrapping, not units: what is left over is handed on as the unit's text.
 */
import { asciiDigits, NUMBER, readNumber } from "./number.ts";

export type AmountForm = "exact" | "about" | "range" | "below" | "above";

export interface ParsedAmount {
  readonly form: AmountForm;
  /** Every number this can be: one, or two where comma or point is open. A range has both its ends. */
  readonly candidates: readonly { readonly low: number; readonly high: number }[];
  /** True where digits, sign or separator had to be read as something else than plain ASCII. */
  readonly rewritten: boolean;
  /** The unit as typed, null where none was. */
  readonly unit: string | null;
  /** The keeper looked again and means it: an unlikely value is kept, and flagged. */
  readonly checked: boolean;
}

const QUALIFIERS: readonly (readonly [RegExp, AmountForm])[] = [
  [/^(?:about|around|approximately|approx\.?|roughly|circa|ca\.?|some|nearly|~|≈)\s*/i, "about"],
  [/^(?:less than|fewer than|no more than|up to|under|below|<=|≤|<)\s*/i, "below"],
  [/^(?:more than|at least|over|above|>=|≥|>)\s*/i, "above"],
];

const LONGEST = 200;
const RANGE = new RegExp(`^(${NUMBER})\\s*(?:-|to|\\.\\.\\.?|…)\\s*(${NUMBER})`);
const PLUS_MINUS = new RegExp(`^(${NUMBER})\\s*(?:±|\\+/?-)\\s*(${NUMBER})`);
const SINGLE = new RegExp(`^${NUMBER}`);
const CHECKED = /\s*\(checked\)$/i;

/** Spaces, signs, digits and compatibility forms in one spelling; what was typed is kept elsewhere. */
export function tidy(text: string): string {
  return asciiDigits(text.normalize("NFKC"))
    .replace(/[\u2212\u2010-\u2015]/g, "-")
    .replace(/[\u2019\u066c]/g, "'")
    .replace(/\u066b/g, ".")
    .replace(/\s+/g, " ")
    .trim();
}

export function parseAmount(text: string, decimal: "." | ","): ParsedAmount | null {
  if (text.length > LONGEST) return null;
  const tidied = tidy(text);
  const checked = CHECKED.test(tidied);
  let rest = tidied.replace(CHECKED, "");
  let form: AmountForm = "exact";
  for (const [pattern, named] of QUALIFIERS) {
    if (form === "exact" && pattern.test(rest)) {
      rest = rest.replace(pattern, "");
      form = named;
    }
  }
  const lower = rest.toLowerCase();
  const open = form === "exact" || form === "about";
  const around = open ? PLUS_MINUS.exec(lower) : null;
  const range = around ?? (open ? RANGE.exec(lower) : null);
  const whole = (range ?? SINGLE.exec(lower))?.[0];
  if (whole === undefined) return null;
  const tokens = range === null ? [whole] : [range[1] ?? "", range[2] ?? ""];
  const numbers = tokens.map((token) => values(token, decimal));
  if (numbers.some((read) => read.values.length === 0)) return null;
  let tail = rest.slice(whole.length).trim();
  if (tail.startsWith("?") && form === "exact") {
    form = "about";
    tail = tail.slice(1).trim();
  }
  // A digit straight after the number is another number, not a unit: "12 34", "1/2".
  if (/^[\d.,/+-]/.test(tail)) return null;
  const candidates = pair(
    numbers.map((read) => read.values),
    around === null ? "ends" : "plus or minus",
  );
  if (candidates.length === 0) return null;
  return {
    form: range === null ? form : "range",
    candidates,
    rewritten: numbers.some((read) => read.rewritten) || asciiDigits(text) !== text,
    unit: tail === "" ? null : tail,
    checked,
  };
}

function values(token: string, decimal: "." | ","): { values: readonly number[]; rewritten: boolean } {
  const read = readNumber(token, decimal);
  if (read.kind === "none") return { values: [], rewritten: false };
  return read.kind === "one"
    ? { values: [read.value], rewritten: read.rewritten }
    : { values: read.values, rewritten: true };
}

function pair(
  [first = [], second]: readonly (readonly number[])[],
  meaning: "ends" | "plus or minus",
): { low: number; high: number }[] {
  if (second === undefined) return first.map((value) => ({ low: value, high: value }));
  // Both figures are written the same way; a pair that falls is no range.
  return Array.from({ length: Math.max(first.length, second.length) }, (_, i) => {
    const a = first[Math.min(i, first.length - 1)] ?? 0;
    const b = second[Math.min(i, second.length - 1)] ?? 0;
    return meaning === "ends" ? { low: a, high: b } : { low: a - b, high: a + b };
  }).filter(({ low, high }) => low <= high);
}
