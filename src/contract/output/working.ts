/** What `grazewell working --json` prints: one figure, or the list of all that can be asked. */
import { z } from "zod";
import { spreadSchema } from "./waves.ts";

const source = z.strictObject({ key: z.string(), title: z.string(), opened: z.string() });

/** A figure down to its sources. */
export const workingFigure = z.strictObject({
  id: z.string(),
  label: z.string(),
  value: spreadSchema,
  unit: z.string(),
  formula: z.string(),
  formula_at: z.string().describe("heading in docs/model"),
  inputs: z.array(
    z.strictObject({
      label: z.string(),
      value: z.string(),
      origin: z.enum(["stated", "derived", "assumed", "figure"]),
      figure: z.string().nullable(),
    }),
  ),
  parameters: z.array(
    z.strictObject({
      id: z.string(),
      meaning: z.string(),
      value: spreadSchema,
      unit: z.string(),
      evidence: z.string(),
      note: z.string().nullable(),
      sources: z.array(source),
    }),
  ),
  animals: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      basis: z.record(z.string(), z.string()),
      sources: z.array(source),
    }),
  ),
  references: z
    .array(z.string())
    .describe("published works behind the formula, beside those of parameters and animals"),
  confidence: z.string(),
  would_change: z.array(z.string()),
});

export const workingOutput = z.strictObject({
  schema: z.literal("grazewell.working/1"),
  engine: z.string(),
  figure: workingFigure.nullable(),
  figures: z.array(z.strictObject({ id: z.string(), label: z.string() })),
});

export type WorkingOutput = z.infer<typeof workingOutput>;
