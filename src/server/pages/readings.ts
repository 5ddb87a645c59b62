/** Readings of a tank: the form and the list, one reading with its history, corrections and what was taken away. */
import { latestReadings } from "../../answers/bench/latest.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { firstUnit } from "../../answers/questions/fields.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { MEASURED_AS, shownIn } from "../../answers/units-shown.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { MEASURED, type Measured } from "../../contract/daybook/reading.ts";
import type { EntryRow, Json } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { readingsPage } from "../../web/pages/readings.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { isOwnKey, keepForm } from "./keep-entry.ts";
import { keptReadings } from "./kept-readings.ts";
import { ofTank } from "./of-tank.ts";
import { stateKey } from "./once.ts";
import { changeReading, showReading } from "./reading.ts";
import { lineOf, readSent } from "./reading-of.ts";
import { sentValues } from "./sent.ts";

export const READING_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/readings", answer: ofTank(show) },
  { method: "POST", path: "/tanks/:tank/readings", answer: ofTank(add) },
  { method: "GET", path: "/tanks/:tank/readings/:entry", answer: ofTank(showReading) },
  { method: "POST", path: "/tanks/:tank/readings/:entry", answer: ofTank(changeReading) },
];

const LINES_SHOWN = 60;

interface Shown {
  readonly quantity: Measured;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
}

async function show(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const quantity = measured(request.query["quantity"]) ?? lastLogged(tank) ?? "temperature_c";
  return await list(
    tank,
    request,
    { quantity, values: { unit: unitFirst(quantity, tank) }, doubts: [] },
    context,
  );
}

const measured = (name: string | undefined): Measured | undefined => MEASURED.find((one) => one === name);

const lastLogged = (tank: LoadedTank): Measured | undefined =>
  keptReadings(tank.readings.slice(0, 1))[0]?.body.quantity;

/** The unit that the keeper reads the quantity in. */
export function unitFirst(quantity: Measured, { document }: LoadedTank): string {
  const { units } = MEASURES[quantity];
  const shownAs = MEASURED_AS[quantity];
  const field = { kind: "text", name: "", label: "", path: "", width: "short", units } as const;
  return firstUnit(shownAs === undefined ? field : { ...field, shownAs }, shownIn(document.preferences));
}

async function list(
  tank: LoadedTank,
  { query }: PageRequest,
  { quantity, values, doubts }: Shown,
  context: PageContext,
  status = 200,
): Promise<PageReply> {
  const { store, today } = context;
  const withRemoved = query["removed"] === "1";
  const after = /^(\d{4}-\d\d-\d\d)_([\w-]+)$/.exec(query["after"] ?? "");
  const rows = await store.entries(tank.row.id, {
    kind: "reading",
    limit: LINES_SHOWN + 1,
    withRemoved,
    ...(after === null ? {} : { after: { on: after[1] ?? "", id: after[2] ?? "" } }),
  });
  const last = rows[LINES_SHOWN - 1];
  const kept = query["kept"] === undefined ? null : await store.entry(query["kept"]);
  const page = readingsPage({
    head: tank.head,
    quantity,
    values,
    doubts,
    ...keyOf(values, tank, rows),
    lines: rows.slice(0, LINES_SHOWN).flatMap((row) => lineOf(row, tank.document) ?? []),
    withRemoved,
    told: latestReadings([], tank.document, tank.notices, today),
    kept: kept === null || kept.tankId !== tank.row.id ? null : lineOf(kept, tank.document),
    older: rows.length > LINES_SHOWN && last !== undefined ? olderThan(tank.row.id, last, withRemoved) : null,
  });
  return { kind: "page", page, status };
}

/** The key that came from a browser's outbox with a form that could not be read; else that of the state. */
function keyOf({ once = "" }: Values, { row: { id: tank } }: LoadedTank, rows: readonly EntryRow[]) {
  if (isOwnKey(once)) return { once, keepsKey: true };
  const state = rows.map(({ id, version }) => [id, version]);
  return { once: stateKey(tank, state), keepsKey: false };
}

const olderThan = (tank: string, { on, id }: EntryRow, withRemoved: boolean): string =>
  `${to.tank(tank, "readings")}?after=${on}_${id}${withRemoved ? "&removed=1" : ""}`;

async function add(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const sent = sentValues(request.form);
  const read = readSent(sent, sent["quantity"] ?? "", tank, context);
  if (!read.ok) {
    const quantity = measured(sent["quantity"]) ?? "temperature_c";
    return await list(tank, request, { quantity, values: sent, doubts: read.doubts }, context, 422);
  }
  const kept = { on: read.on, body: read.body as Json };
  const { id } = await keepForm("reading", sent, kept, tank, context);
  const next = `${to.tank(tank.row.id, "readings")}?kept=${id}&quantity=${read.body.quantity}`;
  return { kind: "redirect", to: next };
}
