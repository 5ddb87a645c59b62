/**
 * The columns of a daybook written as CSV: one row an entry, a column for each field of the kinds in it, by the names of
 * the kept bodies. Figures stand in the unit that their name, or the column `unit`, tells. Read back, a row gives the
 * very body it was written from.
 */
import type { z } from "zod";
import { guarded, unguarded } from "../bring-in/sheet-text.ts";
import { ENTRY_BODIES, ENTRY_KINDS, type EntryKind } from "../daybook/kinds.ts";
import { MEASURES } from "../daybook/read-reading.ts";
import { MEASURED, type Measured } from "../daybook/reading.ts";

/** Columns that every row has, before those of its body. */
export const HEAD = ["kind", "on", "entry"] as const;

type Cell = "text" | "number" | "yes_no" | "json";

interface BodyColumn {
  /** Path in the body: `value.low`. */
  readonly path: readonly string[];
  readonly cell: Cell;
  readonly nullable: boolean;
  /** May be left out: the kind says what it is then. */
  readonly optional: boolean;
}

interface Def {
  readonly type: string;
  readonly innerType?: z.ZodType;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
}
const CELLS: Readonly<Record<string, Cell>> = {
  number: "number",
  boolean: "yes_no",
  record: "json",
  array: "json",
};

const COLUMNS = Object.fromEntries(
  ENTRY_KINDS.map((kind) => [kind, columnsIn(ENTRY_BODIES[kind] as z.ZodType, [])]),
) as unknown as Readonly<Record<EntryKind, readonly BodyColumn[]>>;

const nameOf = ({ path }: Pick<BodyColumn, "path">): string => path.join("_");

function columnsIn(
  schema: z.ZodType,
  path: readonly string[],
  nullable = false,
  optional = false,
): BodyColumn[] {
  const { def } = schema as unknown as { readonly def: Def };
  if (def.innerType !== undefined) {
    const isNull = def.type === "nullable";
    return columnsIn(def.innerType, path, nullable || isNull, optional || !isNull);
  }
  if (def.type === "object") {
    return Object.entries(def.shape ?? {}).flatMap(([name, part]) => columnsIn(part, [...path, name]));
  }
  return [{ path, cell: CELLS[def.type] ?? "text", nullable, optional }];
}

/** Fields of a kind's body that may be null, each so; nothing for a kind that there is not. */
export function nullsOf(kind: string): Readonly<Record<string, null>> {
  if (!Object.hasOwn(COLUMNS, kind)) return {};
  const nullable = COLUMNS[kind as EntryKind].filter(
    (column) => column.nullable && !column.optional && column.path.length === 1,
  );
  return Object.fromEntries(nullable.map(({ path }) => [path[0] ?? "", null]));
}

/** Names of the body's columns for these kinds, `note` last; `unit` tells what the figures of a reading are in. */
export function bodyColumns(kinds: Iterable<EntryKind>): string[] {
  const names = new Set<string>();
  for (const kind of kinds) {
    for (const column of COLUMNS[kind]) names.add(nameOf(column));
    if (kind === "reading") names.add("unit");
  }
  names.delete("note");
  return [...names, "note"];
}

/** Unit of the figures of a reading's body: that in which the quantity's name ends. */
export const unitIn = (quantity: Measured): string => MEASURES[quantity].units[0] ?? "";

/** Cells of a body by column, as they stand in the file, before quotes. */
export function cellsOf(kind: EntryKind, body: Readonly<Record<string, unknown>>): Map<string, string> {
  const cells = new Map<string, string>();
  for (const column of COLUMNS[kind]) {
    const value = at(body, column.path);
    if (value !== null && value !== undefined) cells.set(nameOf(column), written(value, column.cell));
  }
  const quantity = MEASURED.find((one) => kind === "reading" && one === body["quantity"]);
  if (quantity !== undefined) cells.set("unit", unitIn(quantity));
  return cells;
}

const at = (body: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((part, name) => (part as Readonly<Record<string, unknown>> | undefined)?.[name], body);

function written(value: unknown, cell: Cell): string {
  if (cell === "number") return String(value);
  if (cell === "yes_no") return value === true ? "yes" : "no";
  return cell === "json" ? JSON.stringify(value) : guarded(String(value));
}

/** The body that cells tell, unjudged: the schema of its kind says what is wrong with it. */
export function bodyOf(kind: EntryKind, cell: (name: string) => string): Record<string, unknown> {
  const body: Record<string, unknown> = {};
  for (const column of COLUMNS[kind]) {
    const text = cell(nameOf(column));
    if (text === "" && column.optional) continue;
    let place = body;
    for (const name of column.path.slice(0, -1)) {
      place[name] ??= {};
      place = place[name] as Record<string, unknown>;
    }
    place[column.path.at(-1) ?? ""] = readCell(text, column);
  }
  return body;
}

function readCell(text: string, { cell }: BodyColumn): unknown {
  if (text === "") return null;
  if (cell === "text") return unguarded(text);
  // Thousands are never written: a comma can only be the decimal sign of a spreadsheet that saved the file again.
  if (cell === "number") {
    const figure = text.trim().replace(",", ".");
    return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(figure) ? Number(figure) : text;
  }
  if (cell === "yes_no") return text === "yes" ? true : text === "no" ? false : text;
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}
