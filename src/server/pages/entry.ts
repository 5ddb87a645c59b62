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
import { type EntryView, entryPage } from "../../web/pages/entry.tsx";
import type { FormScene } from "../../web/pages/entry-form.tsx";
import { entryFormPage } from "../../web/pages/entry-form-page.tsx";
import type { Clash } from "../../web/pages/question.tsx";
import { changeEntry, isChecked, otherHalf } from "../moves/keep.ts";
import { tanksBeside } from "../moves/other-tanks.ts";
import { nameOf } from "../name-of.ts";
import { arrivedPictures } from "../pictures/arrived.ts";
import { type PicturesAsked, picturesView } from "../pictures/view.ts";
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
import { isOwnKey, keepForm, keptBefore } from "./keep-entry.ts";
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
  // Which of its two tanks a move asks for: the one they go to, or the one they come from.
  if (kind === "move" && request.query["way"] === "in") values["from"] ??= "";
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
    scene: await sceneOf(kind, tank, context),
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

/** What the form of a kind knows of its tank. */
async function sceneOf(kind: EntryKind, tank: LoadedTank, { store }: PageContext): Promise<FormScene> {
  const beside = kind === "move" ? await tanksBeside(store, tank.row.id) : [];
  return {
    onRecord: onRecord(tank),
    tanks: beside.map((row) => ({ id: row.id, name: nameOf(row), keeper: row.keeper.name })),
  };
}

async function add(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const kind = entryKindOf(request.params["kind"]);
  if (kind === undefined) return NO_KIND;
  const sent = sentValues(request.form);
  const read = await readSentEntry(kind, sent, tank, context);
  const done = read.ok
    ? await keepForm(kind, sent, read, tank, context)
    : await keptBefore(kind, sent, tank, context);
  if (done === null || done.refused !== undefined) {
    const doubts = read.ok ? [doubtOf(done?.refused ?? "")] : read.doubts;
    return await form(tank, kind, sent, doubts, context, 422);
  }
  return { kind: "redirect", to: `${to.tank(tank.row.id, "daybook")}?kept=${done.id}` };
}

/** What only the write could tell: of a move, that one of the two records does not have so many. */
const doubtOf = (refused: string): FieldDoubt => ({ field: "count", text: refused, choices: [] });

interface Found {
  readonly row: EntryRow;
  readonly entry: DaybookEntry;
  readonly line: DaybookLine;
}

function foundIn(row: EntryRow): Found | null {
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
  return row === null || row.tankId !== tank.row.id ? null : foundIn(row);
}

async function show(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const one = await find(tank, request, context);
  const pictures = { picture: request.query["picture"] };
  return one === null ? NO_ENTRY : await page(tank, one, { pictures }, context);
}

/** Its page again, after a picture that could not be kept. */
export async function entryPageOf(
  tank: LoadedTank,
  row: EntryRow,
  pictures: PicturesAsked,
  context: PageContext,
): Promise<PageReply> {
  const one = foundIn(row);
  return one === null ? NO_ENTRY : await page(tank, one, { pictures, status: 422 }, context);
}

interface Shown {
  readonly values?: Values;
  readonly doubts?: readonly FieldDoubt[];
  readonly clash?: Clash;
  readonly status?: number;
  readonly pictures?: PicturesAsked;
}

async function page(
  tank: LoadedTank,
  { row, entry, line }: Found,
  { values, doubts = [], clash, status = 200, pictures = {} }: Shown,
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
    scene: await sceneOf(entry.kind, tank, context),
    beside: await besideOf(entry, context),
    pictures: await picturesView(tank.row.id, row, pictures, context.store),
    arrived: await arrivedPictures(entry, tank.entries, context.store),
    history: history.flatMap((one) => {
      const version = daybookLineOf(one);
      return version === null
        ? []
        : [{ line: version, written: instantWords(one.stamp.at), by: one.stamp.by }];
    }),
  };
  return { kind: "page", page: entryPage(view), status };
}

/** The other half of a move, where it is in this store. */
async function besideOf(
  { kind, id, body }: DaybookEntry,
  { store }: PageContext,
): Promise<EntryView["beside"]> {
  const half = kind === "move" ? await otherHalf(store, id) : null;
  const tank = half === null ? null : await store.tank(half.tankId);
  if (kind !== "move" || half === null || tank?.kept !== true) return null;
  return { tank: tank.id, entry: half.id, name: body.to_text ?? body.from_text ?? nameOf(tank) };
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
  const read = await readSentEntry(entry.kind, sent, tank, context, row.id);
  if (!read.ok) return await page(tank, one, { values: sent, doubts: read.doubts, status: 422 }, context);
  return await write(tank, one, sent, { on: read.on, body: read.body, kept: row.kept }, context);
}

const after = (tank: LoadedTank, { id }: EntryRow): string => `${to.tank(tank.row.id, "daybook")}?kept=${id}`;

async function write(
  tank: LoadedTank,
  found: Found,
  sent: Values,
  change: { readonly on: string; readonly body: Json; readonly kept: boolean },
  context: PageContext,
): Promise<PageReply> {
  const { row } = found;
  const same =
    JSON.stringify([row.on, row.body, row.kept]) === JSON.stringify([change.on, change.body, change.kept]);
  if (same) return { kind: "redirect", to: after(tank, row) };
  const stamp = { at: context.now, by: tank.row.keeper.name };
  const hand = { stamp, today: context.today, beyondRecord: isChecked(sent["count"] ?? "") };
  const saved = await context.store.together((desk) => changeEntry(desk, row, versionOf(sent), change, hand));
  if (saved.kind === "not_found") return NO_ENTRY;
  if (saved.kind === "refused") {
    const { go: _, ...typed } = sent;
    const values = "count" in typed ? { values: typed } : {};
    return await page(
      tank,
      found,
      { ...values, doubts: [doubtOf(`${saved.because}.`)], status: 422 },
      context,
    );
  }
  if (saved.kind === "saved") return { kind: "redirect", to: after(tank, saved.row) };
  const current = foundIn(saved.current);
  if (current === null) return NO_ENTRY;
  const { stamp: theirs, kept } = saved.current;
  const words = `${current.line.sentence} ${dateWords(current.line.on)}${kept ? "" : ", taken away"}`;
  const clash = { theirs: [`${words} (changed ${instantWords(theirs.at)} by ${theirs.by})`] };
  const values = { ...valuesOfEntry(current.entry), ...sent };
  return await page(tank, current, { values, clash, status: 409 }, context);
}
