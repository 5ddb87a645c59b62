/** What `grazewell animals --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { figureId, spreadSchema } from "./waves.ts";

const figure = z.number();
const reason = z.strictObject({
  code: z.string(),
  text: z.string(),
  until: z.string().nullable().describe("what would lift it; null where nothing in this tank will"),
  figure: figureId.nullable().describe("of the number in it; null where it tells none"),
});

const fit = z.strictObject({
  status: z.enum(["lives_here", "in_plan", "fits", "not_yet", "never"]),
  heads_here: z.int(),
  planned: z.array(
    z.strictObject({
      wave: z.int(),
      from: z.iso.date(),
      to: z.iso.date(),
      count: z.int(),
      figure: figureId,
    }),
  ),
  reasons: z.array(reason).describe("all that stands against it, what lasts first"),
  binding: z
    .strictObject({ kind: z.string(), text: z.string(), figure: figureId.nullable() })
    .nullable()
    .describe("what keeps the plan from one more"),
  not_needed: z.string().nullable().describe("why it fits and is not in the plan"),
  alive_of_20: z.int().min(0).max(20).nullable().describe("runs with half or more alive after 90 days"),
  short_by_mg_c_per_day: figure.describe("food that those here or planned do not find; 0: enough"),
  figures: z
    .strictObject({
      heads_here: figureId.nullable(),
      alive: figureId.nullable(),
      short_by: figureId.nullable(),
    })
    .describe("null where there is nothing to tell"),
});

const animal = z.strictObject({
  id: z.string(),
  name: z.string(),
  also_sold_as: z.array(z.string()),
  scientific_name: z.string(),
  group: z.string(),
  role: z.enum(["crew", "crew_with_caution", "hitchhiker", "compatibility_only"]),
  keeper_level: z.enum(["first-tank", "experienced", "specialist"]),
  eats: z.record(z.string(), figure).describe("shelf -> share of the diet, 0 to 1"),
  eats_other_share: figure,
  eats_other: z.string().nullable(),
  intake_mg_c_per_day: spreadSchema,
  keeps_weight_on_mg_c_per_day: figure,
  without_food_days: spreadSchema,
  spacing_l_per_animal: spreadSchema,
  min_tank_l: figure,
  min_tank_age_days: figure,
  adult_size_mm: spreadSchema,
  lifespan_years: spreadSchema,
  eaten_by: z.array(z.strictObject({ id: z.string(), likelihood: z.enum(["likely", "possible"]) })),
  eats_animals: z.array(z.strictObject({ id: z.string(), likelihood: z.enum(["likely", "possible"]) })),
  group_min: z.int(),
  max_per_tank: z.int().nullable(),
  only_if: z.array(z.string()),
  cautions: z.array(z.string()),
  law_check: z.string().nullable(),
  notes: z.string(),
  basis: z.record(z.string(), z.string()).describe("fact -> how it is known"),
  sources: z.array(z.strictObject({ key: z.string(), title: z.string(), opened: z.string() })),
  figures: z
    .record(z.string(), figureId)
    .describe("fact -> its working: intake, break_even, without_food, spacing, min_tank, ..."),
  fit: fit.nullable().describe("null where no tank was named"),
});

export const animalsOutput = z.strictObject({
  schema: z.literal("grazewell.animals/1"),
  engine: z.string(),
  ration_mg_c: figure,
  tank: z.strictObject({ name: z.string(), as_of: z.iso.date() }).nullable(),
  animals: z.array(animal),
  statement: z.string(),
});

export type AnimalsOutput = z.infer<typeof animalsOutput>;
