/** Files over the API: looked at, brought in, undone; the daybook taken out. */
import { createHash } from "node:crypto";
import type { z } from "zod";
import type { Answers } from "../../contract/bring-in/asked.ts";
import type { Pair } from "../../contract/bring-in/compare.ts";
import type {
  actList,
  broughtIn,
  PreviewOfFile,
  SentText,
  takeOutQuery,
  undoRequest,
} from "../../contract/http/bring-in.ts";
import { MOST_TOLD } from "../../contract/http/bring-in.ts";
import { pointerOf } from "../../contract/http/json.ts";
import type { HttpFault } from "../../contract/http/shape.ts";
import { BROUGHT_IN, bringIn, type Done, REST } from "../bring-in/carry-out.ts";
import { type Examined, examine, type Request } from "../bring-in/examine.ts";
import { undoAct as undo } from "../bring-in/undo.ts";
import { loadTank } from "../load-tank.ts";
import type { LoadedTank } from "../route.ts";
import { EXTENSION, takeOut as piecesOf, TYPE } from "../take-out/pieces.ts";
import { type Call, fault, type Handler, mend, notFound } from "./call.ts";
import { ProblemError } from "./problem.ts";
import { stampOf } from "./tanks.ts";

const ACTS_LISTED = 100;

async function tankOf({ params, context }: Call): Promise<LoadedTank> {
  const tank = await loadTank(context.store, params["tank"] ?? "", context.today);
  if (tank === null) throw notFound();
  return tank;
}

function requestOf(call: Call, tank: LoadedTank): Request {
  const { name = "sent to the API", text, answers = {} } = call.body as SentText;
  const { today, now } = call.context;
  return {
    tankId: tank.row.id,
    tank,
    today,
    now,
    file: { name, bytes: Buffer.from(text) },
    // Of no prototype: a name that an object has by birth is no answer.
    answers: Object.assign(Object.create(null), answers) as Answers,
  };
}

export const previewBringIn: Handler = async (call) => {
  const examined = await examine(call.context.store, requestOf(call, await tankOf(call)));
  return { status: 200, body: previewOf(examined) };
};

const NONE: PreviewOfFile = {
  said: [],
  questions: [],
  rows: 0,
  new: 0,
  already_here: 0,
  ready: 0,
  faulty: 0,
  faults: [],
  clashes: [],
  deleted: [],
};

/** @throws ProblemError where the file can't be read */
function previewOf(examined: Examined): PreviewOfFile {
  if (examined.kind === "refused") {
    throw mend(422, [fault("/text", examined.message.kind as HttpFault["kind"], examined.message.text)]);
  }
  if (examined.kind === "asked") {
    const questions = examined.questions.map(({ name, kind, text, choices }) => ({
      name,
      kind,
      message: text,
      choices: [...choices],
    }));
    return { ...NONE, said: [...examined.said], questions };
  }
  const { file, comparison, plan } = examined;
  return {
    ...NONE,
    said: [...file.said],
    rows: file.rows,
    new: comparison.fresh.length,
    already_here: comparison.same.length + comparison.twice.length,
    ready: plan.add.length + plan.change.length,
    faulty: file.faulty,
    faults: file.faults.slice(0, MOST_TOLD).map(({ line, label, typed, message, name, choices }) => ({
      line,
      field: label,
      typed,
      kind: message.kind,
      message: message.text,
      name,
      choices: choices.flatMap((one) => (one.text === null ? [] : [{ label: one.label, value: one.text }])),
    })),
    clashes: plan.clashes.slice(0, MOST_TOLD).map((one) => pairOf("clash", one, one.answer)),
    deleted: plan.deleted.slice(0, MOST_TOLD).map((one) => pairOf("deleted", one, one.answer)),
  };
}

const pairOf = (of: "clash" | "deleted", { entry, held }: Pair, answer: string | null) => ({
  name: `${of}.${entry.place}`,
  line: entry.line,
  on: entry.on,
  entry: held.id,
  held: held.body,
  file: entry.body,
  answer,
});

