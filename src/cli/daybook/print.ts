/** A daybook for people: a day, and under it a sentence an entry. */
import { counted, wrap } from "../../answers/words.ts";
import { inWordsDate } from "../../contract/quantity/calendar.ts";
import { shown } from "../../contract/quantity/show.ts";
import type { EntryRow } from "../../store/store.ts";
import type { Io } from "../io.ts";

/** `rows`: latest first. `more`: earlier ones were left out. */
export async function printDaybook(
  name: string,
  rows: readonly EntryRow[],
  more: boolean,
  io: Io,
): Promise<void> {
  if (rows.length === 0) {
    io.out(`${name}: no entries.`);
    return;
  }
  io.out(`${io.bold(name)}: ${counted(rows.length, "entry")}, the latest first.`);
  let day = "";
  for (const row of rows) {
    if (row.on !== day) io.out(`\n${io.bold(inWordsDate(row.on))}`);
    day = row.on;
    for (const line of await entryLines(row)) io.out(wrap(line, io.width, "  ", "    "));
  }
  if (more) io.out("\nThere are earlier ones: --limit or --to shows them.");
}

/** The entry in a sentence, as the page has it; then what is dangerous or unusual, then the note. */
export async function entryLines(row: EntryRow): Promise<string[]> {
  const { daybookLineOf } = await import("../../server/pages/entry-of.ts");
  const line = daybookLineOf(row);
  if (line === null) return [`An entry of a kind that this program does not know: "${shown(row.kind)}".`];
  const flag =
    line.flag === null ? [] : [`${line.flag.kind === "danger" ? "Danger" : "Unusual"}: ${line.flag.words}`];
  const note = line.note === null ? [] : [`Note: ${line.note.replace(/\s+/g, " ")}`];
  return [line.sentence, ...flag, ...note];
}
