/** A row as a keeper's own sheet has it: a day, and figures under their quantities; or one entry with its fields. */
import { ENTRY_FIELDS, KIND_LABELS } from "../daybook/fields.ts";
import { ENTRY_KINDS, type EntryKind } from "../daybook/kinds.ts";
import { MEASURES, readReading } from "../daybook/read-reading.ts";
import type { Choice, Message } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import type { Column } from "./columns.ts";
import { headerKey, measuredIn } from "./columns.ts";
import { type DateHabits, whenText } from "./dates.ts";
import { type FigureHabits, figureText } from "./decimals.ts";
import type { BringInContext, Fault, FileEntry } from "./read.ts";
import { isNothing, looksChanged, unguarded } from "./sheet-text.ts";
import type { TableRow } from "./table.ts";
import type { RowRead } from "./table-file.ts";

export interface SheetHabits {
  readonly columns: readonly Column[];
  readonly dates: DateHabits;
  readonly figures: FigureHabits;
  readonly headers: number;
}

export function readSheetRow(row: TableRow, habits: SheetHabits, context: BringInContext): RowRead {
  const { columns, dates } = habits;
  const cellAt = (index: number) => unguarded(row.cells[index] ?? "").trim();
  const column = (is: (one: Column) => boolean) => columns.find(is);
  const on = column(({ role }) => role.is === "on");
  const time = column(({ role }) => role.is === "time");
  const entered = columns.filter(({ role, number }) => {
    if (role.is === "reading") return !isNothing(cellAt(number - 1));
    return role.is === "field" && cellAt(number - 1) !== "";
  });
  if (entered.length === 0) return { entries: [], faults: [] };
  const raw = cellAt((on?.number ?? 1) - 1);
  if (raw === "") {
    const message: Message = { kind: "MISSING", text: "When: nothing entered. Enter the date of this row" };
    return { entries: [], faults: [fault(row.line, on ?? null, "", message, [])] };
  }
  const when = whenText(raw, time === undefined ? "" : cellAt(time.number - 1), dates);
  const sheet: Sheet = { row, habits, context: inOrder(context, dates), when, on: on ?? null, cellAt };
  return column(({ role }) => role.is === "reading") === undefined
    ? readFields(sheet)
    : readQuantities(sheet);
}

interface Sheet {
  readonly row: TableRow;
  readonly habits: SheetHabits;
  readonly context: BringInContext;
  readonly when: string;
  readonly on: Column | null;
  readonly cellAt: (index: number) => string;
}

/** What was found of the file's dates holds for the reader of dates, which tells what is wrong with one. */
const inOrder = (context: BringInContext, { order }: DateHabits): BringInContext =>
  order === null
    ? context
    : {
        ...context,
        entry: { ...context.entry, preferences: { ...context.entry.preferences, dateOrder: order } },
      };

function readQuantities({ row, habits, context, when, on, cellAt }: Sheet): RowRead {
  const entries: FileEntry[] = [];
  const faults: Fault[] = [];
  let note = cellAt(
    (habits.columns.find(({ role }) => role.is === "field" && role.name === "note")?.number ?? 0) - 1,
  );
  for (const column of habits.columns) {
    const { role, number } = column;
    const cell = cellAt(number - 1);
    if (role.is !== "reading" || isNothing(cell)) continue;
    const text = row.mended?.has(number) === true ? cell : figureText(cell, habits.figures);
    const typed = { quantity: role.quantity, text, unit: role.unit, observed: when, note };
    const read = readReading(typed, context.entry);
    if (read.ok) {
      const { body, on: day, said } = read;
      entries.push({
        place: `${row.line}.${number}`,
        line: row.line,
        entry: null,
        kind: "reading",
        on: day,
        body,
        said,
      });
      // A row has one note: it goes with the first of its readings.
      note = "";
      continue;
    }
    for (const { field, typed: was, message, choices } of read.doubts) {
      const of = field === "observed" ? on : field === "note" ? null : column;
      if (faults.some(({ message: before }) => before.text === message.text)) continue;
      faults.push(fault(row.line, of, was, message, choices));
    }
  }
  if (entries.length === 0 && faults.length === 0 && note !== "") {
    const message: Message = {
      kind: "MISSING",
      text: `Note "${shown(note)}": no figure stands beside it in this row`,
    };
    return { entries, faults: [fault(row.line, null, note, message, [])] };
  }
  return { entries, faults };
}

