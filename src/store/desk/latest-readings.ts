/**
 * The latest kept reading of each quantity of many tanks, without reading all their readings: for each tank and quantity
 * the last day is one step into an index. On one day the latest is the one of the latest hour; without hours, the one
 * entered last.
 */
import { sql } from "kysely";
import { MEASURED } from "../../contract/daybook/reading.ts";
import type { Db } from "../database.ts";
import type { EntryRow } from "../store.ts";
import { entryRow, type VersionRow } from "./entry-row.ts";

/** Tanks of one statement: databases bound the values that one may carry. */
const TANKS_AT_ONCE = 1_000;

export async function latestReadings(db: Db, tankIds: readonly string[]): Promise<EntryRow[]> {
  const latest: EntryRow[] = [];
  for (let start = 0; start < tankIds.length; start += TANKS_AT_ONCE) {
    latest.push(...(await latestOf(db, tankIds.slice(start, start + TANKS_AT_ONCE))));
  }
  return latest;
}

async function latestOf(db: Db, tankIds: readonly string[]): Promise<EntryRow[]> {
  const { rows } = await sql<VersionRow>`
    WITH measured (subject) AS (VALUES ${sql.join(MEASURED.map((quantity) => sql`(${quantity})`))}),
    last_day AS MATERIALIZED (
      SELECT tank.id AS tank_id, measured.subject,
        (SELECT max(one.on_day) FROM entry AS one
          WHERE one.tank_id = tank.id AND one.subject = measured.subject AND one.kept = 1) AS on_day
      FROM tank CROSS JOIN measured
      WHERE tank.id IN (${sql.join(tankIds)})
    )
    SELECT entry.id, entry.tank_id, entry.kind, v.version, v.saved_at, v.saved_by, v.kept, v.on_day, v.body
    FROM last_day
    JOIN entry ON entry.tank_id = last_day.tank_id AND entry.subject = last_day.subject
      AND entry.on_day = last_day.on_day AND entry.kept = 1
    JOIN entry_version AS v ON v.entry_id = entry.id AND v.version = entry.version
    ORDER BY entry.tank_id, entry.subject, entry.id`.execute(db);
  const byQuantity = new Map<string, EntryRow>();
  for (const row of rows.map(entryRow)) {
    const key = JSON.stringify([row.tankId, row.body["quantity"]]);
    const other = byQuantity.get(key);
    if (other === undefined || instant(row) >= instant(other)) byQuantity.set(key, row);
  }
  return [...byQuantity.values()];
}

/** Hour of a reading; one without an hour comes before those of its day that have one. */
function instant({ body }: EntryRow): number {
  const at = body["observed_at"];
  const time = typeof at === "string" ? Date.parse(at) : Number.NaN;
  return Number.isNaN(time) ? Number.NEGATIVE_INFINITY : time;
}
