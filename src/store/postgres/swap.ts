/** A store in a schema beside another, put in its stead by changing names in one transaction. */
import { sql } from "kysely";
import type { Beside } from "../backup/restore.ts";
import { type Database, withDatabase } from "../database.ts";
import { openPostgres, SCHEMA } from "./open.ts";

export function schemaBeside(url: string, named: string | undefined, label: string): Beside {
  const schema = named ?? SCHEMA;
  const beside = `${schema}_restoring_${label}`;

  const connected = async <T>(work: (database: Database) => Promise<T>): Promise<T> =>
    withDatabase(await openPostgres(url, { schema }), work);

  const swap = async (database: Database): Promise<string | null> => {
    const tables = (await database.tables()).toSorted();
    const kept = tables.length === 0 ? null : `${schema}_before_restore_${label}`;
    await database.reshape(async (db) => {
      if (kept === null) {
        await sql`DROP SCHEMA ${sql.id(schema)}`.execute(db); // an empty one
      } else {
        // First the gate of writes (see open.ts), so that those under way end and no two wait for each other; then the
        // tables, so that who reads or writes later finds the new ones.
        await sql`LOCK TABLE migration IN EXCLUSIVE MODE`.execute(db);
        const all = sql.join(tables.map((name) => sql.id(schema, name)));
        await sql`LOCK TABLE ${all} IN ACCESS EXCLUSIVE MODE`.execute(db);
        await sql`ALTER SCHEMA ${sql.id(schema)} RENAME TO ${sql.id(kept)}`.execute(db);
      }
      await sql`ALTER SCHEMA ${sql.id(beside)} RENAME TO ${sql.id(schema)}`.execute(db);
    });
    return kept;
  };

  return {
    where: url,
    options: { schema: beside },
    swap: () => connected(swap),
    drop: () =>
      connected(async ({ reads }) => {
        await sql`DROP SCHEMA IF EXISTS ${sql.id(beside)} CASCADE`.execute(reads);
      }),
  };
}
