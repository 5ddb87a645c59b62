/**
 * A picture that was sent for an entry: judged, stripped and kept, for page and API alike. Rules of docs/pictures.md: with
 * animals added or lost alone; of an entry that stands; so many an entry; the same picture twice is one.
 */
import { KIND_LABELS } from "../../contract/daybook/fields.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import { isPictured, MOST_PICTURES } from "../../contract/picture/limits.ts";
import { readPicture, type SentPicture } from "../../contract/picture/read-picture.ts";
import { readShows } from "../../contract/picture/read-shows.ts";
import type { Message, MessageKind } from "../../contract/quantity/outcome.ts";
import type { EntryRow, PictureRow, Stamp, Store } from "../../store/store.ts";

export interface Doubt {
  readonly field: "picture" | "shows";
  readonly message: Message;
}

export type KeptPicture =
  /** `again`: this entry had that very picture. */
  | { readonly kind: "kept"; readonly row: PictureRow; readonly again: boolean }
  | { readonly kind: "refused"; readonly doubts: readonly Doubt[] };

export interface Sent {
  /** Null where none was chosen. */
  readonly file: SentPicture | null;
  readonly shows: string;
}

interface Hand {
  readonly stamp: Stamp;
  readonly newId: () => string;
}

const doubt = (field: Doubt["field"], kind: MessageKind, text: string): Doubt => ({
  field,
  message: { kind, text },
});

export const FULL = `Picture: this entry has ${MOST_PICTURES}, up to ${MOST_PICTURES} are taken. Take one of them away first`;

export async function keepPicture(
  store: Store,
  entry: EntryRow,
  { file, shows: typed }: Sent,
  { stamp, newId }: Hand,
): Promise<KeptPicture> {
  const closed = closedFor(entry);
  if (closed !== null) return { kind: "refused", doubts: [doubt("picture", "CONFLICT", closed)] };
  const shows = readShows(typed);
  const read = file === null ? null : readPicture(file);
  const doubts: Doubt[] = [];
  if (read === null) doubts.push(doubt("picture", "MISSING", "Picture: none was chosen. Take or choose one"));
  else if (!read.ok) doubts.push({ field: "picture", message: read.message });
  if (!shows.ok) doubts.push({ field: "shows", message: shows.message });
  if (!read?.ok || !shows.ok) return { kind: "refused", doubts };
  const { type, width, height, bytes } = read.picture;
  const added = await store.addPicture(
    {
      ...{ id: newId(), entryId: entry.id, type, shows: shows.shows },
      ...{ widthPx: width, heightPx: height, image: bytes },
    },
    MOST_PICTURES,
    stamp,
  );
  return added.kind === "full"
    ? { kind: "refused", doubts: [doubt("picture", "TOOBIG", FULL)] }
    : { kind: "kept", row: added.row, again: added.kind === "again" };
}

/** Why an entry takes no picture; null where it does. */
function closedFor({ kind, kept }: EntryRow): string | null {
  if (!kept) return "Picture: this entry was taken away. Bring it back first";
  if (isPictured(kind)) return null;
  const label = KIND_LABELS[kind as EntryKind] ?? kind;
  return `Picture: it is kept with ${KIND_LABELS.addition.toLowerCase()} or ${KIND_LABELS.loss.toLowerCase()}; this entry is "${label}"`;
}

/** A picture that may be shown: it stands, and so does its entry. */
export async function shownPicture(
  store: Store,
  tankId: string,
  pictureId: string,
): Promise<PictureRow | null> {
  const picture = await store.picture(pictureId);
  if (picture === null || picture.takenAway !== null) return null;
  const entry = await store.entry(picture.entryId);
  if (entry === null || entry.tankId !== tankId || !entry.kept) return null;
  const tank = await store.tank(tankId);
  return tank?.kept === true ? picture : null;
}
