/** What `grazewell larder --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { spreadSchema } from "./waves.ts";

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
      wanted_mg_c_per_day: z.number().describe("what the animals there need of it"),
    }),
  ),
  total_mg_c_per_day: spreadSchema,
  mouths: z.array(
    z.strictObject({
      id: z.string(),
      heads: z.int(),
      need_mg_c_per_day: z.number(),
      most_mg_c_per_day: z.number(),
      need_rations_per_day: z.number(),
      by_shelf_mg_c_per_day: z.record(z.string(), z.number()),
    }),
  ),
  what_if: z
    .strictObject({
      changes: z.array(z.string()),
      today_central_mg_c_per_day: z
        .record(z.string(), z.number())
        .describe("shelf -> supply without the changes"),
    })
    .nullable(),
  statement: z.string(),
});

export type LarderOutput = z.infer<typeof larderOutput>;
