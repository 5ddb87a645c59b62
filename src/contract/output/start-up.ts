/** What `grazewell start-up --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { figureId, spreadSchema } from "./waves.ts";

const date = z.iso.date();
const of20 = z.int().min(0).max(20);

const test = z
  .strictObject({ on: date, mg_n_per_l: spreadSchema, readable: z.boolean() })
  .nullable()
  .describe("the latest of the last ten days");

export const startUpOutput = z.strictObject({
  schema: z.literal("grazewell.start-up/1"),
  engine: z.string(),
  tank: z.strictObject({ name: z.string(), as_of: date, age_days: z.number() }),
  stage: z.enum([
    ...["not_filled", "no_data", "waiting", "ammonia", "both", "nitrite", "clear", "proven", "past"],
  ] as const),
  says: z.string().describe("the stage in one sentence"),
  stocked: z.boolean().describe("something lives there: nothing is dosed"),
  tests: z.strictObject({ ammonia: test, nitrite: test }),
  next_test: z.strictObject({ on: date, what: z.enum(["look", "dose", "test"]) }).nullable(),
  end: z
    .strictObject({
      early: date.describe("1 of 20 versions of the tank are done by then"),
      middle: date,
      late: date.describe("19 of 20"),
      figure: figureId,
      by: z.array(z.strictObject({ on: date, of_20: of20, figure: figureId })),
    })
    .nullable()
    .describe("null: past it, or too few versions of this tank end in time"),
  versions: z
    .strictObject({ drawn: z.int(), left: z.int(), within_days: z.int(), taught: z.boolean() })
    .nullable(),
  runs: z
    .strictObject({
      days: z.array(date),
      ammonia: z.array(z.array(z.number())).describe("mg N/L at midnight, a row a run"),
      nitrite: z.array(z.array(z.number())),
      readable_ammonia: z.number(),
      readable_nitrite: z.number(),
      figures: z.strictObject({ ammonia: figureId, nitrite: figureId }),
    })
    .nullable()
    .describe("twenty runs"),
  by_rock: z
    .array(
      z.strictObject({
        rock: z.enum(["live", "mixed", "dry", "none"]),
        days: spreadSchema,
        this_tank: z.boolean(),
        figure: figureId,
      }),
    )
    .describe("days from filling, the same tank with other rock, before any test"),
  dose: z
    .strictObject({
      mg_n_per_l: z.number(),
      ammonium_chloride_g: spreadSchema,
      dry_food_g: spreadSchema.describe("dry food that holds as much nitrogen"),
      figures: z.strictObject({ dose: figureId, salt: figureId, food: figureId }),
    })
    .nullable()
    .describe("null where something lives there: nothing is dosed then"),
  statement: z.string(),
});
export type StartUpOutput = z.infer<typeof startUpOutput>;
