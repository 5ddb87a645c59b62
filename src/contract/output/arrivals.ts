/** What `grazewell arrivals --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { ofTank, told, toldFigures } from "./sentence.ts";

const date = z.iso.date();
const group = z.enum(["fish", "corals", "invertebrates"]);
const lines = z.array(z.string());

export const arrivalsOutput = z.strictObject({
  schema: z.literal("grazewell.arrivals/1"),
  engine: z.string(),
  tank: ofTank,
  before_paying: z.array(
    z.strictObject({ id: z.string(), name: z.string(), look: lines, leave: z.string() }),
  ),
  apart: z
    .array(
      z.strictObject({
        what: z.enum(["quarantine", "fallow"]),
        group,
        words: z.string().describe("as typed; empty where nobody said who"),
        entry: z.string().describe("of the daybook"),
        from: date,
        until: date,
      }),
    )
    .describe("begun by the daybook and not ended, the latest first"),
  quarantine: z
    .strictObject({
      group,
      from: date,
      days: z.array(z.strictObject({ day: z.int(), on: date, do: z.string() })),
    })
    .describe("a plan for that group from that day; common practice, a vet's word overrules it"),
  refuses_food: lines.describe("where a fish has not eaten by day three"),
  signs_of_disease: lines,
  hospital_tank: lines,
  medicines: z
    .array(
      z.strictObject({
        typed: z.string(),
        ingredient: z.string().nullable().describe("null: not known here, it counts as the worst"),
        started_on: date.nullable(),
        ended_on: date.nullable(),
        crew_back_on: date.nullable().describe("first day, test passed; null while it is in the water"),
        left: told.describe("of what was dissolved, by water changes alone"),
      }),
    )
    .describe("in the water, or so lately that the gates are still shut"),
  fallow: z
    .strictObject({
      days: z.int(),
      crew: z.array(
        z.strictObject({
          ...{ id: z.string(), name: z.string(), heads: z.number() },
          half_starve: told.describe("runs of 20 in which half of them or more starve"),
        }),
      ),
      fed_by_hand: z.array(z.strictObject({ name: z.string(), dry_feed_a_day: told })),
    })
    .nullable()
    .describe("null unless asked for: no fish and no feed, the crew as it is"),
  figures: toldFigures,
  statement: z.string(),
});
export type ArrivalsOutput = z.infer<typeof arrivalsOutput>;
