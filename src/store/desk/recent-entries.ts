/**
 * The latest kept entries of many tanks at once, so many of each kind (of readings: of each quantity), without reading
 * the rest: the day from which they are wanted is one step into an index. Of that first day all are given, so there may
 * be a few more. Beside it, one number a tank that grows with every change of its entries.
 */
import { sql } from "kysely";
import { ENTRY_KINDS } from "../../contract/daybook/kinds.ts";
import { MEASURED } from "../../contract/daybook/reading.ts";
import type { Db } from "../database.ts";
import type { EntryRow, RecentQuery } from "../store.ts";
import { entryRow, type VersionRow } from "./entry-row.ts";

/** Tanks of one statement: databases bound the values that one may carry. */
const TANKS_AT_ONCE = 1_000;

const inParts = async <T>(
  tankIds: readonly string[],
  ask: (some: readonly string[]) => Promise<readonly T[]>,
): Promise<T[]> => {
  const all: T[] = [];
  for (let start = 0; start < tankIds.length; start += TANKS_AT_ONCE) {
    all.push(...(await ask(tankIds.slice(start, start + TANKS_AT_ONCE))));
  }
  return all;
};

/** Oldest first within a tank. */
export const recentEntries = (
  db: Db,
  tankIds: readonly string[],
  { readings, others }: RecentQuery,
): Promise<EntryRow[]> =>
  inParts(tankIds, async (some) => {
    const lists = [
      await recentOf(db, some, "subject", MEASURED, readings),
      await recentOf(
        db,
        some,
        "kind",
        ENTRY_KINDS.filter((kind) => kind !== "reading"),
        others,
      ),
    ];
    return lists
      .flat()
      .map(entryRow)
      .sort((a, b) => compare(a.tankId, b.tankId) || compare(a.on, b.on) || compare(a.id, b.id));
  });

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

async function recentOf(
  db: Db,
  tankIds: readonly string[],
  by: "subject" | "kind",
  names: readonly string[],
  each: number,
): Promise<readonly VersionRow[]> {
  if (!Number.isInteger(each) || each < 1) {
    throw new RangeError(`Cannot list entries: so many of each must be 1 or more, received ${each}`);
  }
  const column = sql.ref(`one.${by}`);
  const ofKind = by === "kind" ? sql`AND one.subject IS NULL` : sql``;
  const { rows } = await sql<VersionRow>`
    WITH wanted (name) AS (VALUES ${sql.join(names.map((name) => sql`(${name})`))}),
    since AS MATERIALIZED (
      SELECT tank.id AS tank_id, wanted.name, COALESCE((
        SELECT one.on_day FROM entry AS one
        WHERE one.tank_id = tank.id AND ${column} = wanted.name AND one.kept = 1 ${ofKind}
        ORDER BY one.on_day DESC LIMIT 1 OFFSET ${each - 1}), '') AS from_day
      FROM tank CROSS JOIN wanted
      WHERE tank.id IN (${sql.join(tankIds)})
    )
    SELECT one.id, one.tank_id, one.kind, v.version, v.saved_at, v.saved_by, v.kept, v.on_day, v.body
    FROM since
    JOIN entry AS one ON one.tank_id = since.tank_id AND ${column} = since.name
      AND one.on_day >= since.from_day AND one.kept = 1 ${ofKind}
    JOIN entry_version AS v ON v.entry_id = one.id AND v.version = one.version`.execute(db);
  return rows;
}

/** Tanks without any entry are not in it. */
export async function entryMarks(db: Db, tankIds: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const marks = await inParts(tankIds, (some) =>
    db
      .selectFrom("entry")
      .select(({ fn }) => ["tank_id", fn.sum<number | string>("version").as("mark")])
      .where("tank_id", "in", some)
      .groupBy("tank_id")
      .execute(),
  );
  return new Map(marks.map(({ tank_id, mark }) => [tank_id, Number(mark)]));
}