export const bringFileIn: Handler = async (call) => {
  const tank = await tankOf(call);
  const key = call.once === null ? null : createHash("sha256").update(call.once.key).digest("base64url");
  const done = await bringIn(call.context.store, requestOf(call, tank), {
    stamp: stampOf(call),
    newId: call.context.newId,
    key,
  });
  if (done.kind === "open") throw mend(422, openFaults(done.examined));
  const body: z.infer<typeof broughtIn> = {
    act: done.kind === "done" ? done.act : null,
    ...countsOf(done.about),
  };
  return { status: done.kind === "done" ? 201 : 200, body };
};

function countsOf({ file, rows, added, changed, brought_back, already_here, left_out }: Done) {
  return { file, rows, added, changed, brought_back, already_here, left_out };
}

/** Everything that holds it up, each under the answer that settles it. */
function openFaults(examined: Examined): HttpFault[] {
  const preview = previewOf(examined);
  const faults: HttpFault[] = [];
  const add = (
    name: string | null,
    kind: string,
    detail: string,
    typed: string | null,
    choices: readonly { readonly label: string; readonly value: string }[],
  ) =>
    faults.push({
      pointer: name === null ? "/text" : pointerOf(["answers", name]),
      kind: kind as HttpFault["kind"],
      detail,
      typed,
      allowed: [],
      choices: choices.map(({ label, value }) => ({ label, text: value })),
    });
  for (const { name, kind, message, choices } of preview.questions) add(name, kind, message, null, choices);
  for (const { line, name, kind, message, typed, choices } of preview.faults) {
    add(name, kind, `Line ${line}: ${message}`, typed, choices);
  }
  for (const { name, line, answer } of preview.clashes) {
    if (answer !== null) continue;
    const detail = `Line ${line}: the daybook has another value at this time: keep mine, take the file's, or keep both`;
    add(name, "CONFLICT", detail, null, [
      { label: "Keep mine", value: "mine" },
      { label: "Take the file's", value: "file" },
      { label: "Keep both", value: "both" },
    ]);
  }
  if (preview.questions.length === 0 && preview.ready > 0) {
    const detail = `${preview.ready} are ready: add them without what is open`;
    add(REST.name, "LIST", detail, null, [{ label: `Add the ${preview.ready}`, value: REST.value }]);
  }
  return faults;
}

export const listActs: Handler = async (call) => {
  const tank = await tankOf(call);
  const acts = await call.context.store.acts(tank.row.id, BROUGHT_IN, ACTS_LISTED);
  const body: z.infer<typeof actList> = {
    acts: acts.map(({ id, stamp, about, undone }) => ({
      act: id,
      at: stamp.at,
      by: stamp.by,
      undone_at: undone?.at ?? null,
      ...countsOf(about as Done),
    })),
  };
  return { status: 200, body };
};

export const undoAct: Handler = async (call) => {
  const tank = await tankOf(call);
  const { changed = null } = call.body as z.infer<typeof undoRequest>;
  const act = call.params["act"] ?? "";
  const end = await call.context.store.together((desk) =>
    undo(desk, tank.row.id, act, changed, { stamp: stampOf(call), today: call.context.today }),
  );
  if (end.kind === "not_found") throw notFound();
  if (end.kind === "already") {
    const detail = `It was undone already, on ${end.by.at}.`;
    throw new ProblemError({ status: 409, title: "Undone already", kind: "CONFLICT", detail });
  }
  if (end.kind === "ask") {
    const count = end.changed.length;
    const words = `${count} of its entries ${count === 1 ? "was" : "were"} changed since. Keep ${count === 1 ? "it" : "those"}?`;
    const choices = [
      { label: "Keep those as they are", text: "keep" },
      { label: "Undo those too", text: "undo" },
    ];
    throw mend(422, [{ ...fault("/changed", "CONFLICT", words), choices }]);
  }
  return { status: 200, body: { taken_away: end.taken, as_before: end.restored, left: end.left } };
};

export const takeOut: Handler = async (call) => {
  const tank = await tankOf(call);
  const { format = "json", from = null, to = null } = call.query as z.infer<typeof takeOutQuery>;
  const of = { id: tank.row.id, name: tank.head.name };
  const { store, now } = call.context;
  const pieces: string[] = [];
  for await (const piece of piecesOf(store, { tank: of, document: tank.document, format, from, to, now })) {
    pieces.push(piece);
  }
  const name = `${format === "readings" ? "readings" : "daybook"}.${EXTENSION[format]}`;
  return { status: 200, body: { name, type: TYPE[format], text: pieces.join("") } };
};
