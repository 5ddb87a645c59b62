/** What `grazewell trends --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { figureId, spreadSchema } from "./waves.ts";

const figure = z.number();
const date = z.iso.date();
const of20 = z.int().min(0).max(20).describe("of 20 versions of the line");

/** A sentence: words, and numbers that are figures. */
const sentenceSchema = z.array(z.union([z.string(), z.strictObject({ text: z.string(), figure: figureId })]));

const mark = z.strictObject({
  on: date,
  to: date.describe("the same day, or the last of a bin that is drawn as one"),
  low: figure.describe("what the test could tell: the reading less half a step; of a bin its lowest reading"),
  value: figure.describe("of a bin its median"),
  high: figure.nullable().describe("null: above what the kit can tell"),
  censored: z.enum(["below", "above"]).nullable(),
  what: z.enum(["reading", "bin", "outlier", "danger"]),
  readings: z.int().describe("how many it stands for"),
});

const limit = z.strictObject({
  side: z.enum(["above", "below"]),
  value: figure,
  why: z.string(),
  parameter: z
    .string()
    .nullable()
    .describe("id of the supply table; null: bounds of this program's own reader"),
  of_20: of20.describe("beyond it within the days looked ahead, if it goes on as in the window"),
  already_of_20: of20.describe("the line is beyond it today"),
  within_days: z.int(),
  first_on: z.strictObject({ early: date, middle: date, late: date }).nullable(),
  word: z.string(),
  figures: z.strictObject({ limit: figureId, chance: figureId }),
});

const change = z.strictObject({
  on: date,
  shape: z.enum(["step", "bend"]).describe("bend: the slope changed"),
  by: spreadSchema.describe("step: in the unit; bend: in the unit a week"),
  happened: z.array(z.string()).describe("what the daybook has within three days of it; empty where nothing"),
  asked: z
    .int()
    .describe("days and shapes that were asked about; all together are wrong at most 1 time in 20"),
  figure: figureId,
});

const quantity = z.strictObject({
  id: z.string(),
  label: z.string(),
  unit: z.string(),
  readings: z.int(),
  days: z.int().describe("days with readings"),
  first_on: date,
  latest: z.strictObject({
    on: date,
    age_days: z.int(),
    value: figure,
    censored: z.enum(["below", "above"]).nullable(),
    danger: z.boolean(),
  }),
  danger: z
    .strictObject({ on: date, value: figure, stands: z.boolean(), entries: z.array(z.string()) })
    .nullable()
    .describe(
      "the latest dangerous reading of two weeks; it stands until a later day's reading says otherwise",
    ),
  way: z.enum(["rising", "falling", "level", "cannot_tell", "not_enough"]),
  window: z.strictObject({
    from: date,
    to: date,
    days: z.int(),
    why: z
      .enum(["recent", "eight", "change", "turn"])
      .describe("90 days; back to the eighth; since a change; since a turn"),
  }),
  per_week: spreadSchema.nullable().describe("90 % band and median"),
  rising_of_20: of20.nullable(),
  lately: z
    .strictObject({ way: z.enum(["rising", "falling"]), readings: z.int().min(4) })
    .nullable()
    .describe("the last readings where four or more go one way, each beyond the one before"),
  enough: z
    .strictObject({ readings: z.int(), not_before: date })
    .nullable()
    .describe("what would be enough: so many more, the last not before that day"),
  today: spreadSchema.nullable().describe("the line today; null where there is none or it ended weeks ago"),
  usual: z
    .strictObject({
      ...spreadSchema.shape,
      days: z.int(),
      latest: z.enum(["above", "below", "within"]),
      figure: figureId,
    })
    .nullable()
    .describe("median, and what four of five days lie between; from eight days with readings on"),
  limits: z.array(limit),
  changes: z.array(change),
  turn: z
    .strictObject({
      shape: z.enum(["peak", "trough"]).describe("peak: it rose until that day and fell after"),
      on: date.describe("about"),
      settled_on: date.nullable().describe("from then on its readings can't be told from each other"),
      figure: figureId,
    })
    .nullable()
    .describe("a top or bottom in the window, told with four days of readings or more on either side"),
  outliers: z.array(z.strictObject({ on: date, value: figure, entries: z.array(z.string()) })),
  line: z.array(z.strictObject({ on: date, ...spreadSchema.shape })),
  drawn: z.strictObject({
    from: date,
    to: date,
    marks: z.array(mark),
    thinned: z
      .int()
      .nullable()
      .describe("days with readings that the marks stand for; null where each is drawn"),
    step: figure.describe("smallest step of the test"),
    happened: z.array(z.strictObject({ on: date, words: z.string() })),
  }),
  title: z.string(),
  sentences: z.array(sentenceSchema),
  figures: z.strictObject({
    slope: figureId.nullable(),
    rising: figureId.nullable(),
    today: figureId.nullable(),
  }),
});

export const trendsOutput = z.strictObject({
  schema: z.literal("grazewell.trends/1"),
  engine: z.string(),
  tank: z.strictObject({ name: z.string(), as_of: date }),
  quantities: z.array(quantity).describe("the most pressing first"),
  unread: z.array(z.string()).describe("labels of quantities without a reading"),
  statement: z.string(),
});
export type TrendsOutput = z.infer<typeof trendsOutput>;
export type QuantityTrend = z.infer<typeof quantity>;

const way = z.strictObject({ id: z.string(), label: z.string(), mg_per_day: spreadSchema, figure: figureId });

const elementFlows = z.strictObject({
  element: z.enum(["N", "P"]),
  name: z.string(),
  in: z.array(way).describe("negative: fish keep it"),
  out: z.array(way),
  stays: z.array(way),
  comes_in_mg_per_day: spreadSchema,
  freed_mg_per_day: spreadSchema.describe("into the water, by excretion and decay"),
  algae_take_mg_per_day: spreadSchema,
  algae_most_of_20: z
    .int()
    .min(0)
    .max(20)
    .describe("versions in which algae take more than half of what is freed"),
  dissolved_mg: spreadSchema.describe("in all the water today"),
  step_mg: figure.nullable().describe("what one step of the test is in all the water, mg"),
  passes_hours: spreadSchema.describe("how long what is freed stays dissolved"),
  title: z.string(),
  sentences: z.array(sentenceSchema),
});

export const flowsOutput = z.strictObject({
  schema: z.literal("grazewell.flows/1"),
  engine: z.string(),
  seed: z.int(),
  members: z.int(),
  learned: z.boolean(),
  days: z.int(),
  tank: z.strictObject({ name: z.string(), as_of: date }),
  elements: z.array(elementFlows),
  statement: z.string(),
});
export type FlowsOutput = z.infer<typeof flowsOutput>;
export type ElementFlows = z.infer<typeof elementFlows>;
