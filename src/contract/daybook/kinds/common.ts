/** What every entry of the daybook has beside its own matter, and words that several kinds share. */
import { z } from "zod";

/** When it was seen or done: as typed; the instant with its offset where an hour was said; a note. */
export const entryCommon = {
  observed_text: z.string().max(60),
  observed_at: z.string().nullable(),
  note: z.string().max(10_000).nullable(),
};

/** An animal as a keeper names it. */
export const namedAnimal = {
  /** As typed: "astraea". */
  animal_text: z.string().max(200),
  /** Id in the catalogue; null for one that it does not know: kept as the keeper's own, and counted for nothing. */
  animal: z.string().max(100).nullable(),
};

export const heads = z.number().int().min(0).max(100_000);

/** How a count or amount was meant: "about 8" is less sure than "8". */
export const sureness = z.enum(["counted", "about"]);
