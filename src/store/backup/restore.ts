/**
 * From a backup to a store: everything is checked before anything is touched; the store is filled beside the old one,
 * compared, and then changes places with it. The old one is kept and named.
 */
import { storeErrorOf } from "../errors.ts";
import { MIGRATIONS } from "../migrations/list.ts";
import { schemaBeside } from "../postgres/swap.ts";
import { fileBeside } from "../sqlite/swap.ts";
import { clock, nameOf, type Place, placeOf } from "../where.ts";
import { fill, type Site } from "./fill.ts";
import { type Manifest, readManifest } from "./manifest.ts";
import type { Progress } from "./pour.ts";

/** A place beside the store's, to be filled and then put in its stead. */
export interface Beside extends Site {
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
  const place = placeOf(where);
  const beside = besideOf(place, options.schema);
  try {
    await fill(beside, folder, manifest, options.progress);
    return { manifest, kept: await beside.swap() };
  } catch (error) {
    await beside.drop().catch(() => {}); // what went wrong first is what is told
    throw storeErrorOf(error, nameOf(place));
  }
}

function besideOf(place: Place, schema: string | undefined): Beside {
  return place.kind === "sqlite" ? fileBeside(place.file, clock()) : schemaBeside(place.url, schema, clock());
}
