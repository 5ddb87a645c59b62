/** What the reader of readings must know of a loaded tank. */
import { readingContext } from "../answers/record/entry-context.ts";
import type { ReadingContext } from "../contract/daybook/read-reading.ts";
import type { LoadedTank } from "./route.ts";

export const readingContextOf = (
  {
    document,
    facts,
    entries = [],
  }: Pick<LoadedTank, "document" | "facts"> & Partial<Pick<LoadedTank, "entries">>,
  at: { readonly today: string; readonly now: string },
): ReadingContext => readingContext({ document, facts, entries }, at);
