/**
 * A backup of a store in use: all rows at one moment, written beside, restored for trial into an empty store and compared
 * row by row; only then does it get its name.
 */
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import type { Database } from "../database.ts";
import { appliedIn } from "../migrate.ts";
import type { Shape } from "../rows.ts";
import { StoreError } from "../store.ts";
import { syncFolder, writing } from "./files.ts";
import { fill } from "./fill.ts";
import { fileOf, MANIFEST, type Manifest, manifestOf, type TableInBackup, textOf } from "./manifest.ts";
import { type Progress, type Source, storeSource } from "./pour.ts";

export interface BackupOptions {
  /** Version of this program. */
  readonly program: string;
  readonly progress?: Progress;
}

export async function backUp(database: Database, to: string, options: BackupOptions): Promise<Manifest> {
  const folder = resolve(to);
  if (existsSync(folder)) {
    throw new StoreError(
      "cannot_write",
      `${folder} is there already.`,
      "Name a folder that is not there yet: a backup never writes over another.",
    );
  }
  const unfinished = `${folder}.unfinished`;
  rmSync(unfinished, { recursive: true, force: true });
  mkdirSync(unfinished, { recursive: true, mode: 0o700 });
  try {
    const store = (await appliedIn(database)).at(-1) ?? "";
    const manifest = await database.snapshot(async (db) => {
      const source = storeSource(db);
      const tables: TableInBackup[] = [];
      for (const shape of source.shapes) tables.push(await writeTable(source, shape, unfinished, options));
      return manifestOf(options.program, store, tables);
    });
    const file = writing(join(unfinished, MANIFEST));
    file.write(textOf(manifest));
    file.close();
    syncFolder(unfinished);
    await rehearse(unfinished, manifest, options);
    renameSync(unfinished, folder);
    syncFolder(dirname(folder));
    return manifest;
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    throw error;
  }
}

async function writeTable(source: Source, shape: Shape, folder: string, { progress }: BackupOptions) {
  const file = writing(fileOf(folder, shape));
  const hash = createHash("sha256");
  let rows = 0;
  try {
    for await (const row of source.rows(shape)) {
      const line = `${JSON.stringify(Object.fromEntries(shape.columns.map((name) => [name, row[name]])))}\n`;
      hash.update(line);
      file.write(line);
      rows++;
      if (rows % 1_000 === 0) progress?.(shape.table, rows);
    }
  } finally {
    file.close();
  }
  return { ...shape, rows, sha256: hash.digest("hex") };
}

/** What can't be restored is no backup: done here, into a SQLite file whatever the store's own database. */
async function rehearse(folder: string, manifest: Manifest, { progress }: BackupOptions): Promise<void> {
  const trial = join(folder, "trial.db");
  await fill({ where: trial, options: {} }, folder, manifest, progress);
  for (const end of ["", "-wal", "-shm"]) rmSync(`${trial}${end}`, { force: true });
}
