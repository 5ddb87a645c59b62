/** Shapes that operations of the API share. Names on the wire are snake_case. */
import { z } from "zod";
import { MOST_ID_LETTERS } from "./sizes.ts";

export const id = z.string().min(1).max(MOST_ID_LETTERS);
const version = z.int().min(1).describe("counts from 1; named in If-Match to change what it stands for");
const instant = z.iso.datetime().describe("UTC");

/** Of everything that is kept in versions. */
export const versioned = {
  version,
  kept: z.boolean().describe("false once taken away; it can be brought back"),
  changed_at: instant,
  changed_by: z.string(),
};

export const message = z.strictObject({ kind: z.string(), message: z.string() });

const choice = z.strictObject({
  label: z.string(),
  text: z.string().nullable().describe("what to send instead; null where it opens another question"),
});

export const problem = z
  .strictObject({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    kind: z.string().optional(),
    fix: z.string().optional(),
    errors: z
      .array(
        z.strictObject({
          pointer: z.string().describe("JSON pointer into what was sent"),
          kind: z.string(),
          detail: z.string(),
          typed: z.string().nullable(),
          allowed: z.array(z.string()),
          choices: z.array(choice),
        }),
      )
      .optional(),
    choices: z.array(choice).optional(),
    current: z.unknown().describe("what is kept now, where another version came first").optional(),
  })
  .meta({ description: "Problem details, RFC 9457" });

/** The tank file as plain data; judged by the tank file's own reader, described by its schema. */
export const facts = z.record(z.string(), z.unknown());
