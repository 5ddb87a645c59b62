/** An empty place filled from a backup and looked over: for the trial that every backup passes, and for restoring. */
import { withDatabase } from "../database.ts";
import { MIGRATIONS } from "../migrations/list.ts";
import { type OpenOptions, openDatabase } from "../open.ts";
import { StoreError } from "../store.ts";
import type { Manifest } from "./manifest.ts";
import { compare, type Progress, pour } from "./pour.ts";
import { backupSource, verify } from "./read.ts";

/** Where a store is to stand. */
export interface Site {
  readonly where: string;
  readonly options: OpenOptions;
}

/** Throws where the place does not end as the backup is; who called takes the place away then. */
export async function fill(
  { where, options }: Site,
  folder: string,
  manifest: Manifest,
  progress?: Progress,
): Promise<void> {
  await verify(folder, manifest);
  const source = backupSource(folder, manifest);
  const migrations = MIGRATIONS.slice(0, MIGRATIONS.findIndex(({ name }) => name === manifest.store) + 1);
  await withDatabase(await openDatabase(where, { ...options, migrations }), async (database) => {
    await database.transact(async (db) => {
      await pour(source, db, progress);
      await compare(source, db, database.place);
    });
    const [fault] = (await database.faults()) ?? [];
    if (fault !== undefined) {
      throw new StoreError(
        "damaged",
        `What was restored from the backup has a fault: ${fault}.`,
        "Run grazewell check-store on the store; where that is damaged, take an earlier backup.",
      );
    }
  });
  // A backup of an older store is brought to this program's shape, as the store itself would be.
  if (migrations.length < MIGRATIONS.length) {
    await (await openDatabase(where, { ...options, copies: false })).close();
  }
}
