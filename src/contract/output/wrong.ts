/** What `grazewell wrong --json` prints: all lists, or one. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { numbersPart, ofTank, toldFigures } from "./sentence.ts";

const list = z.strictObject({
  id: z.string(),
  about: z.enum(["people", "house", "animals", "water", "equipment"]),
  see: z.string().describe("what is seen"),
  lines: z
    .array(z.string())
    .min(1)
    .max(7)
    .describe("in this order; the last two: when to stop, whom to call"),
  has_numbers: z.boolean().describe("numbers of a tank can stand behind it"),
});

const around = {
  before: z.string().describe("goes before every list"),
  afterwards: z.string().describe("once it is over"),
};

export const wrongOutput = z.strictObject({
  schema: z.literal("grazewell.wrong/1"),
  engine: z.string(),
  ...around,
  lists: z.array(list).describe("people first"),
});

export const wrongListOutput = z.strictObject({
  schema: z.literal("grazewell.wrong_list/1"),
  engine: z.string(),
  ...around,
  list,
  tank: ofTank.nullable().describe("null: asked of no tank"),
  numbers: z
    .array(numbersPart)
    .nullable()
    .describe("of that tank; empty where nothing of it bears on the list"),
  figures: toldFigures,
  statement: z.string(),
});

export type WrongOutput = z.infer<typeof wrongOutput>;
export type WrongListOutput = z.infer<typeof wrongListOutput>;
