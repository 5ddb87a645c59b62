/**
 * Pictures of entries. Bytes are written once and never changed; the same bytes are one picture of an entry, so that a
 * form sent twice adds one. Taking one away marks it. Lists never read the bytes.
 */
import { createHash } from "node:crypto";
import type { Db } from "../database.ts";
import type { Desk, PictureRow } from "../store.ts";
import { plain } from "./text.ts";

type Part = Pick<Desk, "addPicture" | "pictures" | "picture" | "pictureImage" | "keepPicture">;

/** Ids of one statement: databases bound the values that one may carry. */
const IDS_AT_ONCE = 500;

export const pictures = (db: Db): Part => {
  const rows = () =>
    db
      .selectFrom("picture")
      .select(["id", "entry_id", "sha256", "type", "width_px", "height_px", "size_bytes", "shows"])
      .select(["saved_at", "saved_by", "taken_away_at", "taken_away_by"]);

  async function picture(id: string): Promise<PictureRow | null> {
    const row = await rows().where("id", "=", id).executeTakeFirst();
    return row === undefined ? null : pictureRow(row);
  }

  /** Holds the entry, so that two pictures added at once are counted one after the other. */
  async function room(entryId: string, most: number): Promise<boolean> {
    await db
      .updateTable("entry")
      .set(({ ref }) => ({ version: ref("version") }))
      .where("id", "=", entryId)
      .execute();
    const { n } = await db
      .selectFrom("picture")
      .select(({ fn }) => fn.countAll<number | string>().as("n"))
      .where("entry_id", "=", entryId)
      .where("taken_away_at", "is", null)
      .executeTakeFirstOrThrow();
    return Number(n) < most;
  }

  return {
    async addPicture({ id, entryId, type, widthPx, heightPx, shows, image }, most, stamp) {
      const sha256 = createHash("sha256").update(image).digest("hex");
      const before = await rows()
        .where("entry_id", "=", entryId)
        .where("sha256", "=", sha256)
        .executeTakeFirst();
      const stands = before?.taken_away_at === null;
      if (!stands && !(await room(entryId, most))) return { kind: "full" };
      if (before !== undefined) {
        const words = shows === "" ? before.shows : plain("what a picture shows", shows);
        await db
          .updateTable("picture")
          .set({ shows: words, taken_away_at: null, taken_away_by: null })
          .where("id", "=", before.id)
          .execute();
        return { kind: "again", row: { ...pictureRow(before), shows: words, takenAway: null } };
      }
      const size = image.length;
      await db
        .insertInto("picture")
        .values({
          ...{ id: plain("a picture's id", id), entry_id: entryId, sha256, type, image: Buffer.from(image) },
          ...{ width_px: widthPx, height_px: heightPx, size_bytes: size },
          ...{ shows: plain("what a picture shows", shows), saved_at: stamp.at, saved_by: stamp.by },
          ...{ taken_away_at: null, taken_away_by: null },
        })
        .execute();
      const row = { id, entryId, sha256, type, widthPx, heightPx, sizeBytes: size, shows };
      return { kind: "added", row: { ...row, saved: stamp, takenAway: null } };
    },
    async pictures(entryIds) {
      const all: PictureRow[] = [];
      for (let start = 0; start < entryIds.length; start += IDS_AT_ONCE) {
        const some = await rows()
          .where("entry_id", "in", entryIds.slice(start, start + IDS_AT_ONCE))
          .orderBy("saved_at")
          .orderBy("id")
          .execute();
        all.push(...some.map(pictureRow));
      }
      return all;
    },
    picture,
    async pictureImage(id) {
      const row = await db.selectFrom("picture").select("image").where("id", "=", id).executeTakeFirst();
      return row?.image ?? null;
    },
    async keepPicture(id, kept, most, stamp) {
      const before = await picture(id);
      if (before === null) return "not_found";
      if ((before.takenAway === null) === kept) return "done";
      if (kept && !(await room(before.entryId, most))) return "full";
      await db
        .updateTable("picture")
        .set({ taken_away_at: kept ? null : stamp.at, taken_away_by: kept ? null : stamp.by })
        .where("id", "=", id)
        .execute();
      return "done";
    },
  };
};

interface Row {
  readonly id: string;
  readonly entry_id: string;
  readonly sha256: string;
  readonly type: string;
  readonly width_px: number;
  readonly height_px: number;
  readonly size_bytes: number;
  readonly shows: string;
  readonly saved_at: string;
  readonly saved_by: string;
  readonly taken_away_at: string | null;
  readonly taken_away_by: string | null;
}

const pictureRow = (row: Row): PictureRow => ({
  ...{ id: row.id, entryId: row.entry_id, sha256: row.sha256, type: row.type, shows: row.shows },
  ...{ widthPx: row.width_px, heightPx: row.height_px, sizeBytes: row.size_bytes },
  saved: { at: row.saved_at, by: row.saved_by },
  takenAway: row.taken_away_at === null ? null : { at: row.taken_away_at, by: row.taken_away_by ?? "" },
});
