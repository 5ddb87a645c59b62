/** All entries of a tank, piece by piece: for comparing a file with them, and for taking them out. */

import type { HeldEntry } from "../../contract/bring-in/compare.ts";
import { type DaybookEntry, entryOfRow } from "../../contract/daybook/kinds.ts";
import type { Desk, EntryQuery, EntryRow } from "../../store/store.ts";
import { turn } from "./in-turn.ts";

/** Rows of one question to the store: few enough that nobody waits for it. */
const ROWS_AT_ONCE = 200;

export async function* rowsOfTank(
  desk: Desk,
  tankId: string,
  query: Omit<EntryQuery, "limit" | "after"> = {},
): AsyncGenerator<readonly EntryRow[]> {
  let after: { readonly on: string; readonly id: string } | undefined;
  for (;;) {
    const rows = await desk.entries(tankId, {
      ...query,
      limit: ROWS_AT_ONCE,
      ...(after === undefined ? {} : { after }),
    });
    if (rows.length > 0) yield rows;
    const last = rows.at(-1);
    if (rows.length < ROWS_AT_ONCE || last === undefined) return;
    after = { on: last.on, id: last.id };
    await turn();
  }
}

export async function heldEntries(desk: Desk, tankId: string): Promise<HeldEntry[]> {
  const held: HeldEntry[] = [];
  for await (const rows of rowsOfTank(desk, tankId, { withRemoved: true })) {
    for (const { id, kind, on, body, version, kept, stamp } of rows) {
      held.push({ id, kind, on, body, version, kept, changedAt: stamp.at });
    }
  }
  return held;
}

/** Kept entries, the earliest first; rows that this program does not know are counted, not hidden. */
export async function keptEntries(
  desk: Desk,
  tankId: string,
  query: Pick<EntryQuery, "from" | "to"> = {},
): Promise<{ readonly entries: DaybookEntry[]; readonly unknown: number }> {
  const entries: DaybookEntry[] = [];
  let unknown = 0;
  for await (const rows of rowsOfTank(desk, tankId, query)) {
    for (const row of rows) {
      const entry = entryOfRow(row);
      if (entry === null) unknown += 1;
      else entries.push(entry);
    }
  }
  return { entries: entries.reverse(), unknown };
}
