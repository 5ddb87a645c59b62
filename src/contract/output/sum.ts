/**
 * What `grazewell sum --json` prints, and the API gives: the sums there are, or one worked out. A change that breaks a
 * reader gets a new number in `schema`.
 */
import { z } from "zod";
import { sentence } from "./sentence.ts";
import { workingFigure } from "./working.ts";

const taken = z
  .strictObject({ text: z.string(), how: z.string() })
  .nullable()
  .describe("what is taken where the field stays empty");

const field = z.strictObject({
  name: z.string(),
  label: z.string(),
  hint: z.string(),
  input: z.enum(["amount", "choice", "series", "date"]),
  needed: z.boolean(),
  empty: taken,
  example: z.string(),
  units: z.array(z.string()).describe("on offer beside the field; others are read too"),
  choices: z.array(z.strictObject({ text: z.string(), label: z.string() })),
});

const head = {
  id: z.string(),
  group: z.string(),
  name: z.string(),
  question: z.string(),
};

export const sumsOutput = z.strictObject({
  schema: z.literal("grazewell.sums/1"),
  engine: z.string(),
  sums: z.array(
    z.strictObject({
      ...head,
      fields: z.array(field),
      examples: z.array(z.record(z.string(), z.string())).describe("invented; each is answered"),
    }),
  ),
});

export const sumOutput = z.strictObject({
  schema: z.literal("grazewell.sum/1"),
  engine: z.string(),
  sum: z.strictObject(head),
  as_of: z.iso.date(),
  answered: z.boolean().describe("false: nothing can be said or nothing needs doing, see lead"),
  cautions: z.array(z.string()).describe("where it can hurt a person or an animal: read them first"),
  lead: sentence.describe("the answer, or why there is none"),
  field: z.string().nullable().describe("where there is no answer: the field that would change it"),
  rows: z.array(z.strictObject({ label: z.string(), value: sentence })),
  tables: z.array(
    z.strictObject({ title: z.string(), columns: z.array(z.string()), rows: z.array(z.array(sentence)) }),
  ),
  notes: z.array(z.string()),
  would_change: sentence,
  taken: z
    .array(z.strictObject({ field: z.string(), label: z.string(), text: z.string(), how: z.string() }))
    .describe("what was taken for fields that were left empty"),
  said: z.array(z.string()).describe("how something was read, what is unusual about it"),
  figures: z.array(workingFigure).describe("every number above with its working"),
  statement: z.string(),
});

export type SumsOutput = z.infer<typeof sumsOutput>;
export type SumOutput = z.infer<typeof sumOutput>;
