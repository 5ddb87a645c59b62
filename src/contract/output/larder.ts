/** What `grazewell larder --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { figureId, spreadSchema } from "./waves.ts";

export const larderOutput = z.strictObject({
  schema: z.literal("grazewell.larder/1"),
  engine: z.string(),
  seed: z.int(),
  members: z.int(),
  tank: z.strictObject({ name: z.string(), as_of: z.iso.date() }),
  ration_mg_c: z.number().describe("carbon in one ration"),
  shelves: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      supply_mg_c_per_day: spreadSchema.describe("90 % band and median"),
      pessimistic_mg_c_per_day: z.number().describe("what 15 of 20 runs reach"),
      supply_rations_per_day: z.number(),
      runs_mg_c_per_day: z
        .array(z.number())
        .length(20)
        .describe("supply as twenty runs: its quantiles of 2.5, 7.5 ... 97.5 %, the least first"),
      wanted_mg_c_per_day: z.number().describe("what the animals there need of it"),
      balance_mg_c_per_day: spreadSchema.describe("supply less what is wanted"),
      figures: z.strictObject({
        supply: figureId,
        pessimistic: figureId,
        wanted: figureId,
        balance: figureId,
      }),
    }),
  ),
  total_mg_c_per_day: spreadSchema,
  total_figure: figureId,
  mouths: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      heads: z.int(),
      need_mg_c_per_day: z.number(),
      most_mg_c_per_day: z.number(),
      need_rations_per_day: z.number(),
      by_shelf_mg_c_per_day: z.record(z.string(), z.number()),
      figures: z.strictObject({
        heads: figureId,
        need: figureId,
        most: figureId,
        by_shelf: z.record(z.string(), figureId).describe("shelves that it eats from"),
      }),
    }),
  ),
  what_if: z
    .strictObject({
      changes: z.array(z.string()),
      today_central_mg_c_per_day: z
        .record(z.string(), z.number())
        .describe("shelf -> supply without the changes"),
      today_figures: z.record(z.string(), figureId).describe("shelf -> figure of that"),
    })
    .nullable(),
  statement: z.string(),
});

export type LarderOutput = z.infer<typeof larderOutput>;
