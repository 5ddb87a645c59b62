/**
 * A sum asked and answered, for page, command and interface alike: texts read, worked out, and what the equations can't
 * be held to told as a refusal in their own words.
 */
import type { Message } from "../../contract/quantity/outcome.ts";
import { OutOfRange } from "../../engine/units/range.ts";
import { readSum, type SumContext, type SumDoubt, type SumText, type Taken } from "./given.ts";
import type { AmountField, FromTank, Sum, SumAnswer, SumField, SumRefusal, SumTank } from "./sum.ts";

export type AskedSum =
  | {
      readonly ok: true;
      readonly answer: SumAnswer | SumRefusal;
      readonly taken: readonly Taken[];
      /** How something was read, what is unusual about it. */
      readonly said: readonly Message[];
    }
  | { readonly ok: false; readonly doubts: readonly SumDoubt[] };

export function askSum(sum: Sum, typed: SumText, context: SumContext): AskedSum {
  const read = readSum(sum, withoutKnown(sum, typed, context.tank), context);
  if (!read.ok) return read;
  const { given, taken, said } = read;
  return { ok: true, answer: worked(sum, () => sum.work(given, context.tank)), taken, said };
}

/** Beyond what an equation was made for there is no answer, whoever typed it. */
function worked(sum: Sum, work: () => SumAnswer | SumRefusal): SumAnswer | SumRefusal {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    const { name } = error.range;
    const field = sum.fields.find((one) => name.includes(one.name.replaceAll("_", " ")))?.name ?? null;
    return { kind: "none", because: [`${error.message}.`], field, cautions: [], figures: [] };
  }
}

/** What the tank knows of a field; null without a tank. */
export const knownOf = (field: SumField, tank: SumTank | null): FromTank | null =>
  tank === null ? null : (field.fromTank?.(tank) ?? null);

/** A form is filled with what the tank knows: where that came back as it went out, it is the tank's word, not typed. */
function withoutKnown(sum: Sum, typed: SumText, tank: SumTank | null): SumText {
  const left: Record<string, string> = { ...typed };
  for (const field of sum.fields) {
    const known = knownOf(field, tank);
    if (known === null) continue;
    const text = (typed[field.name] ?? "").trim();
    const unit = (typed[`${field.name}.unit`] ?? "").trim();
    if (text !== known.text && `${text} ${unit}` !== known.text) continue;
    delete left[field.name];
    delete left[`${field.name}.unit`];
  }
  return left;
}

/** "100 L" as it stands in a form with units beside the field: number and unit; the unit empty where none is offered. */
export function splitUnit(
  field: AmountField,
  text: string,
): { readonly text: string; readonly unit: string } {
  const unit = field.units.length < 2 ? undefined : field.units.find((one) => text.endsWith(` ${one}`));
  return unit === undefined ? { text, unit: "" } : { text: text.slice(0, -unit.length - 1), unit };
}
