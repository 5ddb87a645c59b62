/**
 * What a sum is: one question about water or care, the few values it is asked with, and an answer whose every number is
 * a figure with its working. One shape for all of them, so that page, command and interface are written once
 * (table: `table.ts`; texts to values: `given.ts`). A sum is pure: no clock, no chance, no store.
 */

import type { Amount, Outcome } from "../../contract/quantity/outcome.ts";
import type { MeasureContext } from "../../contract/quantity/rule.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Sentence } from "../sentence.ts";

/** In this order on the page of sums. */
export const SUM_GROUPS = {
  chemistry: "Chemistry of the water",
  dosing: "Dosing",
  changes: "Water changes and salt",
  setting_up: "Setting up",
  arrivals: "Arrivals",
  feeding: "Feeding",
} as const;
export type SumGroup = keyof typeof SUM_GROUPS;

/** The tank a sum is asked for: what fields are filled from. Null where somebody only wants to reckon. */
export interface SumTank {
  readonly facts: TankFacts;
  readonly record: TankRecord;
  /** ISO date. */
  readonly today: string;
}

/** A text for a field, and in a few words where it comes from: "read on 3 Nov", "question 1". */
export interface FromTank {
  readonly text: string;
  readonly how: string;
}

interface FieldBase {
  /** snake_case, without unit: the flag is `--two-words`, the query `two_words`. */
  readonly name: string;
  readonly label: string;
  /** One line under the label: which instrument, which scale, where to look. Empty where the label says all. */
  readonly hint: string;
  /** Absent or null: nothing is taken from the tank. */
  readonly fromTank?: (tank: SumTank) => FromTank | null;
}

/** A number with its unit, read by the contract's reader of that quantity. */
export interface AmountField extends FieldBase {
  readonly input: "amount";
  /** `optional`: may stay empty. A text: what is taken where it stays empty, and said in the answer. */
  readonly empty: "needed" | "optional" | FromTank;
  readonly read: (text: string, context: MeasureContext) => Outcome<Amount>;
  /** What one might type; run by the tests. */
  readonly example: string;
  /** Units on offer beside the field, canonical first; empty for a plain number. */
  readonly units: readonly string[];
}

export interface ChoiceField extends FieldBase {
  readonly input: "choice";
  readonly choices: readonly { readonly text: string; readonly label: string }[];
  /** The one taken where none is chosen, said in the answer; null: one must be chosen. */
  readonly usual: string | null;
}

/** Readings over days, one a line: `2026-11-01 8.2 dKH`. */
export interface SeriesField extends FieldBase {
  readonly input: "series";
  readonly empty: "needed" | "optional";
  readonly read: AmountField["read"];
  readonly example: string;
}

export interface DateField extends FieldBase {
  readonly input: "date";
  readonly empty: "needed" | "optional";
  readonly example: string;
  /** What a day after today means: it is planned, or it is refused where something has been seen or measured. */
  readonly future: "planned" | "refuse";
}

export type SumField = AmountField | ChoiceField | SeriesField | DateField;

/** A value of a series. */
export interface Dated {
  /** ISO date. */
  readonly on: string;
  readonly value: Spread;
}

/** An amount that was typed, or taken where the field stayed empty. */
export interface GivenAmount extends Amount {
  /** Absent where it was typed. `known`: from the tank; else what is usually taken. */
  readonly taken?: { readonly how: string; readonly known: boolean };
}

/** What was typed, read. Asking for a name that is no field of the sum throws: that is the sum's own slip. */
export interface Given {
  /** A needed amount, or one with something taken where empty. */
  readonly amount: (name: string) => GivenAmount;
  readonly maybe: (name: string) => GivenAmount | null;
  readonly choice: (name: string) => string;
  readonly series: (name: string) => readonly Dated[];
  readonly date: (name: string) => string | null;
}

/** One line of an answer: a number that can be asked how it came about. */
export interface SumRow {
  readonly label: string;
  /** Value with unit and band as a keeper reads it, the number linked to its figure. */
  readonly value: Sentence;
}

export interface SumTable {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Sentence[])[];
}

export interface SumAnswer {
  readonly kind: "answer";
  /** The answer in one sentence of at most 20 words, its numbers linked. */
  readonly lead: Sentence;
  readonly rows: readonly SumRow[];
  /** Steps by day, series, comparisons. */
  readonly tables: readonly SumTable[];
  /** Where it can hurt a person or an animal: plain words, first. */
  readonly cautions: readonly string[];
  /** Limits of the arithmetic, what was taken for granted. */
  readonly notes: readonly string[];
  readonly wouldChange: Sentence;
  /** Every figure that a sentence above links to: ids `sum.<sum>.<name>` (figureId.sum). */
  readonly figures: readonly Figure[];
}

/** Nothing can be said, or nothing needs doing: a value, not an error. */
export interface SumRefusal {
  readonly kind: "none";
  readonly because: Sentence;
  /** Field that would change it; null where none does. */
  readonly field: string | null;
  readonly cautions: readonly string[];
  readonly figures: readonly Figure[];
}

export interface Sum {
  /** In addresses and commands: `carbonate`, `water-change`. */
  readonly id: string;
  readonly group: SumGroup;
  readonly name: string;
  /** What it answers, as a keeper would ask it. */
  readonly question: string;
  readonly fields: readonly SumField[];
  /** Invented: each is run by the tests, the first stands in the command's help. */
  readonly examples: readonly Readonly<Record<string, string>>[];
  readonly work: (given: Given, tank: SumTank | null) => SumAnswer | SumRefusal;
}
