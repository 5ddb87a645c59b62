/**
 * A backup is a folder: a file of JSON lines for each table, and this manifest. The same for both databases, readable
 * without Grazewell. The manifest carries a hash of each file and of itself: a changed byte anywhere is noticed.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Shape, shapesAt } from "../rows.ts";
import { StoreError } from "../store.ts";

const FORMAT = "grazewell-backup-1";
export const MANIFEST = "manifest.json";

export interface TableInBackup extends Shape {
  readonly rows: number;
  readonly sha256: string;
}

export interface Manifest {
  readonly format: string;
  /** Version of the program that made it. */
  readonly program: string;
  /** Last migration of the store it was made from. */
  readonly store: string;
  readonly made_at: string;
  readonly tables: readonly TableInBackup[];
}

export const fileOf = (folder: string, { table }: Shape): string => join(folder, `${table}.jsonl`);

export const manifestOf = (program: string, store: string, tables: readonly TableInBackup[]): Manifest => ({
  format: FORMAT,
  program,
  store,
  made_at: new Date().toISOString(),
  tables,
});

/** The one text of a manifest. */
export function textOf(manifest: Manifest): string {
  const check = createHash("sha256").update(JSON.stringify(manifest)).digest("hex");
  return `${JSON.stringify({ ...manifest, check }, null, 2)}\n`;
}

/** The manifest of a folder, if this program can restore it; whether its files are whole is another question. */
export function readManifest(folder: string, migrations: readonly { readonly name: string }[]): Manifest {
  let text: string;
  try {
    text = readFileSync(join(folder, MANIFEST), "utf8");
  } catch (error) {
    throw new StoreError(
      "foreign",
      `${folder} is no backup: ${MANIFEST} can't be read there.`,
      "Name the folder that grazewell backup made.",
      { cause: error },
    );
  }
  const manifest = parsed(text);
  if (manifest === null) throw changed("the manifest");
  if (manifest.format !== FORMAT || !migrations.some(({ name }) => name === manifest.store)) {
    throw new StoreError(
      "newer",
      `This backup was made by Grazewell ${manifest.program} (store ${manifest.store}), which is newer than this one.`,
      "Update Grazewell first, then restore. The store was left as it is.",
    );
  }
  // Only tables and columns that a store of that shape has are ever written to.
  const shapes = shapesAt(manifest.store);
  if (JSON.stringify(manifest.tables.map(shapeOf)) !== JSON.stringify(shapes.map(shapeOf))) {
    throw changed("the manifest");
  }
  return manifest;
}

const shapeOf = ({ table, columns, key }: Shape) => ({ table, columns, key });

/** Null where any byte is not as it was written. */
function parsed(text: string): Manifest | null {
  try {
    const { check: _, ...manifest } = JSON.parse(text);
    return textOf(manifest) === text ? (manifest as Manifest) : null;
  } catch {
    return null;
  }
}

export const changed = (where: string) =>
  new StoreError(
    "damaged",
    `The backup is not as it was written: the check value differs at ${where}.`,
    "Take another copy of this backup, or an earlier backup. The store was left as it is.",
  );
