/** One entry of the daybook: its form while it is new; shown with its versions, corrected, taken away, brought back. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { dateWords } from "../../answers/words.ts";
import { type DaybookEntry, type EntryKind, entryOfRow } from "../../contract/daybook/kinds.ts";
import { GROWTHS } from "../../engine/types/tank.ts";
import type { EntryRow, Json } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import type { DaybookLine } from "../../web/pages/daybook.tsx";
import { asRead } from "../../web/pages/daybook-words.ts";
import { entryPage } from "../../web/pages/entry.tsx";
import { entryFormPage } from "../../web/pages/entry-form-page.tsx";
import type { Clash } from "../../web/pages/question.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import {
  asTyped,
  daybookLineOf,
  entryKindOf,
  onRecord,
  readSentEntry,
  typedOf,
  valuesOfEntry,
} from "./entry-of.ts";
import { instantWords } from "./instant-words.ts";
import { isOwnKey, keepForm } from "./keep-entry.ts";
import { ofTank } from "./of-tank.ts";
import { stateKey } from "./once.ts";
import { together } from "./reading-of.ts";
import { sentValues, versionOf } from "./sent.ts";

export const ENTRY_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/daybook/new/:kind", answer: ofTank(showForm) },
  { method: "POST", path: "/tanks/:tank/daybook/new/:kind", answer: ofTank(add) },
  { method: "GET", path: "/tanks/:tank/daybook/entries/:entry", answer: ofTank(show) },
  { method: "POST", path: "/tanks/:tank/daybook/entries/:entry", answer: ofTank(change) },
];

const NO_KIND: PageReply = { kind: "not_found", what: "kind of entry of that address" };
const NO_ENTRY: PageReply = { kind: "not_found", what: "entry of that address" };

async function showForm(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const kind = entryKindOf(request.params["kind"]);
  if (kind === undefined) return NO_KIND;
  // Its form has a page of its own, with the quantities.
  if (kind === "reading") {
    const { quantity } = request.query;
    const at =
      quantity === undefined ? to.tank(tank.row.id, "readings") : to.readingsOf(tank.row.id, quantity);
    return { kind: "redirect", to: at };
  }
  const values = typedOf(kind, request.query);
  if (kind === "growth") values["growth"] = await growthFirst(values["growth"], tank, context);
  return await form(tank, kind, values, [], context);
}

/** The one asked for, or the one logged last. */
async function growthFirst(asked: string | undefined, tank: LoadedTank, { store }: PageContext) {
  const known = GROWTHS.find((one) => one === asked);
  if (known !== undefined) return known;
  const [last] = await store.entries(tank.row.id, { kind: "growth", limit: 1 });
  const entry = last === undefined ? null : entryOfRow(last);
  return entry?.kind === "growth" ? entry.body.growth : "film_glass";
}

async function form(
  tank: LoadedTank,
  kind: EntryKind,
  values: Values,
  doubts: readonly FieldDoubt[],
  context: PageContext,
  status = 200,
): Promise<PageReply> {
  const latest = await context.store.entries(tank.row.id, { kind, limit: 20, withRemoved: true });
  const sentKey = values["once"] ?? "";
  const keepsKey = isOwnKey(sentKey);
  const page = entryFormPage({
    head: tank.head,
    kind,
    values,
    doubts,
    scene: { onRecord: onRecord(tank) },
    once: keepsKey
      ? sentKey
      : stateKey(
          tank.row.id,
          kind,
          latest.map(({ id, version }) => [id, version]),
        ),
    keepsKey,
  });
  return { kind: "page", page, status };
}

async function add(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const kind = entryKindOf(request.params["kind"]);
  if (kind === undefined) return NO_KIND;
  const sent = sentValues(request.form);
  const read = readSentEntry(kind, sent, tank, context);
  if (!read.ok) return await form(tank, kind, sent, read.doubts, context, 422);
  const id = await keepForm(kind, sent, read, tank, context);
  return { kind: "redirect", to: `${to.tank(tank.row.id, "daybook")}?kept=${id}` };
}

interface Found {
  readonly row: EntryRow;
  readonly entry: DaybookEntry;
  readonly line: DaybookLine;
}

function found(row: EntryRow): Found | null {
  const entry = entryOfRow(row);
  const line = daybookLineOf(row);
  return entry === null || line === null ? null : { row, entry, line };
}

async function find(
  tank: LoadedTank,
  { params }: PageRequest,
  { store }: PageContext,
): Promise<Found | null> {
  const row = await store.entry(params["entry"] ?? "");
  return row === null || row.tankId !== tank.row.id ? null : found(row);
}

async function show(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const one = await find(tank, request, context);
  return one === null ? NO_ENTRY : await page(tank, one, {}, context);
}

interface Shown {
  readonly values?: Values;
  readonly doubts?: readonly FieldDoubt[];
  readonly clash?: Clash;
  readonly status?: number;
}

async function page(
  tank: LoadedTank,
  { row, entry, line }: Found,
  { values, doubts = [], clash, status = 200 }: Shown,
  context: PageContext,
): Promise<PageReply> {
  const history = (await context.store.entryHistory(row.id)).toSorted((a, b) => b.version - a.version);
  const view = {
    head: tank.head,
    line,
    typed: asTyped(entry),
    read: asRead(entry),
    values: values ?? valuesOfEntry(entry),
    doubts,
    clash: clash ?? null,
    scene: { onRecord: onRecord(tank) },
    history: history.flatMap((one) => {
      const version = daybookLineOf(one);
      return version === null
        ? []
        : [{ line: version, written: instantWords(one.stamp.at), by: one.stamp.by }];
    }),
  };
  return { kind: "page", page: entryPage(view), status };
}

async function change(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const one = await find(tank, request, context);
  if (one === null) return NO_ENTRY;
  const sent = sentValues(request.form);
  const { row, entry } = one;
  const go = sent["go"] ?? "correct";
  if (go === "take_away" || go === "bring_back") {
    const kept = go === "bring_back";
    // Done already, by a double tap or by somebody else.
    if (row.kept === kept) return { kind: "redirect", to: after(tank, row) };
    const doubts = kept && row.kind === "reading" ? together(tank, row, context.today) : [];
    if (doubts.length > 0) return await page(tank, one, { doubts, status: 422 }, context);
    return await write(tank, one, sent, { on: row.on, body: row.body, kept }, context);
  }
  const read = readSentEntry(entry.kind, sent, tank, context, row.id);
  if (!read.ok) return await page(tank, one, { values: sent, doubts: read.doubts, status: 422 }, context);
  return await write(tank, one, sent, { on: read.on, body: read.body, kept: row.kept }, context);
}

const after = (tank: LoadedTank, { id }: EntryRow): string => `${to.tank(tank.row.id, "daybook")}?kept=${id}`;

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
  if (saved.kind === "not_found") return NO_ENTRY;
  if (saved.kind === "saved") return { kind: "redirect", to: after(tank, saved.row) };
  const current = found(saved.current);
  if (current === null) return NO_ENTRY;
  const { stamp: theirs, kept } = saved.current;
  const words = `${current.line.sentence} ${dateWords(current.line.on)}${kept ? "" : ", taken away"}`;
  const clash = { theirs: [`${words} (changed ${instantWords(theirs.at)} by ${theirs.by})`] };
  const values = { ...valuesOfEntry(current.entry), ...sent };
  return await page(tank, current, { values, clash, status: 409 }, context);
}
