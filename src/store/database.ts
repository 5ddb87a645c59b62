/** What a database behind the store must offer: sqlite/ and postgres/ hold all in which the two differ. */
import type { Kysely, Transaction } from "kysely";
import type { Spelling, Tables } from "./tables.ts";

export type Db = Kysely<Tables>;

/** One durable setting as the database itself reports it. */
export interface DurableSetting {
  readonly name: string;
  readonly value: string;
  readonly wanted: readonly string[];
}

export interface Database {
  readonly name: "sqlite" | "postgres";
  /** Path or address, without a password: for messages. */
  readonly place: string;
  readonly spelling: Spelling;
  /** Single statements that write nothing. */
  readonly reads: Db;
  /** All or nothing, and reads inside see one moment. `alone`: no other write goes on meanwhile. */
  transact<T>(work: (db: Transaction<Tables>) => Promise<T>, alone?: boolean): Promise<T>;
  /** Any number of reads that see one moment, and hold up nobody's writes. */
  snapshot<T>(work: (db: Db) => Promise<T>): Promise<T>;
  /** Names of the tables that stand there, whosever they are. */
  tables(): Promise<readonly string[]>;
  /** A transaction that changes the shape: other starts wait for it and see its end; it marks the place as ours. */
  reshape<T>(work: (db: Transaction<Tables>) => Promise<T>): Promise<T>;
  /** After the shape changed: makes it stand in the file itself. */
  settle(): Promise<void>;
  /** Copies all there is to a place of that label, and names it. */
  copyAside(label: string): Promise<string>;
  durableSettings(): Promise<readonly DurableSetting[]>;
  /** The database's own check of itself: empty when nothing is wrong, null where it has none to be asked for. */
  faults(): Promise<readonly string[] | null>;
  close(): Promise<void>;
}

/** Works, and closes whatever comes. */
export async function withDatabase<T>(
  database: Database,
  work: (database: Database) => Promise<T>,
): Promise<T> {
  try {
    return await work(database);
  } finally {
    await database.close();
  }
}

/** Called before every statement; what it throws is taken for the database's own fault. For checks alone. */
export type BeforeStatement = (sql: string) => void | Promise<void>;
