/**
 * Opens the store: looks whether the place is one, asserts that it is durable, brings it to this program's shape.
 * Two programs may open the same store at once, on either database.
 */
import { existsSync } from "node:fs";
import type { BeforeStatement, Database } from "./database.ts";
import { storeErrorOf } from "./errors.ts";
import { KeptStore } from "./kept-store.ts";
import { appliedIn, type Migrated, migrate } from "./migrate.ts";
import { MIGRATIONS } from "./migrations/list.ts";
import type { Migration } from "./migrations/migration.ts";
import { openPostgres } from "./postgres/open.ts";
import { openSqlite } from "./sqlite/open.ts";
import { type Store, StoreError } from "./store.ts";
import { nameOf, type Place, placeOf } from "./where.ts";

export interface OpenOptions {
  /** Schema of PostgreSQL; `grazewell` when absent. */
  readonly schema?: string;
  /** `existing`: never makes a store; `as it is`: nor changes its shape, however old. A new place is made otherwise. */
  readonly use?: "existing" | "as it is";
  /** Makes no copy of the old shape before a change: where what is brought to this shape is itself a copy. */
  readonly copies?: false;
  /** Told when the store was changed to this program's shape. */
  readonly onMigrated?: (migrated: Migrated) => void;
  /** For checks alone. */
  readonly beforeStatement?: BeforeStatement;
  /** For checks alone. */
  readonly migrations?: readonly Migration[];
}

/** `where`: a file, or an address postgres://...; absent, DATABASE_URL, else a file among the user's data. */
export async function openStore(where: string | undefined, options: OpenOptions = {}): Promise<Store> {
  return new KeptStore(await openDatabase(where, options));
}

/** What lies behind a store, ready: for backup, restore and checks, which need its rows as they are. */
export async function openDatabase(where: string | undefined, options: OpenOptions = {}): Promise<Database> {
  const place = placeOf(where);
  try {
    const database = await connected(place, options);
    try {
      // Who only looks is let in: check-store says which setting it is.
      if (options.use !== "as it is") await assertDurable(database);
      if (options.use !== undefined) await assertStore(database);
      if (options.use === "as it is") return database;
      const migrated = await migrate(database, options.migrations ?? MIGRATIONS, options.copies);
      if (migrated.applied.length > 0) options.onMigrated?.(migrated);
      return database;
    } catch (error) {
      await database.close();
      throw error;
    }
  } catch (error) {
    throw storeErrorOf(error, nameOf(place));
  }
}

async function assertStore(database: Database): Promise<void> {
  if ((await appliedIn(database)).length === 0) throw noStore(database.place);
}

async function connected(place: Place, options: OpenOptions): Promise<Database> {
  if (options.use !== undefined && place.kind === "sqlite" && !existsSync(place.file))
    throw noStore(place.file);
  return place.kind === "sqlite"
    ? openSqlite(place.file, options.beforeStatement)
    : openPostgres(place.url, { schema: options.schema, before: options.beforeStatement });
}

async function assertDurable(database: Database): Promise<void> {
  const weak = (await database.durableSettings()).filter(({ value, wanted }) => !wanted.includes(value));
  if (weak.length === 0) return;
  const list = weak.map(({ name, value, wanted }) => `${name} is ${value}, must be ${wanted.join(" or ")}`);
  throw new StoreError(
    "cannot_write",
    `The store ${database.place} could lose what it has acknowledged: ${list.join("; ")}.`,
    database.name === "sqlite"
      ? "Keep the store on a disk of this machine, not in a folder of the network."
      : "Change the server's settings (postgresql.conf), and start again.",
  );
}

const noStore = (place: string) =>
  new StoreError(
    "unreachable",
    `There is no store at ${place}.`,
    "Name the store's file or address; `grazewell serve` makes one where there is none.",
  );
