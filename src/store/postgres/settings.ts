import { sql } from "kysely";
import type { Db, DurableSetting } from "../database.ts";

const WANTED: Readonly<Record<string, readonly string[]>> = {
  fsync: ["on"],
  full_page_writes: ["on"],
  synchronous_commit: ["on", "remote_apply"],
  server_encoding: ["UTF8"],
};

/** What the server says of the settings without which an acknowledged write may be lost, or a text changed. */
export async function durableSettings(db: Db): Promise<DurableSetting[]> {
  const { rows } = await sql<{ name: string; value: string }>`
    SELECT name, setting AS value FROM pg_settings
    WHERE name IN (${sql.join(Object.keys(WANTED))})`.execute(db);
  return Object.entries(WANTED).map(([name, wanted]) => ({
    name,
    value: rows.find((row) => row.name === name)?.value ?? "unknown",
    wanted,
  }));
}
