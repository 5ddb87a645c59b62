/** The shapes of the files of facts/: animals, parameters, sources. Change a shape here and in docs/facts.md. */
import { z } from "zod";
import { anySpread, text } from "./fact.ts";

export { type AnimalFile, animalSchema } from "./animal-schema.ts";

const parameterSchema = z.strictObject({
  meaning: text,
  spread: anySpread,
  /** What was opened or reckoned with, in words. */
  from: text.optional(),
  confidence: z.enum(["high", "medium", "low"]).optional(),
  /** Supply row whose range a model symbol takes. */
  range: text.optional(),
  rivals: z
    .array(z.strictObject({ value: z.number(), source: text, note: text.optional() }))
    .min(1)
    .optional(),
  note: text.optional(),
});

/** A family: `feed.yaml` holds ids that begin with `feed.`, a file `model-*.yaml` symbols of the tank model. */
export const parameterFileSchema = z.record(z.string().regex(/^[a-zA-Z][\w.]*$/), parameterSchema);

const sourceSchema = z.strictObject({
  title: text.optional(),
  about: text,
  authors: text.optional(),
  year: z.number().int().min(1800).max(2100).optional(),
  where: text.optional(),
  doi: z.string().startsWith("10.").optional(),
  opened: z.enum(["whole", "abstract", "passage", "page", "source-code", "not-opened", "none"]),
  note: text.optional(),
});

export const sourceFileSchema = z.record(z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/), sourceSchema);

export type ParameterFile = z.infer<typeof parameterFileSchema>;
export type SourceFile = z.infer<typeof sourceFileSchema>;
