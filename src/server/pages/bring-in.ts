/** Bringing a file in, on the page: sent and held, looked at with every answer, then added as one act; acts undone. */
import type { Answers } from "../../contract/bring-in/asked.ts";
import { entryOfRow } from "../../contract/daybook/kinds.ts";
import type { ActRow } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { type ActLine, actWords, bringInPage, undoAskPage } from "../../web/pages/bring-in.tsx";
import { goneFilePage, heldAddress, previewPage } from "../../web/pages/bring-in-preview.tsx";
import { many } from "../../web/pages/bring-in-words.ts";
import { BROUGHT_IN, bringIn, type Done, REST } from "../bring-in/carry-out.ts";
import { examine, type SentFile } from "../bring-in/examine.ts";
import { HeldFiles } from "../bring-in/held-files.ts";
import { foundIn, wordsOf } from "../bring-in/preview-view.ts";
import { UNDO_ANSWERS, undoAct } from "../bring-in/undo.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { instantWords } from "./instant-words.ts";
import { ofTank } from "./of-tank.ts";
import { sentValues } from "./sent.ts";

export const BRING_IN_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/bring-in", answer: ofTank(show) },
  { method: "POST", path: "/tanks/:tank/bring-in", takes: "file", answer: ofTank(take) },
  { method: "GET", path: "/tanks/:tank/bring-in/files/:held", answer: ofTank(look) },
  { method: "POST", path: "/tanks/:tank/bring-in/files/:held", answer: ofTank(decide) },
  { method: "POST", path: "/tanks/:tank/bring-in/acts/:act", answer: ofTank(undo) },
];

const ACTS_SHOWN = 30;
const held = new HeldFiles();

async function show(tank: LoadedTank, { query }: PageRequest, context: PageContext): Promise<PageReply> {
  const { store } = context;
  const acts = await store.acts(tank.row.id, BROUGHT_IN, ACTS_SHOWN);
  const named = query["done"] ?? query["undone"];
  const act = named === undefined ? null : await store.act(named);
  const of = act !== null && act.tankId === tank.row.id ? act : null;
  return {
    kind: "page",
    page: bringInPage({ head: tank.head, acts: acts.map(lineOf), refused: null, done: doneOf(query, of) }),
  };
}

function doneOf(query: PageRequest["query"], act: ActRow | null) {
  if (query["nothing"] === "1") {
    return {
      title: "Nothing to add",
      words: "All of it is here already, or was left out. Nothing was added.",
      act: null,
    };
  }
  if (act === null) return null;
  const line = lineOf(act);
  if (query["undone"] !== undefined) {
    const left = /^\d{1,6}$/.test(query["left"] ?? "") ? Number(query["left"]) : 0;
    const kept =
      left === 0 ? "" : ` ${many(left, "entry that was", "entries that were")} changed since stayed.`;
    return {
      title: "Undone",
      words: `What ${line.file} added is taken away, what it changed is as before.${kept}`,
      act: null,
    };
  }
  const undone = act.undone !== null;
  const about = act.about as Done;
  const out = about.left_out === 0 ? "" : ` ${many(about.left_out, "row", "rows")} left out.`;
  const same = about.already_here === 0 ? "" : ` ${about.already_here} were here already.`;
  return {
    title: "Brought in",
    words: `${line.file}: ${actWords(line)}.${same}${out}`,
    act: undone ? null : act.id,
  };
}

function lineOf({ id, stamp, about, undone }: ActRow): ActLine {
  const { file, added, changed, brought_back } = about as Done;
  return {
    id,
    file: String(file),
    written: instantWords(stamp.at),
    by: stamp.by,
    added: Number(added),
    changed: Number(changed),
    broughtBack: Number(brought_back),
    undone: undone === null ? null : instantWords(undone.at),
  };
}

async function take(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const file = sentFile(request);
  if (file === null) return await refusedFile(tank, "Choose a file, or paste a table", context);
  const examined = await examine(context.store, requestOf(tank, file, {}, context));
  if (examined.kind === "refused") return await refusedFile(tank, examined.message.text, context);
  const id = held.hold(tank.row.id, file, Date.parse(context.now));
  return { kind: "redirect", to: heldAddress(tank.row.id, id) };
}

