/** A row of a daybook that was taken out as CSV, read back to the very entry it was written from. */
import { ENTRY_KINDS, type EntryKind } from "../daybook/kinds.ts";
import { bodyOf, HEAD } from "../take-out/columns.ts";
import type { BringInContext, Fault } from "./read.ts";
import { unguarded } from "./sheet-text.ts";
import type { TableRow } from "./table.ts";
import type { RowRead } from "./table-file.ts";
import { readWholeEntry } from "./whole.ts";

/** Only a daybook that was taken out tells when as it was typed beside the day. */
export const isWholeTable = (headers: readonly string[]): boolean =>
  [...HEAD, "observed_text"].every((name) => headers.includes(name));

export function readWholeRow(
  { line, cells }: TableRow,
  headers: readonly string[],
  context: BringInContext,
): RowRead {
  const cell = (name: string): string => cells[headers.indexOf(name)] ?? "";
  const kind = cell("kind").trim();
  const body = ENTRY_KINDS.includes(kind as EntryKind) ? bodyOf(kind as EntryKind, cell) : {};
  const read = readWholeEntry(kind, cell("on").trim(), body, context);
  if (read.ok) {
    const id = unguarded(cell("entry"));
    return {
      entries: [
        { ...read.entry, place: String(line), line, entry: id === "" || id.length > 200 ? null : id },
      ],
      faults: [],
    };
  }
  const faults = read.doubts.map(({ field, typed, message }): Fault => {
    const index = [field, `${field}_text`].map((name) => headers.indexOf(name)).find((at) => at >= 0);
    const name = index === undefined ? null : `cell.${line}.${index + 1}`;
    return { line, name, label: field, typed, message, choices: [] };
  });
  return { entries: [], faults };
}
