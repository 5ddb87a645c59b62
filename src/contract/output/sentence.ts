/** Sentences and numbers as data, wherever they are told: words, and numbers that are figures. */
import { z } from "zod";
import { figureId } from "./waves.ts";
import { workingFigure } from "./working.ts";

/** A number in words, and the figure that it is. */
export const told = z.strictObject({ text: z.string(), figure: figureId });
export const sentence = z.array(z.union([z.string(), told]));

/** Numbers of care that stand together. */
export const numbersPart = z.strictObject({
  title: z.string(),
  rows: z.array(z.strictObject({ label: z.string(), value: sentence })),
  tables: z.array(
    z.strictObject({ title: z.string(), columns: z.array(z.string()), rows: z.array(z.array(sentence)) }),
  ),
  notes: z.array(z.string()),
});

export const toldFigures = z
  .array(workingFigure)
  .describe("every number that is told, with its working, and those it was worked out from");

export const ofTank = z.strictObject({ name: z.string(), as_of: z.iso.date() });

export type SentenceOutput = z.infer<typeof sentence>;
export type NumbersPartOutput = z.infer<typeof numbersPart>;
