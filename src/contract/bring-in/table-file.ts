/**
 * A CSV file read: its separator, its columns, its dates and figures are found first, from the whole of it; then row after
 * row goes through the one reader of entries. Three kinds of table: a daybook taken out, whole; a row an entry, typed; a
 * row a day with a column for each quantity.
 */

import type { Steps } from "../steps.ts";
import { type Answers, type FileQuestion, refuse, type Step } from "./asked.ts";
import { columnsOf } from "./columns.ts";
import { dateHabits } from "./dates.ts";
import { figureHabits } from "./decimals.ts";
import { MOST_FILE_ROWS, tooManyRows } from "./limits.ts";
import type { BringInContext, Fault, FileEntry, FileRead } from "./read.ts";
import { findSeparator, SEPARATORS, withoutBlankEnd } from "./separator.ts";
import { readSheetRow } from "./sheet-row.ts";
import { SoFar } from "./so-far.ts";
import { rowsOf, type TableRow } from "./table.ts";
import { isWholeTable, readWholeRow } from "./whole-row.ts";

const ROWS_A_STEP = 100;
const ROWS_CUT_A_STEP = 2_000;

export interface RowRead {
  readonly entries: readonly FileEntry[];
  readonly faults: readonly Fault[];
}

export function* readTableFile(text: string, answers: Answers, context: BringInContext): Steps<FileRead> {
  const found = findSeparator(text, answers);
  if (found.kind !== "done") return stopped(found, []);
  const { separator, from } = found.value;
  const said = [`${SEPARATORS[separator]} between the columns`];
  const rows: TableRow[] = [];
  try {
    for (const row of rowsOf(text.slice(from), separator)) {
      if (rows.length > MOST_FILE_ROWS) return stopped(refuse("TOOBIG", tooManyRows()), said);
      rows.push(row);
      if (rows.length % ROWS_CUT_A_STEP === 0) yield;
    }
  } catch (error) {
    return stopped(refuse("FORMAT", error instanceof Error ? error.message : String(error)), said);
  }
  const header = rows.shift();
  if (header === undefined) return stopped(refuse("MISSING", "The file is empty"), said);
  const headers = withoutBlankEnd(header.cells).map((cell) => cell.trim());
  const table: Table = { headers, line: header.line, rows };
  if (isWholeTable(headers)) {
    return yield* readRows(table, [...said, "a daybook taken out, whole"], answers, (row) =>
      readWholeRow(row, headers, context),
    );
  }
  return yield* readTyped(table, said, answers, context);
}

export interface Table {
  readonly headers: readonly string[];
  readonly line: number;
  readonly rows: readonly TableRow[];
}

function* readTyped(
  table: Table,
  before: readonly string[],
  answers: Answers,
  context: BringInContext,
): Steps<FileRead> {
  const { headers, rows } = table;
  const hasCells = (index: number) => rows.some(({ cells }) => (cells[index] ?? "").trim() !== "");
  const { columns, questions } = columnsOf(headers, hasCells, context.columns, answers);
  const indexes = (is: string) => columns.flatMap(({ role, number }) => (role.is === is ? [number - 1] : []));
  const when = indexes("on");
  const figures = columns.flatMap(({ role, number }) =>
    role.is === "reading" || (role.is === "field" && role.name === "text") ? [number - 1] : [],
  );
  const { preferences } = context.entry;
  yield;
  const dates = yield* dateHabits(cellsIn(rows, when), preferences.dateOrder, answers);
  yield;
  const signs = yield* figureHabits(cellsIn(rows, figures), preferences, answers);
  yield;
  const open: FileQuestion[] = [...questions];
  if (dates.kind === "asked") open.push(...dates.questions);
  if (signs.kind === "asked") open.push(...signs.questions);
  if (open.length > 0) return { kind: "asked", questions: open, said: before, columns };
  if (when.length !== 1) {
    const words =
      when.length === 0
        ? `Line ${table.line}: no column holds the date. Name one "date"`
        : `Line ${table.line}: ${when.length} columns hold the date. Leave one of them out, or name it otherwise`;
    return stopped(refuse("MISSING", words), before);
  }
  if (figures.length === 0 && !columns.some(({ role }) => role.is === "field" && role.name === "kind")) {
    const names = columns.map(({ header }) => `"${header}"`).join(", ");
    const words = `Line ${table.line}: no column holds a quantity that is measured. It has ${names}. Name one "nitrate", say`;
    return stopped(refuse("MISSING", words), before);
  }
  const soFar = new SoFar(context.entry.onRecord);
  const aware = { ...context, entry: { ...context.entry, onRecord: soFar.onRecord } };
  if (dates.kind !== "done" || signs.kind !== "done")
    return stopped(refuse("FORMAT", "It can't be read"), before);
  const said = [...before, ...[dates.value.said, signs.value.said].filter((words) => words !== null)];
  const read = yield* readRows(table, said, answers, (row) => {
    const one = readSheetRow(
      row,
      { columns, dates: dates.value, figures: signs.value, headers: headers.length },
      aware,
    );
    soFar.note(one.entries);
    return one;
  });
  return read.kind === "read" ? { ...read, columns } : read;
}

