/** What the engine says, over the API: the same as the command line prints with --json. */
import { z } from "zod";
import { aheadOutput } from "../output/ahead.ts";
import { animalsOutput } from "../output/animals.ts";
import { larderOutput } from "../output/larder.ts";
import { wavesOutput } from "../output/waves.ts";
import { workingOutput } from "../output/working.ts";
import { facts } from "./parts.ts";
import { LEAST_MEMBERS, MOST_CHANGE_LETTERS, MOST_CHANGES, MOST_MEMBERS } from "./sizes.ts";

const change = z.string().min(1).max(MOST_CHANGE_LETTERS);
const changes = z.array(change).max(MOST_CHANGES);

/** A what-if, each as the command line takes it. */
const whatIf = {
  feed: change.optional().describe('"0.4 g/day", "+50 %", "x2"'),
  light: change.optional().describe('"10 h", "50 %", "0 for 3 days"'),
  crew: changes.optional().describe('"+2 trochus-snail", "-3 blue-leg-hermit", "4 nerite-snail" (4 in all)'),
  water_change: change.optional().describe('"20 % every 7 days"'),
  dead: changes.optional().describe('"5 g fish", "1 trochus-snail", "5 g fish on day 10"'),
};

const members = z.int().min(LEAST_MEMBERS).max(MOST_MEMBERS).describe("runs of the ensemble");
const seed = z
  .int()
  .min(0)
  .max(2 ** 31 - 1)
  .describe("of the draws");
const digits = z.string().regex(/^\d{1,10}$/);

export const answersQuery = z.strictObject({
  members: digits.transform(Number).pipe(members).optional(),
  seed: digits.transform(Number).pipe(seed).optional(),
  ...whatIf,
});
export type AnswersQuery = z.infer<typeof answersQuery>;

export const answersRequest = z.strictObject({
  document: facts,
  choice: z.strictObject({ members: members.optional(), seed: seed.optional() }).optional(),
  change: z.strictObject(whatIf).optional(),
});

const figure = workingOutput.shape.figure.unwrap();

export const tankAnswers = z.strictObject({
  larder: larderOutput,
  waves: wavesOutput,
  ahead: aheadOutput,
  animals: animalsOutput,
  workings: z.record(z.string(), figure).describe("every figure of the other parts, by its id"),
});
