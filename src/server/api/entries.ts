/** Entries of the daybook, of every kind: list, keep, look at, correct, take away, bring back, history. */
import type { z } from "zod";
import { entryContext } from "../../answers/record/entry-context.ts";
import { type EntryBody, type EntryKind, entryOfRow } from "../../contract/daybook/kinds.ts";
import { type EntryText, type ReadEntry, readEntry } from "../../contract/daybook/read-entry.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { MEASURED } from "../../contract/daybook/reading.ts";
import type { EntryView, entryQuery, entrySaved, NewEntry } from "../../contract/http/entries.ts";
import { API_ROOT } from "../../contract/http/openapi.ts";
import { decimalSign } from "../../contract/quantity/preferences.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import type { EntryRow, Json, Saved } from "../../store/store.ts";
import { rankedWith } from "../bench-scene.ts";
import { adviceAsked } from "../moves/advice-asked.ts";
import { changeEntry, type Hand, isChecked, keepEntry, type Refused } from "../moves/keep.ts";
import { otherTanks } from "../moves/other-tanks.ts";
import type { LoadedTank } from "../route.ts";
import { agoWords } from "./ago.ts";
import { type Call, fault, type Handler, mend, notFound, type Result } from "./call.ts";
import { answeredBefore, conflict, onceOnly } from "./once.ts";
import { keptTank, stampOf } from "./tanks.ts";

const USUALLY_LISTED = 200;

export const listEntries: Handler = async (call) => {
  const tank = await keptTank(call);
  const query = call.query as z.infer<typeof entryQuery>;
  const { kind, from, to, limit = USUALLY_LISTED, after_on, after_id, removed } = query;
  if ((after_on === undefined) !== (after_id === undefined)) {
    throw mend(400, [
      fault("/after_on", "MISSING", "after_on and after_id are given together, as next gave them"),
    ]);
  }
  const rows = await call.context.store.entries(tank.id, {
    limit: limit + 1,
    withRemoved: removed === "yes",
    ...(kind === undefined ? {} : { kind }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(after_on === undefined || after_id === undefined ? {} : { after: { on: after_on, id: after_id } }),
  });
  const given = rows.slice(0, limit);
  const last = rows.length > limit ? given.at(-1) : undefined;
  const next = last === undefined ? null : { after_on: last.on, after_id: last.id };
  // An entry that a newer program kept is in the store, but this one can't tell it.
  const known = given.filter((row) => entryOfRow(row) !== null);
  return { status: 200, body: { entries: known.map(viewOf), next } };
};

export const addEntry: Handler = async (call) => {
  const tank = await loadedTank(call);
  const sent = call.body as NewEntry;
  let read: Read;
  try {
    read = await taken(sent, tank, call, null);
  } catch (error) {
    // Of a loss or a move sent again the record has fewer now: that it was kept is the answer all the same.
    const before = await answeredBefore(call);
    if (before === null) throw error;
    return before;
  }
  const id = call.context.newId();
  return onceOnly(call, async (desk) => {
    await keptTank(call, desk);
    const entry = { id, kind: sent.kind, on: read.on, body: read.body as Json };
    const added = await keepEntry(desk, tank.row.id, entry, handOf(call, sent));
    if (added.kind === "refused") throw refusedBy(added);
    const { row } = added;
    const location = `${API_ROOT}/tanks/${tank.row.id}/entries/${id}`;
    return { status: 201, body: savedOf(row, read), version: row.version, location };
  });
};

export const oneEntry: Handler = async (call) => {
  const row = await entryOf(call);
  if (!row.kept) throw notFound();
  return of(row);
};

export const correctEntry: Handler = async (call) => {
  const tank = await loadedTank(call);
  const before = await entryOf(call);
  const sent = call.body as NewEntry;
  if (sent.kind !== before.kind) {
    const detail = `Kind of entry "${sent.kind}": it was kept as ${before.kind}. Take it away, and add another`;
    throw mend(422, [{ ...fault("/kind", "CONFLICT", detail), typed: sent.kind, allowed: [before.kind] }]);
  }
  const read = await taken(sent, tank, call, before.id);
  const change = { on: read.on, body: read.body as Json, kept: true };
  const row = await changed(call, before, change, sent);
  return { status: 200, body: savedOf(row, read), version: row.version };
};

const keeping =
  (kept: boolean): Handler =>
  async (call) => {
    await keptTank(call);
    const row = await entryOf(call);
    return of(await changed(call, row, { on: row.on, body: row.body, kept }));
  };
export const takeEntryAway = keeping(false);
export const bringEntryBack = keeping(true);

export const entryHistory: Handler = async (call) => {
  const { id } = await entryOf(call);
  const rows = await call.context.store.entryHistory(id);
  return { status: 200, body: { versions: rows.filter((row) => entryOfRow(row) !== null).map(viewOf) } };
};

/** @throws ProblemError where another version came first, or it can't be */
async function changed(
  call: Call,
  row: EntryRow,
  change: Pick<EntryRow, "on" | "body" | "kept">,
  sent: NewEntry | null = null,
): Promise<EntryRow> {
  const saved = await call.context.store.together((desk) =>
    changeEntry(desk, row, call.from, change, handOf(call, sent)),
  );
  if (saved.kind === "refused") throw refusedBy(saved);
  return correctedOr(saved, call);
}

const handOf = (call: Call, sent: NewEntry | null): Hand => ({
  stamp: stampOf(call),
  newId: call.context.newId,
  today: call.context.today,
  beyondRecord: isChecked(String(sent?.["count"] ?? "")),
});

const refusedBy = ({ because }: Refused) => mend(422, [fault("/count", "CONFLICT", `${because}.`)]);

const of = (row: EntryRow): Result => ({ status: 200, body: viewOf(row), version: row.version });

async function loadedTank(call: Call): Promise<LoadedTank> {
  const tank = await call.context.loadTank(call.params["tank"] ?? "");
  if (tank === null) throw notFound();
  return tank;
}

/** An entry of this very tank, also one taken away. */
async function entryOf(call: Call): Promise<EntryRow> {
  const tank = await keptTank(call);
  const row = await call.context.store.entry(call.params["entry"] ?? "");
  if (row === null || row.tankId !== tank.id || entryOfRow(row) === null) throw notFound();
  return row;
}

type Read = Extract<ReadEntry, { ok: true }>;

/** `correcting`: the entry that it takes the place of. @throws ProblemError with every doubt and its choices */
async function taken(
  sent: NewEntry,
  tank: LoadedTank,
  { context }: Call,
  correcting: string | null,
): Promise<Read> {
  const sign = decimalSign(preferencesOf(tank.document.preferences).locale);
  const typed = asTyped(sent, sign);
  const findTank = await otherTanks(sent.kind, typed, tank, context, correcting);
  const rank = async (id: string) => (await rankedWith(id, tank, context)).ranked;
  const asked = await adviceAsked(sent.kind, typed, tank, rank, correcting);
  const read = readEntry(sent.kind, typed, entryContext(tank, context, { correcting, findTank, asked }));
  if (read.ok) return read;
  throw mend(
    422,
    read.doubts.map(({ field, typed, message, choices }) => ({
      pointer: `/${field.replace(/^trait\./, "traits/")}`,
      kind: message.kind,
      detail: message.text,
      typed,
      allowed: [],
      choices,
    })),
  );
}

/** Numbers and yes or no as a keeper of those habits would type them. */
function asTyped({ kind, ...sent }: NewEntry, sign: string): EntryText {
  const texts: Record<string, string> = {};
  for (const [name, value] of Object.entries(sent)) {
    if (typeof value === "object") {
      for (const [trait, seen] of Object.entries(value)) texts[`trait.${trait}`] = seen ? "yes" : "no";
    } else if (value !== undefined) texts[name] = textOf(value, sign);
  }
  return kind === "reading" && typeof sent["text"] === "number" ? inOwnUnit(texts) : texts;
}

function textOf(value: string | number | boolean, sign: string): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  return value.toLocaleString("en", { useGrouping: false, maximumSignificantDigits: 17 }).replace(".", sign);
}

