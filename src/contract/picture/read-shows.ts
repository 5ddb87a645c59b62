/** What a keeper says that a picture shows: one line, read out where the picture can't be seen. */
import type { Message } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import { MOST_PICTURE_WORDS } from "./limits.ts";

export type ReadShows =
  | { readonly ok: true; readonly shows: string }
  | { readonly ok: false; readonly message: Message };

/** Letters that show nothing, or turn the text around them. */
const UNSEEN = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu;

export function readShows(text: string): ReadShows {
  const shows = text.replace(UNSEEN, " ").replace(/\s+/g, " ").trim();
  if (shows.length <= MOST_PICTURE_WORDS) return { ok: true, shows };
  const words = `What it shows "${shown(shows)}": has ${shows.length} letters, up to ${MOST_PICTURE_WORDS} are taken. Put the rest into the entry's note`;
  return { ok: false, message: { kind: "TOOBIG", text: words } };
}
