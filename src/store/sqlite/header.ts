/** What a file says of itself in its first bytes: looked at before SQLite opens, and perhaps changes, it. */
import { closeSync, fstatSync, openSync, readSync, statSync } from "node:fs";
import { StoreError } from "../store.ts";

const MAGIC = "SQLite format 3\u0000";

/** Whether there is a file with something in it; throws where it can't be a store. */
export function look(file: string): "nothing" | "something" {
  let descriptor: number;
  try {
    descriptor = openSync(file, "r");
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return "nothing";
    throw error;
  }
  try {
    const bytes = Buffer.alloc(100);
    const length = readSync(descriptor, bytes, 0, 100, 0);
    if (fstatSync(descriptor).size === 0) {
      if (sizeOf(`${file}-wal`) > 0) throw cutShort(file);
      return "nothing";
    }
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
    `${file} is empty, yet a log lies beside it: the file was cut short.`,
    `Keep a copy of both files as they are, and restore the latest backup: grazewell restore --help.`,
  );
