/** What `grazewell feeding --json` prints, with days away or without. A breaking change gets a new number in `schema`. */
import { z } from "zod";
import { careDate } from "./almanac.ts";
import { numbersPart, ofTank, sentence, told, toldFigures } from "./sentence.ts";

const date = z.iso.date();

export const feedingOutput = z.strictObject({
  schema: z.literal("grazewell.feeding/1"),
  engine: z.string(),
  tank: ofTank,
  lead: sentence.describe("what a day's feed brings"),
  parts: z
    .array(numbersPart)
    .describe("whom the larder can't feed is a matter of the plan: fed_by_hand in waves"),
  figures: toldFigures,
  statement: z.string(),
});

export const holidayOutput = z.strictObject({
  schema: z.literal("grazewell.holiday/1"),
  engine: z.string(),
  tank: ofTank,
  from: date,
  to: date,
  days: z.int(),
  sitter_every_days: z.int(),
  finding: sentence,
  ways: z
    .array(
      z.strictObject({
        way: z.enum(["nothing", "sitter", "feeder"]),
        nitrate_mg_per_l: told,
        phosphate_mg_per_l: told,
        ammonia_harms: told.describe("runs of 20 in which ammonia harms while away"),
        film_mg_c_per_m2: told,
        lost_heads: told,
      }),
    )
    .describe("on the day of return, over twenty runs"),
  packing: z.strictObject({
    weighed: z.boolean().describe("false: nobody said how much goes in, a portion is a usual day's food"),
    portion: told,
    food: z.string(),
    portions: told,
    feed_on: z.array(date),
    may_not_last: z.array(z.strictObject({ name: z.string(), lasts: told })),
  }),
  dates: z.array(careDate).describe("before, meanwhile and after; they are not in the almanac"),
  figures: toldFigures,
  statement: z.string(),
});

export type FeedingOutput = z.infer<typeof feedingOutput>;
export type HolidayJson = z.infer<typeof holidayOutput>;
