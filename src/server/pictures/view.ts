/** Kept pictures as pages show them: of one entry with its form, or of many entries together. */
import { dateWords } from "../../answers/words.ts";
import { type DaybookEntry, entryOfRow } from "../../contract/daybook/kinds.ts";
import { isPictured } from "../../contract/picture/limits.ts";
import type { Desk, EntryRow, PictureRow } from "../../store/store.ts";
import { entrySentence } from "../../web/pages/daybook-words.ts";
import type { PicturesView, PictureView } from "../../web/pages/pictures.tsx";
import { instantWords } from "../pages/instant-words.ts";

export type Deed = "added" | "again" | "taken_away" | "brought_back";
const DONE: Readonly<Record<Deed, string>> = {
  added: "The picture is kept",
  again: "That very picture was kept already",
  taken_away: "The picture is taken away",
  brought_back: "The picture is back",
};

/** Null for kinds of entry that take no pictures. */
export async function picturesView(
  tankId: string,
  row: EntryRow,
  { picture, doubts = [], shows = "" }: PicturesAsked,
  store: Desk,
): Promise<PicturesView | null> {
  const entry = entryOfRow(row);
  if (entry === null || !isPictured(entry.kind)) return null;
  const all = await store.pictures([row.id]);
  const viewed = (takenAway: boolean) =>
    all.filter((one) => (one.takenAway !== null) === takenAway).map((one) => pictureView(one, entry));
  return {
    ...{ tank: tankId, entry: row.id, open: row.kept, shows, doubts },
    shown: viewed(false),
    takenAway: viewed(true),
    done: picture !== undefined && Object.hasOwn(DONE, picture) ? DONE[picture as Deed] : null,
  };
}

export interface PicturesAsked {
  /** What was just done, as the address says it. */
  readonly picture?: string | undefined;
  readonly doubts?: PicturesView["doubts"];
  readonly shows?: string;
}

export function pictureView(row: PictureRow, entry: DaybookEntry): PictureView {
  const { id, shows, widthPx, heightPx, sha256, saved } = row;
  return {
    ...{ id, shows, sha256, width: widthPx, height: heightPx, added: instantWords(saved.at), by: saved.by },
    alt: shows === "" ? `Picture to: ${entrySentence(entry)} ${dateWords(entry.on)}` : shows,
  };
}

/** Those that stand, by entry. */
export async function picturesBeside(
  entries: readonly DaybookEntry[],
  store: Desk,
): Promise<ReadonlyMap<string, readonly PictureView[]>> {
  const beside = new Map<string, PictureView[]>();
  const byId = new Map(entries.filter(({ kind }) => isPictured(kind)).map((one) => [one.id, one]));
  for (const row of await store.pictures([...byId.keys()])) {
    const entry = byId.get(row.entryId);
    if (entry === undefined || row.takenAway !== null) continue;
    beside.set(entry.id, [...(beside.get(entry.id) ?? []), pictureView(row, entry)]);
  }
  return beside;
}
