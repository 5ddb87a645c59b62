/** The unit that something is typed in does not matter: of every sum, every example, every field, every unit on offer. */
import { expect, test } from "vitest";
import { isKept } from "../../contract/quantity/outcome.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import {
  fromCanonical,
  isUnitOf,
  QUANTITIES,
  type QuantityKey,
  toCanonical,
} from "../../engine/units/convert.ts";
import { askSum } from "./ask.ts";
import type { AmountField, Sum } from "./sum.ts";
import { SUMS } from "./table.ts";

const CONTEXT = { preferences: NO_PREFERENCES, today: "2026-11-27", tank: null };

/** The same amount in each other unit on offer that a table of exact factors turns it into. */
function otherwise(field: AmountField, text: string, unit: string | null): string[] {
  const read = field.read(text, { preferences: NO_PREFERENCES, label: field.label, unit });
  if (!isKept(read) || read.value.censored !== null) return [];
  const { low, high, unit: shown } = read.value;
  const key = (Object.keys(QUANTITIES) as QuantityKey[]).find((one) => isUnitOf(one, shown));
  if (key === undefined) return [];
  return field.units.flatMap((other) => {
    const [from, to] = [low, high].map((value) => converted(key, value, shown, other));
    if (other === shown || from == null || to == null) return [];
    return [from === to ? `${from} ${other}` : `${from}-${to} ${other}`];
  });
}

const converted = (key: QuantityKey, value: number, from: string, to: string): number | null =>
  isUnitOf(key, from) && isUnitOf(key, to) ? fromCanonical(key, toCanonical(key, value, from), to) : null;

const figuresOf = (sum: Sum, typed: Readonly<Record<string, string>>) => {
  const asked = askSum(sum, typed, CONTEXT);
  if (!asked.ok) throw new Error(asked.doubts.map(({ message }) => message.text).join("; "));
  return asked.answer.figures.map(({ id, spread }) => [id, spread.low, spread.central, spread.high] as const);
};

test.each(SUMS.map((sum) => [sum.id, sum] as const))("%s", (_, sum) => {
  let tried = 0;
  for (const example of sum.examples) {
    const plain = figuresOf(sum, example);
    for (const field of sum.fields) {
      const text = example[field.name];
      if (field.input !== "amount" || text === undefined) continue;
      for (const other of otherwise(field, text, example[`${field.name}.unit`] ?? null)) {
        const { [`${field.name}.unit`]: _unit, ...rest } = example;
        const found = figuresOf(sum, { ...rest, [field.name]: other });
        tried += 1;
        expect(found.map(([id]) => id)).toEqual(plain.map(([id]) => id));
        for (const [i, [id, ...values]] of found.entries()) {
          const [, ...before] = plain[i]!;
          for (const [j, value] of values.entries()) {
            const size = Math.max(1e-6, Math.abs(before[j]!));
            expect(Math.abs(value - before[j]!) / size, `${id}: ${text} as ${other}`).toBeLessThan(1e-6);
          }
        }
      }
    }
  }
  if (sum.fields.some((field) => field.input === "amount" && field.units.length > 1))
    expect(tried).toBeGreaterThan(0);
});
