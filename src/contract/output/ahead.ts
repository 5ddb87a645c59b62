/** What `grazewell ahead --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { figureId, spreadSchema } from "./waves.ts";

const figure = z.number();
const date = z.iso.date();
const of20 = z.int().min(0).max(20).describe("runs of 20");
const perWeek = z.array(figure);
const perWeekOrNone = z.array(figure.nullable()).describe("null where too few runs have any");

const quantity = z.strictObject({
  id: z.string(),
  label: z.string(),
  unit: z.string(),
  q05: perWeek,
  q25: perWeek,
  q50: perWeek,
  q75: perWeek,
  q95: perWeek,
  runs: z
    .array(perWeek)
    .describe(
      "twenty runs of the ensemble, picked so that counts of them agree with its bands; a value a week",
    ),
  figure: figureId.describe("its working has the band of every week"),
});

const kind = z.strictObject({
  id: z.string().describe("key of the catalogue"),
  name: z.string(),
  heads: z.int().describe("once all have come and gone that the keeper adds or takes out"),
  asked_on: date.describe("90 days after the last arrival, or the end of the run"),
  alive_of_20: of20.describe("at least half of the heads alive on that day"),
  aged_of_20: of20.describe("the same if age alone took any"),
  starves_of_20: of20.describe("lost beyond those that age takes"),
  condition: spreadSchema.nullable().describe("reserve of the living on that day, 0 to 1"),
  heads_alive: z.strictObject({ q05: perWeek, q25: perWeek, q50: perWeek, q75: perWeek, q95: perWeek }),
  heads_alive_runs: z.array(perWeek),
  condition_by_week: z.strictObject({ q05: perWeekOrNone, q50: perWeekOrNone, q95: perWeekOrNone }),
  figures: z.strictObject({
    heads: figureId,
    alive: figureId,
    aged: figureId,
    starves: figureId,
    condition: figureId.nullable(),
  }),
});

const chance = z.strictObject({
  id: z.string(),
  quantity: z.string(),
  limit: figure,
  unit: z.string(),
  parameter: z.string().nullable().describe("id of the supply table; null: judgement of this program"),
  why: z.string().describe("what the limit is"),
  of_20: of20.describe("above the limit on some day to come"),
  already_of_20: of20.describe("above it on the day of the plan"),
  first_on: z
    .strictObject({ early: date, middle: date, late: date })
    .nullable()
    .describe("over the runs that cross it"),
  word: z.enum(["rarely", "seldom", "about even", "usually", "nearly always"]),
  missing: z
    .string()
    .nullable()
    .describe("what it would take to make this the chance of this tank; null: enough is known"),
  figures: z.strictObject({ chance: figureId, limit: figureId }),
});

const outlook = z.strictObject({
  quantities: z.array(quantity),
  dawn_oxygen_mg_per_l: z
    .strictObject({ q05: perWeekOrNone, q50: perWeekOrNone, q95: perWeekOrNone })
    .describe("a diagnostic: nothing in the runs depends on it"),
  dawn_oxygen_figure: figureId.nullable().describe("null where too few runs have any"),
  kinds: z.array(kind),
  chances: z.array(chance),
});

export const aheadOutput = z.strictObject({
  schema: z.literal("grazewell.ahead/1"),
  engine: z.string(),
  seed: z.int(),
  members: z.int(),
  days: z.int(),
  tank: z.strictObject({ name: z.string(), as_of: date, assumed: z.array(z.string()) }),
  with_plan: z.boolean().describe("whether the waves of the plan arrive in the runs"),
  weeks: z.array(date).describe("the day of each weekly value"),
  as_it_is: outlook,
  what_if: z.strictObject({ changes: z.array(z.string()), outlook }).nullable(),
  warnings: z.array(z.string()).describe("what the runs do not hold and a keeper must know"),
  would_sharpen: z.array(z.strictObject({ fact: z.string(), label: z.string(), ask: z.string() })),
  statement: z.string(),
});

export type AheadOutput = z.infer<typeof aheadOutput>;
