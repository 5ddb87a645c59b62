/** What `grazewell check --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";
import { figureId } from "./waves.ts";

const place = {
  path: z.string().describe("place in the file, e.g. animals_present[1].count"),
  label: z.string(),
  line: z.number().int().nullable().describe("from 1; null where the place is not in the file"),
};

const kind = z.enum([
  "ECHO",
  "MISSING",
  "FORMAT",
  "RANGE",
  "UNIT",
  "AMBIG",
  "CONFLICT",
  "DUPLICATE",
  "FUTURE",
  "UNUSUAL",
  "DANGER",
  "NOTFOUND",
  "TOOBIG",
]);

const finding = z.strictObject({
  ...place,
  typed: z.string().nullable(),
  kind,
  message: z.string(),
  choices: z.array(
    z.strictObject({
      label: z.string(),
      text: z.string().nullable().describe("what to write instead; null where it opens another question"),
    }),
  ),
});

const notice = z.strictObject({ ...place, kind, message: z.string() });

const fact = z.strictObject({
  field: z.string(),
  label: z.string(),
  low: z.number(),
  central: z.number(),
  high: z.number(),
  unit: z.string(),
  origin: z.enum(["stated", "derived", "assumed"]),
  how: z.string(),
  figure: figureId,
});

const assumption = z.strictObject({
  field: z.string(),
  label: z.string(),
  taken_as: z.string(),
  answer: z.string().describe("the entry of the tank file that would replace it"),
  matters: z.enum(["much", "some", "little"]).describe("for the size of a crew; judgement"),
  figure: figureId.nullable().describe("null where it is a choice, not a number"),
});

export const checkOutput = z.discriminatedUnion("ok", [
  z.strictObject({
    schema: z.literal("grazewell.check/1"),
    ok: z.literal(true),
    file: z.string(),
    name: z.string(),
    as_of: z.string(),
    notices: z.array(notice).describe("how entries were read, and what is unusual or dangerous"),
    facts: z.array(fact),
    assumed: z.array(assumption).describe("what nobody said, the most telling first"),
    unknown_animals: z.array(z.string()).describe("not in the catalogue: they count for nothing"),
  }),
  z.strictObject({
    schema: z.literal("grazewell.check/1"),
    ok: z.literal(false),
    file: z.string(),
    findings: z.array(finding),
  }),
]);

export type CheckOutput = z.infer<typeof checkOutput>;