async function refusedFile(tank: LoadedTank, refused: string, { store }: PageContext): Promise<PageReply> {
  const acts = await store.acts(tank.row.id, BROUGHT_IN, ACTS_SHOWN);
  const page = bringInPage({ head: tank.head, acts: acts.map(lineOf), refused, done: null });
  return { kind: "page", page, status: 422 };
}

function sentFile({ file, form }: PageRequest): SentFile | null {
  if (file !== undefined && file !== null) return { name: file.name || "file", bytes: file.bytes };
  const pasted = form?.get("pasted") ?? "";
  return pasted.trim() === "" ? null : { name: "pasted table", bytes: Buffer.from(pasted) };
}

const requestOf = (tank: LoadedTank, file: SentFile, answers: Answers, { today, now }: PageContext) => ({
  tankId: tank.row.id,
  tank,
  today,
  now,
  file,
  answers,
});

/** Names that a preview's form may send; everything else of a form is passed over. */
const ANSWER =
  /^(?:encoding|separator|dates|day_numbers|decimal|column\.\d{1,4}|cell\.\d{1,9}\.\d{1,4}|row\.\d{1,9}|(?:clash|deleted)(?:\.\d{1,9}(?:\.\d{1,4})?)?)$/;

function answersIn({ form }: PageRequest): Answers {
  return Object.fromEntries(
    Object.entries(sentValues(form)).filter(([name, value]) => ANSWER.test(name) && value !== ""),
  );
}

async function look(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const id = request.params["held"] ?? "";
  const file = held.get(id, tank.row.id, Date.parse(context.now));
  if (file === null) return { kind: "page", page: goneFilePage(tank.head), status: 404 };
  const answers = answersIn(request);
  const examined = await examine(context.store, requestOf(tank, file, answers, context));
  if (examined.kind === "refused") return await refusedFile(tank, examined.message.text, context);
  const page = previewPage({ head: tank.head, held: id, file: file.name, answers, ...foundIn(examined) });
  return { kind: "page", page };
}

async function decide(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const id = request.params["held"] ?? "";
  const go = request.form?.get("go");
  const file = held.get(id, tank.row.id, Date.parse(context.now));
  if (go === "none") {
    held.drop(id);
    return { kind: "redirect", to: to.bringIn(tank.row.id) };
  }
  if (go !== "add" || file === null) return await look(tank, request, context);
  const answers = { ...answersIn(request), [REST.name]: REST.value };
  const done = await bringIn(context.store, requestOf(tank, file, answers, context), {
    stamp: { at: context.now, by: tank.row.keeper.name },
    newId: context.newId,
    key: id,
  });
  if (done.kind === "open") return await look(tank, request, context);
  const end = done.kind === "done" ? `done=${done.act}` : "nothing=1";
  return { kind: "redirect", to: `${to.bringIn(tank.row.id)}?${end}` };
}

async function undo(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const id = request.params["act"] ?? "";
  const sent = request.form?.get("answer");
  const answer = UNDO_ANSWERS.find((one) => one === sent) ?? null;
  const stamp = { at: context.now, by: tank.row.keeper.name };
  const undone = await context.store.together((desk) =>
    undoAct(desk, tank.row.id, id, answer, { stamp, today: context.today }),
  );
  if (undone.kind === "not_found") return { kind: "not_found", what: "file that was brought in here" };
  if (undone.kind === "ask") {
    const act = await context.store.act(id);
    const changed = undone.changed.map((row) => {
      const entry = entryOfRow(row);
      return entry === null ? row.kind : wordsOf(entry);
    });
    const page = undoAskPage({
      head: tank.head,
      act: id,
      file: String(act?.about["file"] ?? "file"),
      changed,
    });
    return { kind: "page", page };
  }
  const left = undone.kind === "undone" ? undone.left : 0;
  return {
    kind: "redirect",
    to: `${to.bringIn(tank.row.id)}?undone=${id}${left > 0 ? `&left=${left}` : ""}`,
  };
}
