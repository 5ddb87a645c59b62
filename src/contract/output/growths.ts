/**
 * What `grazewell what-is-this` prints with --json: what a key finds, and what the record's growths, signs and losses may
 * come from. A change that breaks a reader gets a new number in `schema`.
 */
import { z } from "zod";
import { figureId } from "./waves.ts";

const of20 = z.int().min(0).max(20);
const word = z.enum(["rarely", "seldom", "about even", "usually", "nearly always"]);

const question = z.strictObject({
  clue: z.string().describe("id; kept in a sighting as a trait of that name"),
  ask: z.string(),
  test: z.string().describe("what would settle it"),
});

export const causeOutput = z.strictObject({
  id: z.string(),
  name: z.string(),
  of_20: of20.describe("chance that it is at work; causes do not exclude each other"),
  word,
  figure: figureId,
  for: z.array(z.string()).describe("what is known that speaks for it"),
  against: z.array(z.string()),
  not_known: z.array(question),
  do: z.array(z.string()),
  dont: z.array(z.string()),
  stop: z.string(),
  evidence: z.string(),
});

const eater = z.strictObject({
  animal: z.string(),
  name: z.string(),
  eats: z.enum(["eats", "nibbles", "refuses", "harmed"]),
  lives_here: z.boolean(),
  evidence: z.string(),
});

/** One thing that a key holds against the answers. */
export const foundOutput = z.strictObject({
  id: z.string().nullable().describe("null: something that the key does not hold"),
  name: z.string(),
  of_20: of20,
  for: z.array(z.string()).describe("answers that speak for it, strongest first"),
  against: z.array(z.string()),
});

const outbreak = z.strictObject({
  growth: z.string(),
  label: z.string(),
  score: z.int().min(0).max(4),
  anchor: z.string(),
  on: z.iso.date().describe("the day it was seen, or told"),
  from: z.enum(["daybook", "questions"]),
  described_as: z.string().describe("id in facts/growths"),
  key: z.array(foundOutput).describe("what its kept traits say; empty where none were kept"),
  asked_first: z.array(question),
  causes: z.array(causeOutput),
  would_tell: z.array(question),
  eaters: z.array(eater),
  crew: z.enum(["yes", "partly", "no"]),
  crew_said: z.string(),
  do: z.array(z.string()),
  dont: z.array(z.string()),
  stop: z.string(),
  closes_gates: z.boolean(),
  toxin: z.string().nullable(),
});
export type OutbreakOutput = z.infer<typeof outbreak>;

const signOutput = z.strictObject({
  sign: z.string(),
  on: z.iso.date(),
  animal: z.string().nullable(),
  title: z.string(),
  verdict: z.enum(["test_now", "test_soon", "habit", "cannot_tell", "look"]),
  said: z.array(z.string()),
  asked_first: z.array(question),
  causes: z.array(causeOutput),
  would_tell: z.array(question),
});

export const growthsOutput = z.strictObject({
  schema: z.literal("grazewell.growths/1"),
  engine: z.string(),
  tank: z.strictObject({ name: z.string(), as_of: z.iso.date() }),
  growths: z.array(outbreak),
  signs: z.array(signOutput),
  tests_first: z
    .array(
      z.strictObject({
        id: z.string(),
        quantity: z.string(),
        on: z.iso.date(),
        says: z.string(),
        because: z.array(z.string()),
        check: z.string(),
        animals_ill: z.boolean().describe("true: take the reading as true until it is tested again"),
      }),
    )
    .describe("known faults of tests, before alarm unless animals look ill"),
  unfound_death: z
    .strictObject({
      quantity: z.string(),
      on: z.iso.date(),
      rise_mg_n_per_l: z.number(),
      figure: figureId,
      usual_mg_n_per_l: z.number().nullable(),
      named: z.boolean().describe("no other cause is known"),
      others: z.array(z.string()),
      said: z.array(z.string()),
    })
    .nullable(),
  hungry: z.array(
    z.strictObject({
      animal: z.string(),
      name: z.string(),
      heads: z.int(),
      in_weeks: z.int().nullable().describe("null: signs alone say so"),
      said: z.string(),
    }),
  ),
  gates_closed: z.array(
    z.strictObject({ reason: z.string(), growth: z.string().nullable(), sign: z.string().nullable() }),
  ),
  statement: z.string(),
});

/** What a key says of the traits given. */
export const keyOutput = z.strictObject({
  schema: z.literal("grazewell.key/1"),
  engine: z.string(),
  key: z.enum(["growth", "animal"]),
  seen: z.array(z.string()),
  not_seen: z.array(z.string()),
  from_record: z.record(z.string(), z.boolean()).describe("answered by the tank's own facts"),
  named: z.string().nullable().describe("id; null: can't tell yet"),
  found: z.array(foundOutput),
  next_question: z.string().nullable().describe("id of the question that would tell most"),
  statement: z.string(),
});
export type KeyOutput = z.infer<typeof keyOutput>;

export type GrowthsOutput = z.infer<typeof growthsOutput>;
export type CauseOutput = z.infer<typeof causeOutput>;
export type FoundOutput = z.infer<typeof foundOutput>;
export type SignOutput = GrowthsOutput["signs"][number];
export type QuestionOutput = z.infer<typeof question>;
