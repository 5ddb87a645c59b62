/**
 * What a tank is quickly judged by: its record, the latest readings as typed, its facts. Of a loaded tank all is there;
 * for the round it is made from the latest entries of each kind, which many tanks have in one question.
 */
import type { KnownOfTank, ToldFacts } from "../../answers/bench/known.ts";
import { latestReadings } from "../../answers/bench/latest.ts";
import { recordOf } from "../../answers/record/record.ts";
import { entryOfRow } from "../../contract/daybook/kinds.ts";
import type { Notice } from "../../contract/tank-file/finding.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { EntryRow, TankRow } from "../../store/store.ts";
import { keptReadings } from "../pages/kept-readings.ts";
import type { LoadedTank } from "../route.ts";

/** The usual needs eight days before the latest, a gate the last few: more would only cost time. */
export const RECENT = { readings: 25, others: 30 } as const;

/** Of a tank that is loaded, its daybook with it. */
export const knownTank = (
  { row, facts, record, document, notices, readings }: LoadedTank,
  today: string,
): KnownOfTank => ({
  ...{ facts, record, today },
  latest: latestReadings(keptReadings(readings), document, notices, today),
  answeredOn: row.stamp.at.slice(0, 10),
});

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
  const read = entries.flatMap((entry) => entryOfRow(entry) ?? []);
  const readings = read.filter((entry) => entry.kind === "reading").toReversed();
  return {
    facts,
    record: recordOf(read, today),
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
