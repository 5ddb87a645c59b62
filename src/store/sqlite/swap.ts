/** A SQLite store filled beside another and put in its stead, while nobody else has the old one open. */
import { existsSync, renameSync, rmSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { syncFolder } from "../backup/files.ts";
import type { Beside } from "../backup/restore.ts";
import { StoreError } from "../store.ts";
import { connect } from "./connect.ts";
import { look } from "./header.ts";

/** A store's files: itself, its log, what its readers share. */
const ENDS = ["", "-wal", "-shm"] as const;

export function fileBeside(path: string, label: string): Beside {
  const file = resolve(path);
  const beside = `${file}.restoring-${label}`;
  return {
    where: beside,
    options: {},
    async swap() {
      alone(beside)();
      const kept = `${file}.before-restore-${label}`;
      const letGo = aloneIfStore(file);
      try {
        // A log that lies there, even without its file, would be taken for the new file's.
        const old = ENDS.filter((end) => existsSync(`${file}${end}`));
        for (const end of old) renameSync(`${file}${end}`, `${kept}${end}`);
        renameSync(beside, file);
        syncFolder(dirname(file));
        return old.length === 0 ? null : kept;
      } finally {
        letGo();
      }
    },
    async drop() {
      for (const end of ENDS) rmSync(`${beside}${end}`, { force: true });
    },
  };
}

/** A damaged store, too, may be replaced: nobody can have that open. */
function aloneIfStore(file: string): () => void {
  try {
    return look(file) === "nothing" ? () => {} : alone(file);
  } catch (error) {
    if (error instanceof StoreError && error.reason === "busy") throw error;
    return () => {};
  }
}

/** Brings the log into the file and holds the file alone; throws where another has it open. Returns how to let go. */
function alone(file: string): () => void {
  const connection = connect(file, "write");
  try {
    connection.pragma("busy_timeout = 500");
    connection.pragma("locking_mode = EXCLUSIVE");
    const mode = connection.pragma("journal_mode = DELETE", { simple: true });
    if (mode !== "delete") throw inUse(file);
    connection.exec("BEGIN EXCLUSIVE; COMMIT"); // holds the lock until closed
  } catch (error) {
    connection.close();
    if (error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY"))
      throw inUse(file);
    throw error;
  }
  return () => void connection.close();
}

const inUse = (file: string) =>
  new StoreError(
    "busy",
    `The store ${file} is open in another program.`,
    "End the server (Ctrl-C where it runs), then restore again. The store was left as it is.",
  );
