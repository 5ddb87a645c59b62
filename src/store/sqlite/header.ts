/** What a file says of itself in its first bytes: looked at before SQLite opens, and perhaps changes, it. */
import { closeSync, openSync, readSync, statSync } from "node:fs";
import { StoreError } from "../store.ts";

const MAGIC = "SQLite format 3\u0000";

/** Whether there is a file with something in it; throws where it can't be a store. */
export function look(file: string): "nothing" | "something" {
  // The log is asked first: another first start, meanwhile, writes the file before its log.
  const log = sizeOf(`${file}-wal`);
  if (sizeOf(file) === 0) {
    if (log > 0) throw cutShort(file);
    return "nothing";
  }
  const descriptor = openSync(file, "r");
  try {
    const bytes = Buffer.alloc(100);
    const length = readSync(descriptor, bytes, 0, 100, 0);
    if (length < 100 || bytes.toString("latin1", 0, 16) !== MAGIC) {
      throw new StoreError(
        "foreign",
        `${file} is no store: it does not begin as one.`,
        "Name the store's file, or a file that is not there yet: then a new store is made. If this was your store, keep a copy and restore the latest backup.",
      );
    }
    return "something";
  } finally {
    closeSync(descriptor);
  }
}

const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;

/** SQLite would take the file for a new one and throw the log away. */
const cutShort = (file: string) =>
  new StoreError(
    "damaged",
    `${file} is empty or gone, yet a log lies beside it: part of the store is missing.`,
    `Keep a copy of what is there, and restore the latest backup: grazewell restore --help.`,
  );
