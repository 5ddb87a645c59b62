/** Pictures of entries over the API: the same reading, the same rules, the same store as the page. */
import type { NewPictureSent, PictureOut } from "../../contract/http/picture-operations.ts";
import { isPictured, MOST_PICTURES } from "../../contract/picture/limits.ts";
import type { EntryRow, PictureRow } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { FULL, keepPicture } from "../pictures/keep.ts";
import { type Call, fault, type Handler, mend, notFound } from "./call.ts";
import { keptTank, stampOf } from "./tanks.ts";

const BASE64 = /^[A-Za-z0-9+/]*={0,2}$/;

async function entryOf(call: Call): Promise<EntryRow> {
  const tank = await keptTank(call);
  const row = await call.context.store.entry(call.params["entry"] ?? "");
  if (row === null || row.tankId !== tank.id) throw notFound();
  return row;
}

export const listPictures: Handler = async (call) => {
  const entry = await entryOf(call);
  const pictures = await call.context.store.pictures([entry.id]);
  return { status: 200, body: { pictures: pictures.map((one) => viewOf(one, entry)) } };
};

export const addPicture: Handler = async (call) => {
  const entry = await entryOf(call);
  const { name = "", shows = "", image_base64: text } = call.body as NewPictureSent;
  if (text.length % 4 !== 0 || !BASE64.test(text)) {
    const detail =
      "image_base64: must be Base64 in whole groups of four signs, without spaces or a data: address";
    throw mend(422, [fault("/image_base64", "FORMAT", detail)]);
  }
  const sent = { file: { name, bytes: Buffer.from(text, "base64") }, shows };
  const hand = { stamp: stampOf(call), newId: call.context.newId };
  const kept = await keepPicture(call.context.store, entry, sent, hand);
  if (kept.kind === "refused") {
    throw mend(
      422,
      kept.doubts.map(({ field, message }) =>
        fault(field === "picture" ? "/image_base64" : "/shows", message.kind, message.text),
      ),
    );
  }
  return { status: kept.again ? 200 : 201, body: viewOf(kept.row, entry) };
};

const keeping =
  (kept: boolean): Handler =>
  async (call) => {
    const entry = await entryOf(call);
    const { store } = call.context;
    const before = await store.picture(call.params["picture"] ?? "");
    if (before?.entryId !== entry.id || !isPictured(entry.kind)) throw notFound();
    const done = await store.keepPicture(before.id, kept, MOST_PICTURES, stampOf(call));
    if (done === "full") throw mend(422, [fault("", "TOOBIG", FULL)]);
    const row = await store.picture(before.id);
    if (row === null) throw notFound();
    return { status: 200, body: viewOf(row, entry) };
  };
export const takePictureAway = keeping(false);
export const bringPictureBack = keeping(true);

const viewOf = (row: PictureRow, { tankId }: EntryRow): PictureOut => ({
  ...{ id: row.id, entry: row.entryId, type: row.type as PictureOut["type"] },
  ...{ width_px: row.widthPx, height_px: row.heightPx, size_bytes: row.sizeBytes },
  ...{ sha256: row.sha256, shows: row.shows, added_at: row.saved.at, added_by: row.saved.by },
  kept: row.takenAway === null,
  address: to.picture(tankId, row.id),
});
