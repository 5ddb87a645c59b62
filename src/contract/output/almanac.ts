/** What `grazewell almanac --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";

const date = z.iso.date();

/** One dated duty. */
export const careDate = z.strictObject({
  id: z.string().describe("the same while it is the same duty"),
  kind: z.string(),
  on: date.describe("due, or first due; what is overdue is due today"),
  at: z.string().nullable().describe("HH:MM in the tank's zone"),
  every_days: z.int().nullable(),
  until: date.nullable(),
  only_if: z.string().nullable().describe("to be looked at before anything is done"),
  do: z.string(),
  why: z.array(z.string()),
  by_when: z.string(),
  would_change: z.string(),
  log_as: z
    .strictObject({ kind: z.string(), fields: z.record(z.string(), z.string()) })
    .nullable()
    .describe("the entry of the daybook that says it is done"),
});

export const almanacOutput = z.strictObject({
  schema: z.literal("grazewell.almanac/1"),
  engine: z.string(),
  tank: z.strictObject({ name: z.string(), as_of: date, zone: z.string().nullable() }),
  bench_first: z.boolean().describe("something is dangerous or wrong now and goes before all dated care"),
  dates: z.array(careDate).describe("the earliest first"),
  undated: z.array(z.strictObject({ id: z.string(), what: z.string(), why: z.string() })),
  statement: z.string(),
});
export type AlmanacOutput = z.infer<typeof almanacOutput>;
export type CareDateOutput = z.infer<typeof careDate>;
