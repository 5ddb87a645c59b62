/** A connection to a SQLite file with the settings that keep an acknowledged write through a power cut. */
import BetterSqlite3 from "better-sqlite3";
import type { DurableSetting } from "../database.ts";

/** "GRZW": marks the file as a store of Grazewell. */
export const APPLICATION_ID = 0x47_52_5a_57;
/** How long opening and reading wait for a lock, in milliseconds: the whole program waits with them. */
const WAIT_MS = 1_000;

export function connect(file: string, use: "read" | "write"): BetterSqlite3.Database {
  const connection = new BetterSqlite3(file, { timeout: WAIT_MS });
  connection.pragma("synchronous = FULL");
  connection.pragma("fullfsync = ON"); // macOS alone: there, fsync does not reach the disk
  connection.pragma("foreign_keys = ON");
  connection.pragma("trusted_schema = OFF");
  if (use === "read") connection.pragma("query_only = ON");
  return connection;
}

/** Read back from the connection: a setting asked for is not yet a setting had. */
export function durableSettings(connection: BetterSqlite3.Database): DurableSetting[] {
  const setting = (name: string, ...wanted: string[]): DurableSetting => ({
    name,
    value: String(connection.pragma(name, { simple: true })),
    wanted,
  });
  return [setting("journal_mode", "wal"), setting("synchronous", "2"), setting("foreign_keys", "1")];
}
