/** What `grazewell next --json` and `grazewell round --json` print. A change that breaks a reader gets a new number. */
import { z } from "zod";

const date = z.iso.date();
const urgency = z.enum(["today", "this_week", "next_visit", "cannot_tell"]);

const advice = z.strictObject({
  id: z.string().describe("the same from day to day while it stays the same advice"),
  about: z.string(),
  urgency,
  weight: z.number().describe("among those of one urgency the weightier goes first, 0 to 100"),
  do: z.string(),
  why: z.array(z.string()),
  by_when: z.string(),
  by: date.nullable(),
  would_change: z.string(),
  wait: z.string().describe("what waiting means here"),
});

export const nextOutput = z.strictObject({
  schema: z.literal("grazewell.next/1"),
  engine: z.string(),
  tank: z.strictObject({ id: z.string(), name: z.string(), as_of: date }),
  with_plan: z.boolean().describe("false: judged from answers and daybook alone"),
  advice: z.array(advice).min(1).describe("the first is what to do next"),
  declined: z.array(advice.extend({ reason: z.string(), declined_on: date, entry: z.string() })),
  statement: z.string(),
});
export type NextOutput = z.infer<typeof nextOutput>;

export const roundOutput = z.strictObject({
  schema: z.literal("grazewell.round/1"),
  engine: z.string(),
  as_of: date,
  all: z.int().describe("tanks of the store"),
  tanks: z
    .array(
      z.strictObject({
        place: z.int().describe("in the order asked for, from 1"),
        id: z.string(),
        name: z.string(),
        keeper: z.string(),
        invented: z.boolean(),
        urgency: z.union([urgency, z.literal("nothing_due")]),
        why: z.string(),
        do: z.string(),
        by_when: z.string(),
        more: z.int().describe("further matters on its bench"),
        data_days: z.int().nullable().describe("days since the latest entry; null without any"),
      }),
    )
    .describe("the neediest first, unless another order was asked for"),
  statement: z.string(),
});
export type RoundOutput = z.infer<typeof roundOutput>;
