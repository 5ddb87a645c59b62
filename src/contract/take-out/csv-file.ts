/** A daybook as CSV: a row an entry, or the readings alone as a sheet has them, a row a time and a column a quantity. */

import { guarded } from "../bring-in/sheet-text.ts";
import type { EntryKind } from "../daybook/kinds.ts";
import { MEASURES, withUnit } from "../daybook/read-reading.ts";
import { MEASURED, type Measured, type ReadingBody } from "../daybook/reading.ts";
import { isKept } from "../quantity/outcome.ts";
import type { Preferences } from "../quantity/preferences.ts";
import { bodyColumns, cellsOf, HEAD, unitIn } from "./columns.ts";
import { csvLine } from "./csv.ts";
import type { TakenEntry } from "./taken.ts";

const READINGS_A_STEP = 200;
/** So that spreadsheets take it for UTF-8. */
const MARK = "\ufeff";

/** @param kinds those among the entries: the header names their fields */
export function* csvPieces(kinds: Iterable<EntryKind>, entries: Iterable<TakenEntry>): Generator<string> {
  const columns = bodyColumns(kinds);
  yield MARK + csvLine([...HEAD, ...columns]);
  for (const { id, kind, on, body } of entries) {
    const cells = cellsOf(kind, body);
    yield csvLine([kind, on, id, ...columns.map((name) => cells.get(name) ?? "")]);
  }
}

/**
 * Readings as a sheet: the unit stands in the header, and in a cell only where it is another. Two of one quantity and
 * time stand in two rows. Notes and steps of kits are left out: the other forms carry them.
 */
export function* sheetPieces(entries: Iterable<TakenEntry>, preferences: Preferences): Generator<string> {
  const readings = [...entries].filter((entry) => entry.kind === "reading");
  const present = MEASURED.filter((quantity) => readings.some(({ body }) => body.quantity === quantity));
  const names = present.map((quantity) => {
    const unit = unitIn(quantity);
    return `${MEASURES[quantity].label}${unit === "" ? "" : ` (${unit})`}`;
  });
  yield MARK + csvLine(["date", ...names]);
  const rows: { readonly when: string; readonly texts: Map<Measured, string> }[] = [];
  const open = new Map<string, typeof rows>();
  for (const [i, { on, body }] of readings.entries()) {
    // Nothing yet, but a turn for others.
    if (i % READINGS_A_STEP === 0) yield "";
    const when = whenWritten(on, body);
    const ofTime = open.get(when) ?? [];
    let row = ofTime.find(({ texts }) => !texts.has(body.quantity));
    if (row === undefined) {
      row = { when, texts: new Map() };
      rows.push(row);
      open.set(when, [...ofTime, row]);
    }
    row.texts.set(body.quantity, inHeadersUnit(body, preferences));
  }
  for (const { when, texts } of rows) {
    yield csvLine([when, ...present.map((quantity) => cellOf(texts.get(quantity)))]);
  }
}

const cellOf = (text: string | undefined): string => (text === undefined ? "" : guarded(text));

/** The instant where one was said, a local time as it was typed, else the day. */
export function whenWritten(
  on: string,
  { observed_at, observed_text }: Pick<ReadingBody, "observed_at" | "observed_text">,
): string {
  if (observed_at !== null) return observed_at;
  const local = /^\s*(\d{4}-\d\d-\d\d)[T ](\d\d:\d\d(?::\d\d)?)\s*$/.exec(observed_text);
  return local !== null && local[1] === on ? `${on}T${local[2]}` : on;
}

/** Without its unit where the header's would be put behind it again; with the one it was read in where that is another. */
function inHeadersUnit(body: ReadingBody, preferences: Preferences): string {
  const { quantity, text } = body;
  const unit = unitIn(quantity);
  const bare = text.replace(/\s*\(checked\)$/i, "").endsWith(` ${unit}`)
    ? text.replace(` ${unit}`, "")
    : text;
  if (bare !== text) return withUnit(bare, unit, preferences) === text ? bare : text;
  // A bare "77" may have been understood as 77 F: under a header in C it would be refused.
  if (readsAs(body, withUnit(text, unit, preferences), preferences)) return text;
  const others = MEASURES[quantity].units.map((other) => withUnit(text, other, preferences));
  return others.find((other) => readsAs(body, other, preferences)) ?? text;
}

function readsAs({ quantity, value }: ReadingBody, text: string, preferences: Preferences): boolean {
  const { read, toNamed = (canonical) => canonical } = MEASURES[quantity];
  const outcome = read(`${text.replace(/\s*\(checked\)$/i, "")} (checked)`, { preferences, stocked: true });
  return isKept(outcome) && Math.abs(toNamed(outcome.value.high) - value.high) <= 1e-9 * Math.abs(value.high);
}