function readFields({ row, habits, context, when, on, cellAt }: Sheet): RowRead {
  const typed: Record<string, string> = {};
  const columnOf = new Map<string, Column>();
  for (const column of habits.columns) {
    if (column.role.is !== "field") continue;
    columnOf.set(column.role.name, column);
    typed[column.role.name] = cellAt(column.number - 1);
  }
  const { kind: kindText = "", ...fields } = typed;
  const kind = kindText === "" ? "reading" : kindNamed(kindText);
  const faults: Fault[] = [];
  const say = (field: string, was: string, message: Message, choices: readonly Choice[]) =>
    faults.push(
      fault(row.line, field === "observed" ? on : (columnOf.get(field) ?? null), was, message, choices),
    );
  if (kind === null) {
    const choices = ENTRY_KINDS.map((one) => ({ label: KIND_LABELS[one], text: one }));
    const text = `Kind "${shown(kindText)}": must be one of ${ENTRY_KINDS.map((one) => KIND_LABELS[one]).join(", ")}`;
    say("kind", kindText, { kind: "FORMAT", text }, choices);
    return { entries: [], faults };
  }
  const known = new Set(ENTRY_FIELDS[kind].map(({ name }) => name));
  for (const { name, input, label } of ENTRY_FIELDS[kind]) {
    const cell = fields[name];
    if (cell === undefined || input !== "animal" || !looksChanged(cell)) continue;
    const text = `${label} "${shown(cell)}": looks changed by a spreadsheet. What did it say?`;
    say(name, cell, { kind: "FORMAT", text }, []);
  }
  if (faults.length > 0) return { entries: [], faults };
  const entry: Record<string, string> = { observed: when };
  for (const [name, cell] of Object.entries(fields)) {
    if (cell !== "" && (known.has(name) || name.startsWith("trait."))) entry[name] = cell;
  }
  if (kind === "reading") {
    const mended = row.mended?.has(columnOf.get("text")?.number ?? 0) === true;
    if (!mended) entry["text"] = figureText(entry["text"] ?? "", habits.figures);
    const measured = measuredIn(entry["quantity"] ?? "");
    if (measured !== null) entry["quantity"] = measured;
    const units = measured === null ? [] : MEASURES[measured].units;
    const unit = units.find((one) => headerKey(one) === headerKey(entry["unit"] ?? ""));
    if (measured !== null) entry["unit"] = unit ?? entry["unit"] ?? context.columns.unitOf(measured);
  }
  const read = context.readEntry(kind, entry, context.entry);
  if (!read.ok) {
    for (const { field, typed: was, message, choices } of read.doubts) say(field, was, message, choices);
    return { entries: [], faults };
  }
  const { body, on: day, said } = read;
  const { line } = row;
  return { entries: [{ place: String(line), line, entry: null, kind, on: day, body, said }], faults };
}

function kindNamed(text: string): EntryKind | null {
  const key = headerKey(text);
  return (
    ENTRY_KINDS.find((kind) => headerKey(kind) === key || KIND_LABELS[kind].toLowerCase() === key) ?? null
  );
}

function fault(
  line: number,
  column: Column | null,
  typed: string,
  message: Message,
  choices: readonly Choice[],
): Fault {
  return {
    line,
    name: column === null ? null : `cell.${line}.${column.number}`,
    label: column === null ? "Row" : column.header === "" ? `Column ${column.number}` : column.header,
    typed,
    message,
    choices,
  };
}
