/** Rows from one place into an empty one, and the comparison without which that does not count. */
import type { Db } from "../database.ts";
import { addRows, hasRows, type Row, rowsAtOnce, rowsOf, SHAPES, type Shape } from "../rows.ts";
import { StoreError } from "../store.ts";

/** Where rows come from: a store at one moment, or a backup. */
export interface Source {
  readonly shapes: readonly Shape[];
  readonly rows: (shape: Shape) => AsyncIterable<Row>;
}

export type Counts = Readonly<Record<string, number>>;

export const storeSource = (db: Db): Source => ({ shapes: SHAPES, rows: (shape) => rowsOf(db, shape) });

const ROWS_AT_ONCE = 500;

/** Told now and then how many rows went by. */
export type Progress = (table: string, rows: number) => void;

export async function pour(source: Source, db: Db, progress?: Progress): Promise<Counts> {
  const counts: Record<string, number> = {};
  for (const shape of source.shapes) {
    let some: Row[] = [];
    let count = 0;
    const most = rowsAtOnce(shape, ROWS_AT_ONCE);
    for await (const row of source.rows(shape)) {
      some.push(row);
      count++;
      if (some.length < most) continue;
      await addRows(db, shape, some);
      some = [];
      progress?.(shape.table, count);
    }
    await addRows(db, shape, some);
    counts[shape.table] = count;
  }
  return counts;
}

/** Throws at the first row that differs, is missing or is too many. */
export async function compare(source: Source, db: Db, place: string): Promise<void> {
  for (const shape of source.shapes) {
    const there = rowsOf(db, shape);
    for await (const row of source.rows(shape)) {
      const { value, done } = await there.next();
      if (done === true || !same(shape, row, value)) throw differs(place, shape, row);
    }
    const { value, done } = await there.next();
    if (done !== true) throw differs(place, shape, value);
  }
}

/** `tables`: those that stand there; an older store has fewer. */
export async function isEmpty(db: Db, tables?: readonly string[]): Promise<boolean> {
  for (const shape of SHAPES) {
    if (tables !== undefined && !tables.includes(shape.table)) continue;
    if (await hasRows(db, shape)) return false;
  }
  return true;
}

const same = ({ columns }: Shape, a: Row, b: Row) => columns.every((name) => a[name] === b[name]);

const differs = (place: string, { table, key }: Shape, row: Row) =>
  new StoreError(
    "damaged",
    `What was written to ${place} differs from where it came from, at table ${table}, ${key.map((name) => `${name} ${row[name]}`).join(", ")}.`,
    "Nothing was changed for it. Try again; if it comes again, look after the disk.",
  );