/** A bare number is in the unit that the quantity's name ends in. */
function inOwnUnit(texts: Readonly<Record<string, string>>): EntryText {
  const quantity = MEASURED.find((name) => name === texts["quantity"]);
  const [own] = quantity === undefined ? [] : MEASURES[quantity].units;
  return own === undefined || texts["unit"] !== undefined ? texts : { ...texts, unit: own };
}

function viewOf({ id, tankId, kind, on, version, kept, stamp, body }: EntryRow): EntryView {
  return {
    id,
    tank: tankId,
    kind: kind as EntryKind,
    on,
    version,
    kept,
    changed_at: stamp.at,
    changed_by: stamp.by,
    // Judged when it was kept.
    body: body as EntryBody,
  } as EntryView;
}

function savedOf(row: EntryRow, { said }: Read): z.infer<typeof entrySaved> {
  return { entry: viewOf(row), said: said.map(({ kind, text }) => ({ kind, message: text })) };
}

/** @throws ProblemError */
function correctedOr(saved: Saved<EntryRow>, { context }: Call): EntryRow {
  if (saved.kind === "saved") return saved.row;
  if (saved.kind === "not_found") throw notFound();
  const { current } = saved;
  const when = agoWords(current.stamp.at, context.now);
  const how = current.kept ? "" : " by taking it away";
  throw conflict(`Changed ${when}${how}. Look at it, and send your change again.`, viewOf(current));
}
