/** What a tank's daybook takes and the record never had: a move, its correction and its undoing may not add to that. */
import { animalById, findAnimal } from "../../catalogue/index.ts";
import { lotsOf } from "../../contract/daybook/apply/lots.ts";
import { type DaybookEntry, type EntryKind, entryOfRow } from "../../contract/daybook/kinds.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Desk, TankRow } from "../../store/store.ts";
import { givenSince } from "../given-since.ts";
import { LOADED } from "../load-tank.ts";

const OF_HEADS: readonly EntryKind[] = ["addition", "loss", "departure", "move", "identification"];

export interface HeadsRecord {
  /** Those that change heads or say what they are. */
  readonly entries: readonly DaybookEntry[];
  /** Heads that these entries, in the place of its own, take and none brought; by kinds of the catalogue. */
  readonly lacking: (entries: readonly DaybookEntry[]) => ReadonlyMap<string, number>;
}

/** Read at the desk, so that nothing comes between it and what is written there. `today`: ISO date. */
export async function headsRecord(desk: Desk, tank: TankRow, today: string): Promise<HeadsRecord> {
  const entries: DaybookEntry[] = [];
  for (const kind of OF_HEADS) {
    const rows = await desk.entries(tank.id, { kind, limit: LOADED.others });
    entries.push(...rows.flatMap((row) => entryOfRow(row) ?? []));
  }
  const since = givenSince(await desk.tankHistory(tank.id));
  const document = tank.facts as unknown as TankFile;
  return {
    entries,
    lacking: (some) => {
      const { unexplained } = lotsOf(document, some, { today, findAnimal, since });
      return new Map([...unexplained].filter(([kind]) => animalById.has(kind)));
    },
  };
}
