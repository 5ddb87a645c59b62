import { sql } from "kysely";
import type { Db } from "../database.ts";

/** Names of the tables of a schema; none where there is no such schema. */
export async function tablesOf(db: Db, schema: string): Promise<string[]> {
  const { rows } = await sql<{ name: string }>`
    SELECT table_name AS name FROM information_schema.tables WHERE table_schema = ${schema}`.execute(db);
  return rows.map(({ name }) => name);
}

/** Rows of every table of a schema, at one moment, in a schema beside it; without indexes and rules. Returns its name. */
export async function copySchema(db: Db, schema: string, label: string): Promise<string> {
  const copy = `${schema}_${label.replaceAll(/\W/g, "_")}`;
  await db
    .transaction()
    .setIsolationLevel("repeatable read")
    .execute(async (transaction) => {
      await sql`CREATE SCHEMA ${sql.id(copy)}`.execute(transaction);
      for (const name of await tablesOf(transaction, schema)) {
        await sql`CREATE TABLE ${sql.id(copy, name)} AS TABLE ${sql.id(schema, name)}`.execute(transaction);
      }
    });
  return copy;
}
