/**
 * What a tank is quickly judged by, from the store: its latest entries of each kind as a record, the latest readings as
 * typed, its facts. For one tank, or for many in one question; what was read of a tank is held until it changes.
 */
import type { KnownOfTank, ToldFacts } from "../../answers/bench/known.ts";
import { latestReadings } from "../../answers/bench/latest.ts";
import { recordOf } from "../../answers/record/record.ts";
import { entryOfRow } from "../../contract/daybook/kinds.ts";
import type { Notice } from "../../contract/tank-file/finding.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { EntryRow, Store, TankRow } from "../../store/store.ts";
import { keptReadings } from "../pages/kept-readings.ts";
import type { LoadedTank } from "../route.ts";

/** The usual needs eight days before the latest, a gate the last few: more would only cost time. */
export const RECENT = { readings: 25, others: 30 } as const;

/** Of a tank that is loaded: `facts` as of today, the daybook in them. */
export async function knownTank(
  store: Store,
  { row, facts, document, notices }: LoadedTank,
  today: string,
): Promise<KnownOfTank> {
  return knownFrom(row, { facts, document, notices }, await store.recentEntries([row.id], RECENT), today);
}

interface Told {
  readonly facts: ToldFacts;
  readonly document: TankFile;
  readonly notices: readonly Notice[];
}

/** `entries`: oldest first. */
export function knownFrom(
  row: TankRow,
  { facts, document, notices }: Told,
  entries: readonly EntryRow[],
  today: string,
): KnownOfTank {
  const record = recordOf(
    entries.flatMap((entry) => entryOfRow(entry) ?? []),
    today,
  );
  const readings = keptReadings(entries.filter(({ kind }) => kind === "reading").toReversed());
  return {
    facts,
    record,
    latest: latestReadings(readings, document, notices, today),
    today,
    answeredOn: row.stamp.at.slice(0, 10),
  };
}

/** Heads as the answers tell them, with what the record says since. */
export function presentWith(
  present: ToldFacts["present"],
  { happenings }: TankRecord,
  since: string,
): ToldFacts["present"] {
  const heads = new Map<string, number>();
  const change = (id: string, by: number) => heads.set(id, Math.max(0, (heads.get(id) ?? 0) + by));
  for (const { id, count } of present) change(id, count);
  for (const one of happenings) {
    // Of the answers' own day nobody knows which came first: a head twice told does less harm than one forgotten.
    if (one.on < since) continue;
    if (one.kind === "added") change(one.animal, one.count);
    if (one.kind === "lost_found" || one.kind === "moved_out") change(one.animal, -one.count);
  }
  return [...heads].map(([id, count]) => ({ id, count, on: null }));
}
