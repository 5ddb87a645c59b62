/** A version of an entry as the database gives it, and as the desk does. */
import type { EntryRow } from "../store.ts";
import { read } from "./text.ts";

export interface VersionRow {
  readonly id: string;
  readonly tank_id: string;
  readonly kind: string;
  readonly version: number;
  readonly saved_at: string;
  readonly saved_by: string;
  readonly kept: number;
  readonly on_day: string;
  readonly body: string;
}

export const entryRow = (row: VersionRow): EntryRow => ({
  id: row.id,
  tankId: row.tank_id,
  kind: row.kind,
  version: row.version,
  stamp: { at: row.saved_at, by: row.saved_by },
  kept: row.kept === 1,
  on: row.on_day,
  body: read(row.body),
});
