/** Bringing a file in and taking the daybook out over the API: the same reading, the same questions, the same acts. */
import { z } from "zod";
import { UNDO_CHOICES } from "../bring-in/plan.ts";
import { TAKE_OUT_FORMATS } from "../take-out/taken.ts";
import { EXAMPLE } from "./examples.ts";
import type { Operation } from "./operation.ts";
import { id, message } from "./parts.ts";

const answerName = z.string().regex(/^[a-z_]{1,20}(?:\.\d{1,9}){0,2}$/);

export const sentFile = z.strictObject({
  name: z.string().min(1).max(200).optional().describe("of the file, for the list of what was brought in"),
  text: z
    .string()
    .describe("CSV, or a daybook that was taken out; beyond this API's bound take the page or the command"),
  answers: z
    .record(answerName, z.string().max(10_000))
    .optional()
    .describe(
      "to what was asked, by name: dates, decimal, column.2, cell.14.3, row.14, clash, clash.14, deleted; rest=leave_out adds the others without what is open",
    ),
});
export type SentText = z.infer<typeof sentFile>;

const question = z.strictObject({
  name: z.string().describe("under which it is answered"),
  kind: z.string(),
  message: z.string(),
  choices: z.array(z.strictObject({ label: z.string(), value: z.string() })),
});
const fault = z.strictObject({
  line: z.int(),
  field: z.string(),
  typed: z.string(),
  ...message.shape,
  name: z.string().nullable().describe("answer that puts another text in its place; null: change the file"),
  choices: z.array(z.strictObject({ label: z.string(), value: z.string() })),
});
const pair = z.strictObject({
  name: z.string().describe("under which this one is answered"),
  line: z.int(),
  on: z.iso.date(),
  entry: id.describe("of the daybook"),
  held: z.unknown().describe("its body"),
  file: z.unknown().describe("the body that the file tells"),
  answer: z.string().nullable(),
});

export const MOST_TOLD = 200;

export const previewOfFile = z.strictObject({
  said: z.array(z.string()).describe("how it was read"),
  questions: z.array(question).describe("to be answered before anything can be read; the counts are 0 then"),
  rows: z.int(),
  new: z.int(),
  already_here: z.int(),
  ready: z.int().describe("entries that bringing it in now would add or change"),
  faulty: z.int(),
  faults: z.array(fault).describe(`the first ${MOST_TOLD}`),
  clashes: z.array(pair).describe(`the first ${MOST_TOLD}: mine, file or both`),
  deleted: z.array(pair).describe(`the first ${MOST_TOLD}: leave_out, or bring_back`),
});
export type PreviewOfFile = z.infer<typeof previewOfFile>;

export const broughtIn = z.strictObject({
  act: id.nullable().describe("undone as one by it; null where nothing was added"),
  file: z.string(),
  rows: z.int(),
  added: z.int(),
  changed: z.int(),
  brought_back: z.int(),
  already_here: z.int(),
  left_out: z.int(),
});

const act = z.strictObject({
  ...broughtIn.shape,
  act: id,
  at: z.iso.datetime(),
  by: z.string(),
  undone_at: z.iso.datetime().nullable(),
});
export const actList = z.strictObject({ acts: z.array(act).describe("the latest first, at most 100") });

export const undoRequest = z.strictObject({
  changed: z.enum(UNDO_CHOICES).optional().describe("what becomes of entries that were changed since"),
});
const undone = z.strictObject({
  taken_away: z.int(),
  as_before: z.int(),
  left: z.int().describe("changed since, and kept"),
});

const day = z.iso.date();
export const takeOutQuery = z.object({
  format: z.enum(TAKE_OUT_FORMATS).optional().describe("json where left out"),
  from: day.optional(),
  to: day.optional(),
});
const takenOut = z.strictObject({
  name: z.string(),
  type: z.string(),
  text: z.string().describe("the file"),
});

const of = { tank: EXAMPLE.tank };
const sheet = "date,nitrate\n2026-06-01,12\n2026-06-02,10\n";

export const BRING_IN_OPERATIONS: readonly Operation[] = [
  {
    id: "previewBringIn",
    method: "POST",
    path: "/tanks/{tank}/bring-in/preview",
    summary: "What a file would add, and what it leaves open; changes nothing",
    changes: false,
    body: sentFile,
    replies: { 200: previewOfFile },
    problems: [400, 404, 413, 422],
    examples: [
      { name: "a sheet", params: of, body: { text: sheet }, status: 200 },
      { name: "dates that could be two", params: of, body: { text: "date,ph\n03/04/2026,8.1" }, status: 200 },
      {
        name: "a quote that never closes",
        params: of,
        body: { text: 'date,ph\n2026-06-01,"8.1' },
        status: 422,
      },
    ],
  },
  {
    id: "bringIn",
    method: "POST",
    path: "/tanks/{tank}/bring-in",
    summary: "Bring a file in, as one act; nothing here is ever deleted by it",
    changes: true,
    body: sentFile,
    asks: "once",
    replies: { 200: broughtIn, 201: broughtIn },
    problems: [400, 404, 409, 413, 422, 429],
    examples: [
      {
        name: "a sheet",
        params: of,
        headers: { "idempotency-key": "example-bring-in" },
        body: { name: "june.csv", text: sheet },
        status: 201,
      },
      { name: "the same again: all of it is here", params: of, body: { text: sheet }, status: 200 },
      {
        name: "at odds, decided",
        params: of,
        body: { text: "date,nitrate\n2026-06-01,14", answers: { clash: "mine" } },
        status: 200,
      },
      { name: "at odds", params: of, body: { text: "date,nitrate\n2026-06-01,14" }, status: 422 },
    ],
  },
  {
    id: "listActs",
    method: "GET",
    path: "/tanks/{tank}/bring-in",
    summary: "What was brought in, the latest first",
    changes: false,
    replies: { 200: actList },
    problems: [404],
    examples: [{ name: "all", params: of, status: 200 }],
  },
  {
    id: "undoAct",
    method: "POST",
    path: "/tanks/{tank}/bring-in/{act}/undo",
    summary: "Undo what was brought in, as one: what it added is taken away, what it changed is as before",
    changes: true,
    body: undoRequest,
    replies: { 200: undone },
    problems: [400, 404, 409, 422, 429],
    examples: [
      { name: "undone", params: { ...of, act: EXAMPLE.act }, body: {}, status: 200 },
      { name: "once is enough", params: { ...of, act: EXAMPLE.act }, body: {}, status: 409 },
      { name: "not there", params: { ...of, act: "no-such-act" }, body: {}, status: 404 },
    ],
  },
  {
    id: "takeOut",
    method: "GET",
    path: "/tanks/{tank}/take-out",
    summary: "The daybook as a file; brought in again it is the same daybook",
    changes: false,
    query: takeOutQuery,
    replies: { 200: takenOut },
    problems: [400, 404],
    examples: [
      { name: "all of it", params: of, status: 200 },
      {
        name: "readings of June as a sheet",
        params: of,
        query: { format: "readings", from: "2026-06-01", to: "2026-06-30" },
        status: 200,
      },
    ],
  },
];
