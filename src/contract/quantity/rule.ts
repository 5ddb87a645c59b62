/** What is particular to a measured quantity: its units and spellings, its bounds, and what is thought of a value. */
import type { Amount, Choice, MessageKind, Outcome } from "./outcome.ts";
import type { AmountForm } from "./parse.ts";
import type { Preferences } from "./preferences.ts";

export interface MeasureContext {
  readonly preferences: Preferences;
  /** The field's label where it is not the quantity's usual one. */
  readonly label?: string;
  /** Unit chosen beside the field or named by it; null or absent where nobody chose. */
  readonly unit?: string | null;
  /** Smallest step of the kit, in the unit the value is typed in. */
  readonly kitStep?: number | null;
}

/** One way to understand what was typed. */
export interface Candidate {
  readonly low: number;
  readonly high: number;
  readonly form: AmountForm;
  readonly unit: string;
  /** Middle value in the canonical unit. */
  readonly middle: number;
}

/** What a rule thinks of a value; `text` without label and typed value, which are put in front. */
export interface Judgement {
  readonly verdict: "flag" | "ask" | "refuse" | "convert";
  readonly kind: MessageKind;
  readonly text: string;
  readonly choices?: readonly Choice[];
}

export interface MeasureRule<C extends MeasureContext> {
  readonly label: string;
  /** Canonical unit, as shown. */
  readonly unit: string;
  readonly example: string;
  /** Spelling (see `spelled`) → units it can mean. */
  readonly spellings: Readonly<Record<string, readonly string[]>>;
  readonly toCanonical: (value: number, unit: string) => number;
  /** How far a value may lie from its conversion, where the unit leaves that open; in the canonical unit. */
  readonly openBy?: (unit: string) => number;
  /** Units stored as typed, without an echo. */
  readonly plain: readonly string[];
  /** Units on offer where none was typed or chosen. */
  readonly offered: readonly string[];
  /** Outside it nothing is stored. `open`: the lower bound itself is outside. */
  readonly hard: { readonly min: number; readonly max: number; readonly open?: boolean };
  /** Narrows units by what the keeper prefers. */
  readonly narrow?: (units: readonly string[], context: C) => readonly string[];
  /** Sentence that helps to choose a unit. */
  readonly whichUnit?: (candidates: readonly Candidate[]) => string;
  /** A value outside the hard bounds that has a likely other reading. */
  readonly rescue?: (candidate: Candidate, context: C) => Judgement | null;
  readonly judge?: (candidate: Candidate, context: C) => Judgement | null;
  /** Why a unit of that spelling is not one of this quantity. */
  readonly refuseUnit?: (spelling: string) => string | null;
  /** What to answer to words instead of a number. */
  readonly words?: (text: string, context: C) => Outcome<Amount> | null;
  readonly missing?: string;
}

/** A unit's spelling without what carries no meaning: case, spaces, dots, brackets, "as", "per". */
export function spelled(unit: string): string {
  return unit
    .toLowerCase()
    .replace(/[\u00b5\u03bc]/g, "u")
    .replace(/°|º|\bdegrees?\b|\bdeg\b/g, "")
    .replace(/\b(?:as|of)\b/g, "")
    .replace(/\bper\b/g, "/")
    .replace(/[\s._()[\]-]+/g, "");
}

/** Spellings of a quantity: the given ones, and each unit's own name. */
export function spellingsOf(
  units: readonly string[],
  more: Readonly<Record<string, readonly string[]>>,
): Readonly<Record<string, readonly string[]>> {
  const own = Object.fromEntries(units.map((unit) => [spelled(unit), [unit]]));
  const others = Object.entries(more).flatMap(([unit, list]) =>
    list.map((word) => [spelled(word), unit.split("|")] as const),
  );
  return { ...own, ...Object.fromEntries(others) };
}
