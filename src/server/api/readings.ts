/** Readings: list, keep, look at, correct, take away, bring back, history. */
import type { z } from "zod";
import type { ReadingText, ReadReading } from "../../contract/daybook/read-reading.ts";
import { MEASURES, readReading } from "../../contract/daybook/read-reading.ts";
import type { ReadingBody } from "../../contract/daybook/reading.ts";
import { API_ROOT } from "../../contract/http/openapi.ts";
import type { NewReading, ReadingView, readingQuery, readingSaved } from "../../contract/http/readings.ts";
import { decimalSign } from "../../contract/quantity/preferences.ts";
import type { EntryRow, Saved } from "../../store/store.ts";
import { loaded } from "../load-tank.ts";
import { readingContextOf } from "../reading-context.ts";
import type { LoadedTank } from "../route.ts";
import { agoWords } from "./ago.ts";
import { type Call, fault, type Handler, mend, notFound, type Result } from "./call.ts";
import { conflict, onceOnly } from "./once.ts";
import { keptTank, stampOf } from "./tanks.ts";

const KIND = "reading";
const USUALLY_LISTED = 200;

export const listReadings: Handler = async (call) => {
  const tank = await keptTank(call);
  const {
    from,
    to,
    limit = USUALLY_LISTED,
    after_on,
    after_id,
    removed,
  } = call.query as z.infer<typeof readingQuery>;
  if ((after_on === undefined) !== (after_id === undefined)) {
    throw mend(400, [
      fault("/after_on", "MISSING", "after_on and after_id are given together, as next gave them"),
    ]);
  }
  const rows = await call.context.store.entries(tank.id, {
    kind: KIND,
    limit: limit + 1,
    withRemoved: removed === "yes",
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(after_on === undefined || after_id === undefined ? {} : { after: { on: after_on, id: after_id } }),
  });
  const given = rows.slice(0, limit);
  const last = rows.length > limit ? given.at(-1) : undefined;
  const next = last === undefined ? null : { after_on: last.on, after_id: last.id };
  return { status: 200, body: { readings: given.map(viewOf), next } };
};

export const addReading: Handler = async (call) => {
  const tank = await readTank(call);
  const read = taken(call.body as NewReading, tank, call);
  const id = call.context.newId();
  return onceOnly(call, async (desk) => {
    await keptTank(call, desk);
    const entry = { id, kind: KIND, on: read.on, body: read.body };
    const [row] = await desk.addEntries(tank.row.id, [entry], stampOf(call));
    if (row === undefined) throw new Error("The store kept no reading and said nothing");
    const location = `${API_ROOT}/tanks/${tank.row.id}/readings/${id}`;
    return { status: 201, body: savedOf(row, read), version: row.version, location };
  });
};

export const oneReading: Handler = async (call) => {
  const row = await entryOf(call);
  if (!row.kept) throw notFound();
  return of(row);
};

export const correctReading: Handler = async (call) => {
  const tank = await readTank(call);
  const before = await entryOf(call);
  const sent = call.body as NewReading;
  const read = taken(sent, tank, call);
  const saved = await call.context.store.correctEntry(
    before.id,
    call.from,
    { on: read.on, body: read.body, kept: true },
    stampOf(call),
  );
  const row = correctedOr(saved, call, read.body.text);
  return { status: 200, body: savedOf(row, read), version: row.version };
};

const keeping =
  (kept: boolean): Handler =>
  async (call) => {
    await keptTank(call);
    const { id, on, body } = await entryOf(call);
    const saved = await call.context.store.correctEntry(id, call.from, { on, body, kept }, stampOf(call));
    return of(correctedOr(saved, call, null));
  };
export const takeReadingAway = keeping(false);
export const bringReadingBack = keeping(true);

export const readingHistory: Handler = async (call) => {
  const { id } = await entryOf(call);
  const rows = await call.context.store.entryHistory(id);
  return { status: 200, body: { versions: rows.map(viewOf) } };
};

