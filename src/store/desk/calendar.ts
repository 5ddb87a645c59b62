/** What calendars were given, append-only, and the feeds: a feed changes once, when it is taken back. */
import { sql } from "kysely";
import type { Db } from "../database.ts";
import type { Desk, FeedRow } from "../store.ts";
import { bit, json, plain, read } from "./text.ts";

type Part = Pick<Desk, "givenEvents" | "giveEvents" | "addFeed" | "feeds" | "feedByHash" | "takeBackFeed">;

/** A calendar has tens of events: more in one statement there are never. */
const ROWS_AT_ONCE = 200;

export const calendar = (db: Db): Part => {
  const feeds = () =>
    db
      .selectFrom("calendar_feed")
      .select(["id", "tank_id", "made_at", "made_by", "taken_back_at", "taken_back_by"]);
  return {
    async givenEvents(tankId) {
      const rows = await db
        .selectFrom("given_event as g")
        .select(["g.care", "g.sequence", "g.given_at", "g.cancelled", "g.reach", "g.event"])
        .where("g.tank_id", "=", tankId)
        .where(
          "g.sequence",
          "=",
          sql<number>`(SELECT max(later.sequence) FROM given_event AS later
            WHERE later.tank_id = g.tank_id AND later.care = g.care)`,
        )
        .orderBy("g.care")
        .execute();
      return rows.map(({ care, sequence, given_at, cancelled, reach, event }) => ({
        ...{ care, sequence, at: given_at, cancelled: cancelled === 1, reach, event: read(event) },
      }));
    },
    async giveEvents(tankId, events) {
      for (let start = 0; start < events.length; start += ROWS_AT_ONCE) {
        await db
          .insertInto("given_event")
          .values(
            events
              .slice(start, start + ROWS_AT_ONCE)
              .map(({ care, sequence, at, cancelled, reach, event }) => ({
                tank_id: tankId,
                care: plain("a duty's id", care),
                ...{ sequence, given_at: at, cancelled: bit(cancelled), reach, event: json(event) },
              })),
          )
          .execute();
      }
    },
    async addFeed({ id, tankId, tokenHash }, stamp) {
      await db
        .insertInto("calendar_feed")
        .values({
          ...{ id: plain("a feed's id", id), tank_id: tankId, token_hash: plain("a hash", tokenHash) },
          ...{ made_at: stamp.at, made_by: stamp.by, taken_back_at: null, taken_back_by: null },
        })
        .execute();
    },
    async feeds(tankId) {
      const rows = await feeds().where("tank_id", "=", tankId).orderBy("made_at").orderBy("id").execute();
      return rows.map(feedRow);
    },
    async feedByHash(tokenHash) {
      const row = await feeds().where("token_hash", "=", tokenHash).executeTakeFirst();
      return row === undefined ? null : feedRow(row);
    },
    async takeBackFeed(id, stamp) {
      const { numUpdatedRows } = await db
        .updateTable("calendar_feed")
        .set({ taken_back_at: stamp.at, taken_back_by: stamp.by })
        .where("id", "=", id)
        .where("taken_back_at", "is", null)
        .executeTakeFirst();
      return numUpdatedRows === 1n;
    },
  };
};

interface Row {
  readonly id: string;
  readonly tank_id: string;
  readonly made_at: string;
  readonly made_by: string;
  readonly taken_back_at: string | null;
  readonly taken_back_by: string | null;
}

const feedRow = (row: Row): FeedRow => ({
  id: row.id,
  tankId: row.tank_id,
  made: { at: row.made_at, by: row.made_by },
  takenBack: row.taken_back_at === null ? null : { at: row.taken_back_at, by: row.taken_back_by ?? "" },
});
