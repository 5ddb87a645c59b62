/**
 * From a backup to a store: everything is checked before anything is touched; the store is filled beside the old one,
 * compared, and then changes places with it. The old one is kept and named.
 */
import type { Database } from "../database.ts";
import { storeErrorOf } from "../errors.ts";
import { MIGRATIONS } from "../migrations/list.ts";
import { openDatabase } from "../open.ts";
import { schemaBeside } from "../postgres/swap.ts";
import { fileBeside } from "../sqlite/swap.ts";
import { StoreError } from "../store.ts";
import { type Place, placeOf } from "../where.ts";
import { type Manifest, readManifest } from "./manifest.ts";
import { compare, type Progress, pour } from "./pour.ts";
import { backupSource, verify } from "./read.ts";

/** A place beside the store's, to be filled and then put in its stead. */
export interface Beside {
  readonly where: string;
  readonly schema?: string;
  /** Returns the name under which the old store is kept; null where there was none. */
  readonly swap: () => Promise<string | null>;
  readonly drop: () => Promise<void>;
}

export interface Restored {
  readonly manifest: Manifest;
  readonly kept: string | null;
}

export interface RestoreOptions {
  readonly schema?: string;
  readonly progress?: Progress;
}

export async function restore(
  folder: string,
  where: string | undefined,
  options: RestoreOptions = {},
): Promise<Restored> {
  const manifest = readManifest(folder, MIGRATIONS);
  await verify(folder, manifest);
  const place = placeOf(where);
  const beside = besideOf(place, options.schema);
  try {
    await fill(beside, folder, manifest, options.progress);
    return { manifest, kept: await beside.swap() };
  } catch (error) {
    await beside.drop();
    throw storeErrorOf(error, place.kind === "sqlite" ? place.file : "on PostgreSQL");
  }
}

function besideOf(place: Place, schema: string | undefined): Beside {
  const label = new Date().toISOString().replaceAll(/[-:.]/g, "").toLowerCase();
  return place.kind === "sqlite" ? fileBeside(place.file, label) : schemaBeside(place.url, schema, label);
}

async function fill(beside: Beside, folder: string, manifest: Manifest, progress?: Progress): Promise<void> {
  const { where, schema } = beside;
  const inSchema = schema === undefined ? {} : { schema };
  const upTo = MIGRATIONS.findIndex(({ name }) => name === manifest.store) + 1;
  const source = backupSource(folder, manifest);
  await withDatabase(
    await openDatabase(where, { ...inSchema, migrations: MIGRATIONS.slice(0, upTo) }),
    (database) =>
      database.transact(async (db) => {
        await pour(source, db, progress);
        await compare(source, db, database.place);
      }),
  );
  // A backup of an older store is brought to this program's shape, as the store itself would be.
  await withDatabase(await openDatabase(where, inSchema), async (database) => {
    const faults = await database.faults();
    if (faults.length > 0)
      throw new StoreError(
        "damaged",
        `The restored store has a fault: ${faults[0]}.`,
        "Take an earlier backup.",
      );
  });
}

async function withDatabase<T>(database: Database, work: (database: Database) => Promise<T>): Promise<T> {
  try {
    return await work(database);
  } finally {
    await database.close();
  }
}
