/** Acts: which versions of which entries were made as one, so that they can be undone as one. Written as entries are. */
import { sql } from "kysely";
import type { Db } from "../database.ts";
import type { ActRow, Desk } from "../store.ts";
import { entryRow } from "./entry-row.ts";
import { json, plain, read } from "./text.ts";

type Part = Pick<
  Desk,
  "addAct" | "act" | "acts" | "actEntries" | "addedBeside" | "undoAct" | "takeAdded" | "undoneAdditions"
>;

/** Rows of one statement: databases bound the values that one may carry. */
const ROWS_AT_ONCE = 500;
/** Between two statements of many: SQLite's promises alone would let nobody else have a turn. */
const turn = () => new Promise<void>((next) => setImmediate(next));

export const acts = (db: Db): Part => {
  const rows = () =>
    db
      .selectFrom("act")
      .select(["id", "tank_id", "kind", "saved_at", "saved_by", "about", "undone_at", "undone_by"]);

  return {
    async addAct({ id, tankId, kind, about }, entries, stamp) {
      await db
        .insertInto("act")
        .values({
          id: plain("an act's id", id),
          tank_id: tankId,
          kind: plain("an act's kind", kind),
          saved_at: stamp.at,
          saved_by: stamp.by,
          about: json(about),
          undone_at: null,
          undone_by: null,
        })
        .execute();
      for (let start = 0; start < entries.length; start += ROWS_AT_ONCE) {
        const some = entries.slice(start, start + ROWS_AT_ONCE);
        await db
          .insertInto("act_entry")
          .values(
            some.map(({ entryId, version }) => ({
              act_id: id,
              entry_id: entryId,
              version,
              undone_version: null,
            })),
          )
          .execute();
        await turn();
      }
      return { id, tankId, kind, stamp, about, undone: null };
    },
    async act(id) {
      const row = await rows().where("id", "=", id).executeTakeFirst();
      return row === undefined ? null : actRow(row);
    },
    async acts(tankId, kind, limit) {
      const some = await rows()
        .where("tank_id", "=", tankId)
        .where("kind", "=", kind)
        .orderBy("saved_at", "desc")
        .orderBy("id", "desc")
        .limit(limit)
        .execute();
      return some.map(actRow);
    },
    async actEntries(id) {
      return await db
        .selectFrom("act_entry")
        .select(["entry_id as entryId", "version", "undone_version as undoneVersion"])
        .where("act_id", "=", id)
        .orderBy("entry_id")
        .execute();
    },
    async addedBeside(entryId, kind) {
      const others = await db
        .selectFrom("act_entry as a")
        .innerJoin("act", "act.id", "a.act_id")
        .innerJoin("act_entry as b", "b.act_id", "a.act_id")
        .innerJoin("entry", "entry.id", "b.entry_id")
        .innerJoin("entry_version as v", (join) =>
          join.onRef("v.entry_id", "=", "entry.id").onRef("v.version", "=", "entry.version"),
        )
        .select(["entry.id", "entry.tank_id", "entry.kind"])
        .select(["v.version", "v.saved_at", "v.saved_by", "v.kept", "v.on_day", "v.body"])
        .where("a.entry_id", "=", entryId)
        .where("a.version", "=", 1)
        .where("act.kind", "=", kind)
        .where("b.entry_id", "!=", entryId)
        .where("b.version", "=", 1)
        .orderBy("entry.id")
        .execute();
      return others.map(entryRow);
    },
    async undoAct(id, entries, stamp) {
      const { numUpdatedRows } = await db
        .updateTable("act")
        .set({ undone_at: stamp.at, undone_by: stamp.by })
        .where("id", "=", id)
        .where("undone_at", "is", null)
        .executeTakeFirst();
      if (numUpdatedRows !== 1n) return false;
      for (const version of new Set(entries.map(({ undoneVersion }) => undoneVersion))) {
        const all = entries.filter(({ undoneVersion }) => undoneVersion === version);
        for (let start = 0; start < all.length; start += ROWS_AT_ONCE) {
          const ids = all.slice(start, start + ROWS_AT_ONCE).map(({ entryId }) => entryId);
          await db
            .updateTable("act_entry")
            .set({ undone_version: version })
            .where("act_id", "=", id)
            .where("entry_id", "in", ids)
            .execute();
          await turn();
        }
      }
      return true;
    },
    async takeAdded(entryIds, stamp) {
      let taken = 0;
      for (let start = 0; start < entryIds.length; start += ROWS_AT_ONCE) {
        const ids = entryIds.slice(start, start + ROWS_AT_ONCE);
        const { numUpdatedRows } = await db
          .updateTable("entry")
          .set({ version: 2, kept: 0 })
          .where("id", "in", ids)
          .where("version", "=", 1)
          .executeTakeFirst();
        taken += Number(numUpdatedRows);
        const { at, by } = stamp;
        await sql`
          INSERT INTO entry_version (entry_id, version, saved_at, saved_by, kept, on_day, body)
          SELECT v.entry_id, 2, ${at}, ${by}, 0, v.on_day, v.body
          FROM entry_version AS v JOIN entry ON entry.id = v.entry_id
          WHERE v.version = 1 AND entry.version = 2 AND entry.id IN (${sql.join(ids)})
            AND NOT EXISTS (SELECT 1 FROM entry_version AS w WHERE w.entry_id = v.entry_id AND w.version = 2)`.execute(
          db,
        );
        await turn();
      }
      return taken;
    },
    async undoneAdditions(tankId) {
      const taken = await db
        .selectFrom("act_entry as a")
        .innerJoin("entry", "entry.id", "a.entry_id")
        .select("entry.id")
        .where("entry.tank_id", "=", tankId)
        .where("entry.kept", "=", 0)
        .where("a.version", "=", 1)
        .whereRef("a.undone_version", "=", "entry.version")
        .execute();
      return new Set(taken.map(({ id }) => id));
    },
  };
};

interface Row {
  readonly id: string;
  readonly tank_id: string;
  readonly kind: string;
  readonly saved_at: string;
  readonly saved_by: string;
  readonly about: string;
  readonly undone_at: string | null;
  readonly undone_by: string | null;
}

const actRow = (row: Row): ActRow => ({
  id: row.id,
  tankId: row.tank_id,
  kind: row.kind,
  stamp: { at: row.saved_at, by: row.saved_by },
  about: read(row.about),
  undone: row.undone_at === null ? null : { at: row.undone_at, by: row.undone_by ?? "" },
});
