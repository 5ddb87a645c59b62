/**
 * SQLite behind the store: one connection that writes, one that reads meanwhile. Other processes may share the file
 * (its log is on the same machine): one writes at a time, the others wait; nobody reads by halves.
 */
import { closeSync, mkdirSync, openSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { Kysely, sql } from "kysely";
import type { BeforeStatement, Database } from "../database.ts";
import { StoreError } from "../store.ts";
import type { Tables } from "../tables.ts";
import { APPLICATION_ID, connect, durableSettings } from "./connect.ts";
import { FileDialect } from "./dialect.ts";
import { look } from "./header.ts";

export function openSqlite(path: string, before?: BeforeStatement): Database {
  const file = resolve(path);
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  // A file made here is for its owner's eyes alone.
  if (look(file) === "nothing") closeSync(openSync(file, "a", 0o600));

  const writer = connect(file, "write");
  try {
    if (mark() !== APPLICATION_ID && tableNames(writer).length > 0) throw foreign(file);
    writer.pragma("journal_mode = WAL");
    assertSound(file, writer);
    writer.pragma("busy_timeout = 10"); // from here on it waits in dialect.ts, without holding up the program
    return opened(connect(file, "read"));
  } catch (error) {
    writer.close();
    throw error;
  }

  /** Asked of SQLite, not of the file's first bytes: it may stand in the log still. */
  function mark(): number {
    return Number(writer.pragma("application_id", { simple: true }));
  }

  function opened(reader: ReturnType<typeof connect>): Database {
    const reads = new Kysely<Tables>({ dialect: new FileDialect(reader, { begin: "begin", before }) });
    const writes = new Kysely<Tables>({
      dialect: new FileDialect(writer, { begin: "begin immediate", before }),
    });
    return {
      name: "sqlite",
      place: file,
      spelling: { text: "text", bytes: "blob", tableEnd: "STRICT" },
      reads,
      transact: (work) => writes.transaction().execute(work),
      async snapshot(work) {
        const own = new Kysely<Tables>({
          dialect: new FileDialect(connect(file, "read"), { begin: "begin", before }),
        });
        try {
          return await own.transaction().execute(work);
        } finally {
          await own.destroy();
        }
      },
      tables: async () => tableNames(reader),
      reshape: (work) =>
        writes.transaction().execute(async (db) => {
          await sql`PRAGMA application_id = ${sql.raw(String(APPLICATION_ID))}`.execute(db);
          return work(db);
        }),
      async settle() {
        writer.pragma("wal_checkpoint(TRUNCATE)");
      },
      async copyAside(label) {
        const copy = `${file}.${label}`;
        closeSync(openSync(copy, "wx", 0o600));
        await writer.backup(copy);
        return copy;
      },
      async durableSettings() {
        return durableSettings(writer);
      },
      async faults() {
        const found = writer.prepare("PRAGMA integrity_check").pluck().all().map(String);
        const orphans = writer.prepare("PRAGMA foreign_key_check").all();
        return [
          ...found.filter((line) => line !== "ok"),
          ...orphans.map((row) => `a row points at nothing: ${JSON.stringify(row)}`),
        ];
      },
      async close() {
        reader.close();
        writer.close();
      },
    };
  }
}

function tableNames(connection: ReturnType<typeof connect>): string[] {
  const rows = connection.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all();
  return rows.map(String).filter((name) => !name.startsWith("sqlite_"));
}

/** A look at every page, under a second for 400,000 readings: damage is told at the start, not in the middle of work. */
function assertSound(file: string, connection: ReturnType<typeof connect>): void {
  const [first] = connection.prepare("PRAGMA quick_check(1)").pluck().all().map(String);
  if (first === "ok") return;
  throw new StoreError(
    "damaged",
    `${file} is damaged: ${first}.`,
    "Keep a copy of it as it is, and restore the latest backup: grazewell restore --help.",
  );
}

const foreign = (file: string) =>
  new StoreError(
    "foreign",
    `${file} is a database of another program.`,
    "Name the store's file, or a file that is not there yet: then a new store is made.",
  );
