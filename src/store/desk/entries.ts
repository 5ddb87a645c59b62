/** Lines of the daybook and their versions; written as tanks are. Lists: the latest day first, then by id, backwards. */
import type { Db } from "../database.ts";
import type { Desk, EntryQuery, EntryRow, Json, NewEntry } from "../store.ts";
import { entryRow } from "./entry-row.ts";
import { latestReadings } from "./latest-readings.ts";
import { entryMarks, recentEntries } from "./recent-entries.ts";
import { bit, isVersion, json, plain, versionColumns } from "./text.ts";

type Part = Pick<
  Desk,
  | "addEntries"
  | "entry"
  | "entries"
  | "correctEntry"
  | "entryHistory"
  | "latestReadings"
  | "recentEntries"
  | "entryMarks"
>;

/** Most rows of one list. */
const MOST = 40_000;
/** Rows of one statement: databases bound the values that one may carry. */
const ROWS_AT_ONCE = 2_000;

export const entries = (db: Db): Part => {
  const versions = () =>
    db
      .selectFrom("entry")
      .innerJoin("entry_version as v", "v.entry_id", "entry.id")
      .select(["entry.id", "entry.tank_id", "entry.kind"])
      .select(["v.version", "v.saved_at", "v.saved_by", "v.kept", "v.on_day", "v.body"]);
  const latest = () => versions().whereRef("v.version", "=", "entry.version");

  async function entry(id: string): Promise<EntryRow | null> {
    const row = await latest().where("entry.id", "=", id).executeTakeFirst();
    return row === undefined ? null : entryRow(row);
  }

  return {
    async addEntries(tankId, added, stamp) {
      for (let start = 0; start < added.length; start += ROWS_AT_ONCE) {
        const some = added.slice(start, start + ROWS_AT_ONCE);
        await db
          .insertInto("entry")
          .values(some.map((one) => ({ ...line(one), tank_id: tankId, version: 1, kept: 1 })))
          .execute();
        await db
          .insertInto("entry_version")
          .values(
            some.map(({ id, on, body }) => ({
              ...versionColumns(stamp, true),
              entry_id: id,
              version: 1,
              on_day: on,
              body: json(body),
            })),
          )
          .execute();
      }
      return added.map(({ id, kind, on, body }) => ({
        id,
        tankId,
        kind,
        on,
        body,
        version: 1,
        stamp,
        kept: true,
      }));
    },
    entry,
    async entries(tankId, query) {
      return (await asked(latest().where("entry.tank_id", "=", tankId), query).execute()).map(entryRow);
    },
    async correctEntry(id, from, { on, body, kept }, stamp) {
      const before = await entry(id);
      if (before === null) return { kind: "not_found" };
      if (before.version !== from || !isVersion(from)) return { kind: "conflict", current: before };
      const version = from + 1;
      const { numUpdatedRows } = await db
        .updateTable("entry")
        .set({ version, kept: bit(kept), on_day: plain("a day", on), subject: subjectOf(before.kind, body) })
        .where("id", "=", id)
        .where("version", "=", from)
        .executeTakeFirst();
      if (numUpdatedRows !== 1n) return { kind: "conflict", current: (await entry(id)) ?? before };
      await db
        .insertInto("entry_version")
        .values({ entry_id: id, version, ...versionColumns(stamp, kept), on_day: on, body: json(body) })
        .execute();
      return { kind: "saved", row: { ...before, version, stamp, kept, on, body } };
    },
    async entryHistory(id) {
      return (await versions().where("entry.id", "=", id).orderBy("v.version").execute()).map(entryRow);
    },
    latestReadings: (tankIds) => latestReadings(db, tankIds),
    recentEntries: (tankIds, query) => recentEntries(db, tankIds, query),
    entryMarks: (tankIds) => entryMarks(db, tankIds),
  };

  function asked(rows: ReturnType<typeof latest>, query: EntryQuery) {
    const { kind, from, to, limit, after, withRemoved } = query;
    if (!Number.isInteger(limit) || limit < 1 || limit > MOST) {
      throw new RangeError(`Cannot list entries: limit must be 1 to ${MOST}, received ${limit}`);
    }
    let some = rows.orderBy("entry.on_day", "desc").orderBy("entry.id", "desc").limit(limit);
    if (kind !== undefined) some = some.where("entry.kind", "=", kind);
    if (from !== undefined) some = some.where("entry.on_day", ">=", from);
    if (to !== undefined) some = some.where("entry.on_day", "<=", to);
    if (withRemoved !== true) some = some.where("entry.kept", "=", 1);
    if (after !== undefined) {
      some = some
        .where("entry.on_day", "<=", after.on)
        .where(({ eb, or }) => or([eb("entry.on_day", "<", after.on), eb("entry.id", "<", after.id)]));
    }
    return some;
  }
};

function line({ id, kind, on, body }: NewEntry) {
  return {
    id: plain("an entry's id", id),
    kind: plain("an entry's kind", kind),
    on_day: plain("a day", on),
    subject: subjectOf(kind, body),
  };
}

/** Of readings: the quantity. */
function subjectOf(kind: string, body: Json): string | null {
  const quantity = body["quantity"];
  return kind === "reading" && typeof quantity === "string" ? plain("a quantity", quantity) : null;
}
