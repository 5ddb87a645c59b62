/** Readings over the API: a number in a unit, or text as a keeper would type it. */
import { z } from "zod";
import { MEASURED, readingBody } from "../daybook/reading.ts";
import { id, message, versioned } from "./parts.ts";
import { MOST_LISTED } from "./sizes.ts";

export const newReading = z.strictObject({
  quantity: z.enum(MEASURED),
  value: z.number().optional().describe("in `unit`; give this or `text`"),
  text: z.string().max(200).optional().describe('as typed, such as "<2" or "5 NO3-N"; give this or `value`'),
  unit: z.string().max(40).optional().describe("where left out: the unit that the quantity's name ends in"),
  kit_step: z
    .union([z.number(), z.string().max(60)])
    .optional()
    .describe("smallest step of the kit, in the unit of the reading"),
  observed: z
    .string()
    .max(60)
    .optional()
    .describe("a date, or an instant with its offset; today where left out"),
  note: z.string().max(10_000).optional(),
});
export type NewReading = z.infer<typeof newReading>;

export const readingView = z.strictObject({
  id,
  tank: id,
  on: z.iso.date().describe("the day it belongs to"),
  ...versioned,
  ...readingBody.shape,
});
export type ReadingView = z.infer<typeof readingView>;

export const readingSaved = z.strictObject({
  reading: readingView,
  said: z.array(message).describe("how it was read, and what is unusual or dangerous"),
});

export const readingList = z.strictObject({
  readings: z.array(readingView).describe("the latest first"),
  next: z
    .strictObject({ after_on: z.iso.date(), after_id: id })
    .nullable()
    .describe("to ask for the earlier ones; null where there are none"),
});

const day = z.iso.date();
const digits = z.string().regex(/^\d{1,6}$/);

export const readingQuery = z.strictObject({
  from: day.optional(),
  to: day.optional(),
  limit: digits.transform(Number).pipe(z.int().min(1).max(MOST_LISTED)).optional(),
  after_on: day.optional(),
  after_id: id.optional(),
  removed: z.enum(["yes", "no"]).optional().describe("also those taken away"),
});

export const readingHistory = z.strictObject({ versions: z.array(readingView) });