const of = (row: EntryRow): Result => ({ status: 200, body: viewOf(row), version: row.version });

/** The tank without its readings: they say nothing of how another is read. */
async function readTank(call: Call): Promise<LoadedTank> {
  return loaded(await keptTank(call), [], call.context.today);
}

/** A reading of this very tank, also one taken away. */
async function entryOf(call: Call): Promise<EntryRow> {
  const tank = await keptTank(call);
  const row = await call.context.store.entry(call.params["reading"] ?? "");
  if (row === null || row.tankId !== tank.id || row.kind !== KIND) throw notFound();
  return row;
}

type Read = Extract<ReadReading, { ok: true }>;

/** @throws ProblemError with every doubt and its choices */
function taken(sent: NewReading, tank: LoadedTank, { context }: Call): Read {
  const tankContext = readingContextOf(tank, context);
  const sign = decimalSign(tankContext.preferences.locale);
  const read = readReading(asTyped(sent, sign), tankContext);
  if (read.ok) return read;
  const faults = read.doubts.map(({ field, typed, message, choices }) => ({
    pointer: field === "text" && sent.text === undefined ? "/value" : `/${field}`,
    kind: message.kind,
    detail: message.text,
    typed,
    allowed: [],
    choices,
  }));
  throw mend(422, faults);
}

/** A number as a keeper of those habits would type it, with the unit it is in. */
function asTyped(sent: NewReading, sign: string): ReadingText {
  const { quantity, value, text, unit, kit_step, observed, note } = sent;
  if ((value === undefined) === (text === undefined)) {
    const detail = "value: give either value, a number, or text, as typed";
    throw mend(400, [fault("/value", value === undefined ? "MISSING" : "CONFLICT", detail)]);
  }
  const own = MEASURES[quantity].units[0];
  const typedUnit = unit ?? (value === undefined ? undefined : own);
  return {
    quantity,
    text: text ?? plain(value ?? 0, sign),
    ...(typedUnit === undefined ? {} : { unit: typedUnit }),
    ...(kit_step === undefined
      ? {}
      : { kit_step: typeof kit_step === "number" ? plain(kit_step, sign) : kit_step }),
    ...(observed === undefined ? {} : { observed }),
    ...(note === undefined ? {} : { note }),
  };
}

/** All its digits, no exponent, the keeper's decimal sign. */
const plain = (value: number, sign: string): string =>
  value.toLocaleString("en", { useGrouping: false, maximumSignificantDigits: 17 }).replace(".", sign);

function viewOf({ id, tankId, on, version, kept, stamp, body }: EntryRow): ReadingView {
  return {
    id,
    tank: tankId,
    on,
    version,
    kept,
    changed_at: stamp.at,
    changed_by: stamp.by,
    // Judged when it was kept, and read by nobody since.
    ...(body as ReadingBody),
  };
}

function savedOf(row: EntryRow, { said }: Read): z.infer<typeof readingSaved> {
  return { reading: viewOf(row), said: said.map(({ kind, text }) => ({ kind, message: text })) };
}

/** `typed`: what would be saved instead; null where the change was not of a figure. @throws ProblemError */
function correctedOr(saved: Saved<EntryRow>, { context }: Call, typed: string | null): EntryRow {
  if (saved.kind === "saved") return saved.row;
  if (saved.kind === "not_found") throw notFound();
  const { current } = saved;
  const { text } = current.body as ReadingBody;
  const when = agoWords(current.stamp.at, context.now);
  const now = current.kept ? `to ${text}` : "by taking it away";
  const question =
    typed === null ? "Look at it, and send your change again." : `Keep ${text}, or save ${typed}?`;
  const choices = typed === null ? [] : [keep(text), { label: `Save ${typed}`, text: typed }];
  throw conflict(`Changed ${when} ${now}. ${question}`, viewOf(current), choices);
}

const keep = (text: string) => ({ label: `Keep ${text}`, text });
