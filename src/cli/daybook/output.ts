/** Kept entries as data for programs. */
import { entryOfRow } from "../../contract/daybook/kinds.ts";
import type { EntryView } from "../../contract/http/entries.ts";
import type { DaybookOutput } from "../../contract/output/daybook.ts";
import type { Message } from "../../contract/quantity/outcome.ts";
import type { EntryRow, TankRow } from "../../store/store.ts";
import { nameOf } from "../tank-source.ts";

/** Entries of a kind that this program does not know are left out. */
export function daybookOutputOf(
  tank: TankRow,
  rows: readonly EntryRow[],
  said?: readonly Message[],
): DaybookOutput {
  const entries = rows.flatMap((row): EntryView[] => {
    const entry = entryOfRow(row);
    if (entry === null) return [];
    const { id, tankId, on, version, kept, stamp } = row;
    const { kind, body } = entry;
    return [
      {
        id,
        tank: tankId,
        kind,
        on,
        version,
        kept,
        changed_at: stamp.at,
        changed_by: stamp.by,
        body,
      } as EntryView,
    ];
  });
  return {
    tank: tank.id,
    name: nameOf(tank),
    entries,
    ...(said === undefined ? {} : { said: said.map(({ kind, text }) => ({ kind, message: text })) }),
  };
}