function* cellsIn(rows: readonly TableRow[], indexes: readonly number[]): Generator<string> {
  for (const { cells } of rows) for (const index of indexes) yield cells[index] ?? "";
}

function* readRows(
  { headers, rows }: Table,
  said: readonly string[],
  answers: Answers,
  read: (row: TableRow) => RowRead,
): Steps<FileRead> {
  const entries: FileEntry[] = [];
  const faults: Fault[] = [];
  let [faulty, leftOut] = [0, 0];
  const mended = mendedCells(answers);
  for (const [index, found] of rows.entries()) {
    if (index % ROWS_A_STEP === 0) yield;
    const texts = mended.get(found.line);
    // What the file shows of its signs and dates was found without these: they are the keeper's own.
    const row = texts === undefined ? found : withAnswers(found, texts);
    if (answers[`row.${row.line}`] === "leave_out") {
      leftOut += 1;
      continue;
    }
    const cells = withoutBlankEnd(row.cells);
    const one =
      cells.length > headers.length
        ? { entries: [], faults: [ragged(row.line, cells.length, headers)] }
        : read(row);
    // All or none of a row: half a row would have to be found again by hand.
    if (one.faults.length > 0) {
      faulty += 1;
      faults.push(...one.faults);
    } else entries.push(...one.entries);
  }
  return { kind: "read", said, columns: [], rows: rows.length, entries, faults, faulty, leftOut };
}

function ragged(line: number, has: number, headers: readonly string[]): Fault {
  const text = `Line ${line} has ${has} fields, the header ${headers.length}; an unquoted decimal comma? Put quotes around that cell, or a point in it`;
  return { line, name: null, label: "Row", typed: "", message: { kind: "FORMAT", text }, choices: [] };
}

function stopped(step: Exclude<Step<unknown>, { kind: "done" }>, said: readonly string[]): FileRead {
  return step.kind === "refused" ? step : { kind: "asked", questions: step.questions, said, columns: [] };
}

/** Cells for which the keeper gave another text: line → column → text. */
function mendedCells(answers: Answers): ReadonlyMap<number, ReadonlyMap<number, string>> {
  const mended = new Map<number, Map<number, string>>();
  for (const [name, text] of Object.entries(answers)) {
    const match = /^cell\.(\d{1,9})\.(\d{1,4})$/.exec(name);
    if (match === null || text.trim() === "") continue;
    const [line, column] = [Number(match[1]), Number(match[2])];
    mended.set(line, (mended.get(line) ?? new Map()).set(column, text));
  }
  return mended;
}

function withAnswers(row: TableRow, mended: ReadonlyMap<number, string>): TableRow {
  const cells = [...row.cells];
  for (const [column, text] of mended) cells[column - 1] = text;
  return { line: row.line, cells: Array.from(cells, (cell) => cell ?? ""), mended };
}
