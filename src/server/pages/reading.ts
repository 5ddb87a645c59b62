/** One reading of a tank: shown with its versions, corrected, taken away, brought back. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { dateWords } from "../../answers/words.ts";
import type { EntryRow, Json } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import type { Clash } from "../../web/pages/question.tsx";
import { readingPage } from "../../web/pages/reading.tsx";
import type { ReadingLine } from "../../web/pages/readings.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest } from "../route.ts";
import { instantWords } from "./instant-words.ts";
import { lineOf, readSent, together, valuesOfReading } from "./reading-of.ts";
import { sentValues, versionOf } from "./sent.ts";

const NO_READING: PageReply = { kind: "not_found", what: "reading of that address" };

interface Found {
  readonly row: EntryRow;
  readonly line: ReadingLine;
}

async function find(
  tank: LoadedTank,
  { params }: PageRequest,
  { store }: PageContext,
): Promise<Found | null> {
  const row = await store.entry(params["entry"] ?? "");
  if (row === null || row.tankId !== tank.row.id || row.kind !== "reading") return null;
  const line = lineOf(row, tank.document);
  return line === null ? null : { row, line };
}

export async function showReading(
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const found = await find(tank, request, context);
  return found === null ? NO_READING : await page(tank, found, {}, context);
}

interface Shown {
  readonly values?: Values;
  readonly doubts?: readonly FieldDoubt[];
  readonly clash?: Clash;
  readonly status?: number;
}

async function page(
  tank: LoadedTank,
  { row, line }: Found,
  { values, doubts = [], clash, status = 200 }: Shown,
  { store }: PageContext,
): Promise<PageReply> {
  const history = (await store.entryHistory(row.id)).toSorted((a, b) => b.version - a.version);
  const view = {
    head: tank.head,
    line,
    values: values ?? valuesOfReading(line.body, line.on),
    doubts,
    clash: clash ?? null,
    history: history.flatMap((one) => {
      const version = lineOf(one, tank.document);
      return version === null ? [] : [{ ...version, written: instantWords(one.stamp.at), by: one.stamp.by }];
    }),
  };
  return { kind: "page", page: readingPage(view), status };
}

export async function changeReading(
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const found = await find(tank, request, context);
  if (found === null) return NO_READING;
  const sent = sentValues(request.form);
  const { row, line } = found;
  const go = sent["go"] ?? "correct";
  if (go === "take_away" || go === "bring_back") {
    const kept = go === "bring_back";
    // Done already, by a double tap or by somebody else.
    if (row.kept === kept) return { kind: "redirect", to: after(tank, row) };
    const doubts = kept ? together(tank, row, context.today) : [];
    if (doubts.length > 0) return await page(tank, found, { doubts, status: 422 }, context);
    return await write(tank, found, sent, { on: row.on, body: row.body, kept }, context);
  }
  const read = readSent(sent, line.body.quantity, tank, context, row.id);
  if (!read.ok) return await page(tank, found, { values: sent, doubts: read.doubts, status: 422 }, context);
  const change = { on: read.on, body: read.body as Json, kept: row.kept };
  return await write(tank, found, sent, change, context);
}

const after = (tank: LoadedTank, { id }: EntryRow): string =>
  `${to.tank(tank.row.id, "readings")}?kept=${id}`;

async function write(
  tank: LoadedTank,
  { row }: Found,
  sent: Values,
  change: { readonly on: string; readonly body: Json; readonly kept: boolean },
  context: PageContext,
): Promise<PageReply> {
  const same =
    JSON.stringify([row.on, row.body, row.kept]) === JSON.stringify([change.on, change.body, change.kept]);
  if (same) return { kind: "redirect", to: after(tank, row) };
  const stamp = { at: context.now, by: tank.row.keeper.name };
  const saved = await context.store.correctEntry(row.id, versionOf(sent), change, stamp);
  if (saved.kind === "not_found") return NO_READING;
  if (saved.kind === "saved") return { kind: "redirect", to: after(tank, saved.row) };
  const line = lineOf(saved.current, tank.document);
  if (line === null) return NO_READING;
  const { stamp: theirs, kept } = saved.current;
  const words = `${line.body.text}, measured on ${dateWords(line.on)}${kept ? "" : ", taken away"}`;
  const clash = { theirs: [`${words} (changed ${instantWords(theirs.at)} by ${theirs.by})`] };
  const current = { row: saved.current, line };
  return await page(
    tank,
    current,
    { values: { ...valuesOfReading(line.body, line.on), ...sent }, clash, status: 409 },
    context,
  );
}
