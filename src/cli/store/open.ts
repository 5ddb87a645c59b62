/** The database behind a store for the commands that handle it whole. */
import { type Database, withDatabase } from "../../store/database.ts";
import { openDatabase } from "../../store/open.ts";
import { StoreError } from "../../store/store.ts";
import type { Io } from "../io.ts";
import { told } from "../open-store.ts";

export const STORE_OPTION = [
  "--store <place>",
  "the store: a file, or postgres://... (else DATABASE_URL, else a file of yours)",
] as const;

/** Opens, works, closes; what the store says of itself becomes words and an exit code. */
export async function withStore<T>(
  where: string | undefined,
  use: "existing" | "as it is" | "new",
  work: (database: Database) => Promise<T>,
): Promise<T> {
  return saying(async () => {
    return withDatabase(await openDatabase(where, use === "new" ? {} : { use }), work);
  });
}

/** @throws CliError in place of the store's own error */
export async function saying<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof StoreError ? told(error) : error;
  }
}

/** "3 rows": of all tables together. */
export function rowsIn(counts: readonly number[]): string {
  const rows = counts.reduce((sum, count) => sum + count, 0);
  return rows === 1 ? "1 row" : `${rows} rows`;
}

/** Progress of a long copy, one line that is written over. */
export const counting = (io: Io) => (table: string, rows: number) => io.progress(`${table}: ${rows} rows`);
