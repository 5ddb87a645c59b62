/**
 * What the two drivers throw, turned into the store's one error. Codes alone are read, never words.
 * An error that is not the database's passes through as it is: it is a fault of ours or of the work's.
 */
import { StoreError } from "./store.ts";

type Reason = StoreError["reason"];
type Row = readonly [code: RegExp, reason: Reason, says: string, fix: string];

const AGAIN = "Try again in a moment.";
const DISK = "Free some space, or move the store to a larger disk; nothing of this write was kept.";
const FAULTY =
  "Stop the program, look after the disk, then start again: the store is checked before it is opened. Nothing more is written until then.";
const REACH = "Check that the database runs and that DATABASE_URL names it; then try again.";
const MEND = "Keep a copy of it as it is, and restore the latest backup: grazewell restore --help.";

/** First match counts. SQLite's names, SQLSTATE of PostgreSQL, codes of Node's sockets. */
const ROWS: readonly Row[] = [
  [/^SQLITE_(BUSY|LOCKED)/, "busy", "another program is writing to it", AGAIN],
  [/^(40001|40P01|55P03|57014)$/, "busy", "other writes came between, again and again", AGAIN],
  [/^(53300)$/, "busy", "the database has no connection free", AGAIN],
  [/^(SQLITE_FULL|53100)$/, "cannot_write", "the disk is full", DISK],
  [/^(SQLITE_IOERR|58030)/, "cannot_write", "the disk reported an error", FAULTY],
  [
    /^(SQLITE_READONLY|SQLITE_PERM|25006|42501|EACCES|EROFS)/,
    "cannot_write",
    "it may only be read",
    "Give the user that runs Grazewell the right to write there, or name another place.",
  ],
  [/^(SQLITE_NOMEM|53200)$/, "cannot_write", "memory ran out", AGAIN],
  [/^(SQLITE_CORRUPT|XX00[12])/, "damaged", "its content is damaged", MEND],
  [
    /^SQLITE_NOTADB/,
    "foreign",
    "the file is no store",
    "Name the store's file, or a file that is not there yet: then a new store is made.",
  ],
  [
    /^(SQLITE_CANTOPEN|ENOENT|EEXIST|ENOTDIR|EISDIR)/,
    "unreachable",
    "the file can't be opened",
    "Check the path and the rights on its folder.",
  ],
  [/^28/, "unreachable", "the database refuses this user", "Check user and password in DATABASE_URL."],
  [/^3D000$/, "unreachable", "there is no database of that name", "Create it, or correct DATABASE_URL."],
  [
    /^(08|57P0|ECONN|EPIPE|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|EHOST|ENET|GW_LOST)/,
    "unreachable",
    "the database can't be reached",
    REACH,
  ],
  [
    /^(SQLITE_CONSTRAINT|23)/,
    "refused",
    "the write breaks a rule of the store: an id that is there already, or one that is not there",
    "This is a fault in Grazewell: nothing of this write was kept.",
  ],
];

/** The driver of PostgreSQL throws a lost connection without a code. */
const LOST =
  /^(Connection terminated|timeout expired|timeout exceeded when trying to connect|Client has encountered a connection error|Client was closed|Cannot use a pool after calling end)/;

function codeOf(error: unknown): string | null {
  if (!(error instanceof Error)) return null;
  if ("code" in error && typeof error.code === "string") return error.code;
  return LOST.test(error.message) ? "GW_LOST" : null;
}

/** A write that came to nothing because another came first: the same work again may pass. */
export function anotherCameFirst(error: unknown): boolean {
  return ["40001", "40P01"].includes(codeOf(error) ?? "");
}

/** A write or sync that failed on the disk: what stands there is not known until it is read again. */
export function diskFailed(error: unknown): boolean {
  return /^(SQLITE_IOERR|58030|SQLITE_CORRUPT|XX00[12])/.test(codeOf(error) ?? "");
}

/** The store's own error where the database failed; else the very error. */
export function storeErrorOf(error: unknown, place: string): unknown {
  if (error instanceof StoreError) return error;
  const code = codeOf(error);
  const row = code === null ? undefined : ROWS.find(([pattern]) => pattern.test(code));
  if (row === undefined) return error;
  const [, reason, says, fix] = row;
  return new StoreError(reason, `The store ${place} can't be used as it is: ${says} (${code}).`, fix, {
    cause: error,
  });
}
