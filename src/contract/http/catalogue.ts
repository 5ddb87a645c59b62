/** The facts that stand behind every answer, over the API. */
import { z } from "zod";
import { spreadSchema } from "../output/waves.ts";

export const parameterView = z.strictObject({
  id: z.string(),
  meaning: z.string(),
  unit: z.string(),
  value: spreadSchema,
  evidence: z.string(),
  sources: z.array(z.string()).describe("keys of sources"),
  note: z.string().nullable(),
});
export const parameterList = z.strictObject({ parameters: z.array(parameterView) });

export const sourceView = z.strictObject({
  key: z.string(),
  title: z.string().nullable(),
  about: z.string(),
  authors: z.string().nullable(),
  year: z.number().nullable(),
  where: z.string().nullable(),
  doi: z.string().nullable(),
  opened: z.string().describe("how much of it was seen"),
  note: z.string().nullable(),
});
export const sourceList = z.strictObject({ sources: z.array(sourceView) });

export const about = z.strictObject({
  program: z.literal("grazewell"),
  engine: z.string(),
  openapi: z.string().describe("address of this API's description"),
});
