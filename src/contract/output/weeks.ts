/** What `grazewell weeks --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { ofTank } from "./sentence.ts";

const date = z.iso.date();
const lines = z.array(z.string());

export const weeksOutput = z.strictObject({
  schema: z.literal("grazewell.weeks/1"),
  engine: z.string(),
  tank: ofTank,
  counted: z.enum(["age", "ahead"]).describe("age: weeks of the tank; ahead: from today, as it is older"),
  finding: z.string(),
  weeks: z
    .array(
      z.strictObject({
        from: z.int(),
        to: z.int().describe("weeks that bring nothing new are told with the one before"),
        starts: date,
        ends: date,
        ...{ expect: lines, test: lines, do: lines, dont: lines, buy: lines },
        more: z.int().describe("lines that a page has no room for: in the almanac"),
      }),
    )
    .describe("a line stands in the week in which it first holds"),
  later: z.string().nullable().describe("waves after week 26"),
  statement: z.string(),
});
export type WeeksOutput = z.infer<typeof weeksOutput>;
