/**
 * The building blocks of every fact: a value or a spread, with its unit, its evidence and its sources.
 * A fact is one line of YAML; the unit of each field is fixed, so a figure typed in another unit fails.
 */
import { z } from "zod";
import type { Evidence } from "../../src/engine/types/parameter.ts";

export const EVIDENCE = [
  "read",
  "computed",
  "memory",
  "judgement",
  "backfitted",
] as const satisfies Evidence[];

const provenance = {
  evidence: z.enum(EVIDENCE),
  source: z.array(z.string().min(1)).min(1),
  note: z.string().min(1).optional(),
};

export type Provenance = { evidence: Evidence; source: string[]; note?: string | undefined };

const ordered = (spread: { low: number; central: number; high: number }) =>
  spread.low <= spread.central && spread.central <= spread.high;

/** Low, central and high in `unit`: a 90 % band around the median. */
export function spread<const Unit extends string>(unit: Unit) {
  return z
    .strictObject({
      low: z.number(),
      central: z.number(),
      high: z.number(),
      unit: z.literal(unit),
      ...provenance,
    })
    .refine(ordered, {
      error: "low, central and high are out of order",
      params: { fix: "Write the smallest first." },
    });
}

/** A spread whose unit is free but must be there: parameters. */
export const anySpread = z
  .strictObject({
    low: z.number(),
    central: z.number(),
    high: z.number(),
    unit: z.string().min(1),
    ...provenance,
  })
  .refine(ordered, {
    error: "low, central and high are out of order",
    params: { fix: "Write the smallest first." },
  });

/** One number in `unit`. */
export function measure<const Unit extends string, Value extends z.ZodType>(unit: Unit, value: Value) {
  return z.strictObject({ value, unit: z.literal(unit), ...provenance });
}

/** A fact that is a word, a yes or no, or a list: no unit. */
export function said<Value extends z.ZodType>(value: Value) {
  return z.strictObject({ value, ...provenance });
}

/** A fact that holds by being there, such as a risk. */
export const flagged = z.strictObject(provenance);

/** A paragraph. */
export const paragraph = z.strictObject({ text: z.string().min(1), ...provenance });

/** Facts that share a unit, one a line, under the same heading. */
export function measures<const Key extends string, const Unit extends string, Value extends z.ZodType>(
  keys: readonly Key[],
  unit: Unit,
  value: Value,
) {
  const fact = measure(unit, value);
  return z.strictObject(Object.fromEntries(keys.map((key) => [key, fact])) as Record<Key, typeof fact>);
}

export const text = z.string().min(1);
export const positive = z.number().positive();
export const nonNegative = z.number().nonnegative();
export const share = z.number().min(0).max(1);
