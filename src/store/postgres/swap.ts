/** A store in a schema beside another, put in its stead by changing names in one transaction. */
import { sql, type Transaction } from "kysely";
import type { Beside } from "../backup/restore.ts";
import type { Database } from "../database.ts";
import type { Tables } from "../tables.ts";
import { openPostgres, SCHEMA } from "./open.ts";

export function schemaBeside(url: string, named: string | undefined, label: string): Beside {
  const schema = named ?? SCHEMA;
  const beside = `${schema}_restoring_${label}`;
  const inOne = <T>(work: (db: Transaction<Tables>, database: Database) => Promise<T>) =>
    openPostgres(url, { schema }).then((database) =>
      database.transact((db) => work(db, database)).finally(() => database.close()),
    );
  return {
    where: url,
    schema: beside,
    swap: () =>
      inOne(async (db, database) => {
        const tables = await database.tables();
        const kept = tables.length === 0 ? null : `${schema}_before_restore_${label}`;
        if (kept !== null) {
          // Writes under way end first; those that come later find the new tables.
          await sql`LOCK TABLE ${sql.join(tables.map((name) => sql.id(schema, name)))} IN ACCESS EXCLUSIVE MODE`.execute(
            db,
          );
          await sql`ALTER SCHEMA ${sql.id(schema)} RENAME TO ${sql.id(kept)}`.execute(db);
        } else {
          await sql`DROP SCHEMA IF EXISTS ${sql.id(schema)}`.execute(db);
        }
        await sql`ALTER SCHEMA ${sql.id(beside)} RENAME TO ${sql.id(schema)}`.execute(db);
        return kept;
      }),
    drop: () =>
      inOne(async (db) => void (await sql`DROP SCHEMA IF EXISTS ${sql.id(beside)} CASCADE`.execute(db))),
  };
}
