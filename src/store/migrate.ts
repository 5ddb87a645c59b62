/**
 * Brings a store to this program's shape: whole or not at all, one program at a time, forward only.
 * Not the query builder's own migrator: that one makes its tables outside the transaction, and takes no lock on SQLite.
 */
import { sql } from "kysely";
import type { Database, Db } from "./database.ts";
import type { Migration } from "./migrations/migration.ts";
import { StoreError } from "./store.ts";
import { clock } from "./where.ts";

export interface Migrated {
  readonly applied: readonly string[];
  /** Where the store as it was before lies; null where nothing was in it, or nothing was to do. */
  readonly copy: string | null;
}

export async function migrate(
  database: Database,
  migrations: readonly Migration[],
  copies = true,
): Promise<Migrated> {
  const before = await appliedIn(database);
  const pending = pendingAfter(before, migrations, database.place);
  if (pending.length === 0) return { applied: [], copy: null };
  const copy =
    before.length === 0 || !copies
      ? null
      : await database.copyAside(`before-${pending[0]?.name.slice(0, 4)}-${clock()}`);
  const applied = await database.reshape(async (db) => {
    const { text, tableEnd } = database.spelling;
    await run(
      db,
      `CREATE TABLE IF NOT EXISTS migration (name ${text} PRIMARY KEY, applied_at ${text} NOT NULL) ${tableEnd}`,
    );
    // Asked again: another program may have done it while this one waited.
    const due = pendingAfter(await namesIn(db), migrations, database.place);
    for (const { name, statements } of due) {
      for (const statement of statements(database.spelling)) await run(db, statement);
      await db.insertInto("migration").values({ name, applied_at: new Date().toISOString() }).execute();
    }
    return due.map(({ name }) => name);
  });
  await database.settle();
  return { applied, copy };
}

/** Migrations done in this place; throws where tables stand that are not a store's. */
export async function appliedIn(database: Database): Promise<string[]> {
  const tables = await database.tables();
  if (tables.includes("migration")) return namesIn(database.reads);
  if (tables.length === 0) return [];
  throw new StoreError(
    "foreign",
    `${database.place} holds tables of another program.`,
    "Name the store's own place, or an empty one: then a new store is made.",
  );
}

async function namesIn(db: Db): Promise<string[]> {
  const rows = await db.selectFrom("migration").select("name").execute();
  return rows.map(({ name }) => name).sort();
}

function pendingAfter(
  applied: readonly string[],
  migrations: readonly Migration[],
  place: string,
): Migration[] {
  const unknown = applied.filter((name) => !migrations.some((one) => one.name === name));
  if (unknown.length > 0) {
    throw new StoreError(
      "newer",
      `The store ${place} was made by a newer Grazewell: this one does not know its ${unknown.join(", ")}.`,
      "Update Grazewell, then start it again; the store was left as it is.",
    );
  }
  return migrations.filter(({ name }) => !applied.includes(name));
}

/** Constants of the migrations alone come here: no value is ever put into one. */
const run = (db: Db, statement: string) => sql.raw(statement).execute(db);
