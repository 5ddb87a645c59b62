/**
 * The store's rows as they lie in its tables, for backup, moving and comparing: the tables in an order in which no row
 * points at a later one, each by its key, texts by their bytes. Both databases give the same rows in the same order.
 */
import { sql } from "kysely";
import type { Db } from "./database.ts";
import type { TableName, Tables } from "./tables.ts";

export type Row = Readonly<Record<string, string | number | null>>;

export interface Shape {
  readonly table: string;
  readonly columns: readonly string[];
  readonly key: readonly string[];
}

type Backed = Exclude<TableName, "migration">;

/** Every column of every table, held to `Tables` by its type. The migrations are told by a name instead. */
const COLUMNS: { readonly [Table in Backed]: Readonly<Record<keyof Tables[Table], "key" | "">> } = {
  keeper: { id: "key", name: "", added_at: "", added_by: "" },
  tank: { id: "key", keeper_id: "", demonstration: "", version: "", kept: "" },
  tank_version: { tank_id: "key", version: "key", saved_at: "", saved_by: "", kept: "", facts: "" },
  entry: { id: "key", tank_id: "", kind: "", version: "", kept: "", on_day: "", subject: "" },
  entry_version: {
    entry_id: "key",
    version: "key",
    saved_at: "",
    saved_by: "",
    kept: "",
    on_day: "",
    body: "",
  },
  reply: { key: "key", fingerprint: "", saved_at: "", status: "", body: "" },
  setting: { name: "key", value: "", saved_at: "", saved_by: "" },
  act: {
    id: "key",
    tank_id: "",
    kind: "",
    saved_at: "",
    saved_by: "",
    about: "",
    undone_at: "",
    undone_by: "",
  },
  act_entry: { act_id: "key", entry_id: "key", version: "", undone_version: "" },
  given_event: {
    tank_id: "key",
    care: "key",
    sequence: "key",
    given_at: "",
    cancelled: "",
    reach: "",
    event: "",
  },
  calendar_feed: {
    id: "key",
    tank_id: "",
    token_hash: "",
    made_at: "",
    made_by: "",
    taken_back_at: "",
    taken_back_by: "",
  },
  picture: {
    id: "key",
    entry_id: "",
    sha256: "",
    type: "",
    width_px: "",
    height_px: "",
    size_bytes: "",
    shows: "",
    saved_at: "",
    saved_by: "",
    taken_away_at: "",
    taken_away_by: "",
    image: "",
  },
};

/** Columns of bytes: in a row, and so in a backup, they stand as Base64. */
const BYTES: ReadonlySet<string> = new Set(["picture.image"]);

/** The migration that made a table, where it was a later one: a backup of a store from before has no such table. */
const SINCE: Readonly<Partial<Record<Backed, string>>> = {
  ...{ act: "0006-act", act_entry: "0006-act" },
  ...{ given_event: "0008-calendar", calendar_feed: "0008-calendar" },
  picture: "0009-picture",
};

export const SHAPES: readonly Shape[] = Object.entries(COLUMNS).map(([table, columns]) => ({
  table,
  columns: Object.keys(columns),
  key: Object.entries(columns).flatMap(([name, role]) => (role === "key" ? [name] : [])),
}));

/** The tables of a store whose last migration is that one. Names of migrations begin with their number. */
export const shapesAt = (migration: string): readonly Shape[] =>
  SHAPES.filter(({ table }) => (SINCE[table as Backed] ?? "") <= migration);

const ROWS_AT_ONCE = 1_000;
/** Of rows that may be long: all of them stand in memory together. */
const LONG_ROWS_AT_ONCE = 4;

const bytesIn = ({ table, columns }: Shape): readonly string[] =>
  columns.filter((name) => BYTES.has(`${table}.${name}`));

/** Rows that may be read, or written, by one statement. */
export const rowsAtOnce = (shape: Shape, most = ROWS_AT_ONCE): number =>
  bytesIn(shape).length === 0 ? most : LONG_ROWS_AT_ONCE;

export async function* rowsOf(db: Db, shape: Shape): AsyncGenerator<Row> {
  const { table, columns, key } = shape;
  const [most, bytes] = [rowsAtOnce(shape), bytesIn(shape)];
  const [all, order] = [list(columns), list(key)];
  let last: Row | undefined;
  do {
    const after =
      last === undefined ? sql`` : sql`WHERE (${order}) > (${sql.join(key.map((name) => last?.[name]))})`;
    const { rows } = await sql<Row>`
      SELECT ${all} FROM ${sql.table(table)} ${after} ORDER BY ${order} LIMIT ${most}`.execute(db);
    yield* bytes.length === 0 ? rows : rows.map((row) => withTexts(row, bytes));
    last = rows.length < most ? undefined : rows.at(-1);
  } while (last !== undefined);
}

function withTexts(row: Row, names: readonly string[]): Row {
  const bytes = row as Readonly<Record<string, unknown>>;
  const texts = names.map((name) => [name, Buffer.from(bytes[name] as Uint8Array).toString("base64")]);
  return { ...row, ...Object.fromEntries(texts) };
}

/** Adds rows as they are. */
export async function addRows(db: Db, shape: Shape, rows: readonly Row[]): Promise<void> {
  if (rows.length === 0) return;
  const { table, columns } = shape;
  const bytes = new Set(bytesIn(shape));
  const kept = (row: Row, name: string) =>
    bytes.has(name) ? Buffer.from(String(row[name] ?? ""), "base64") : (row[name] ?? null);
  const values = rows.map((row) => sql`(${sql.join(columns.map((name) => kept(row, name)))})`);
  await sql`INSERT INTO ${sql.table(table)} (${list(columns)}) VALUES ${sql.join(values)}`.execute(db);
}

export async function hasRows(db: Db, { table }: Shape): Promise<boolean> {
  const { rows } = await sql`SELECT 1 FROM ${sql.table(table)} LIMIT 1`.execute(db);
  return rows.length > 0;
}

const list = (columns: readonly string[]) => sql.join(columns.map((name) => sql.ref(name)));
