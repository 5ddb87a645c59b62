/** Readings of the daybook, as the answers take them; what is no reading of this program's is left out. */
import type { KeptReading } from "../../answers/bench/latest.ts";
import { readingBody } from "../../contract/daybook/reading.ts";
import type { EntryRow } from "../../store/store.ts";

export const keptReadings = (rows: readonly EntryRow[]): readonly KeptReading[] =>
  rows.flatMap(({ id, on, body }) => {
    const read = readingBody.safeParse(body);
    return read.success ? [{ id, on, body: read.data }] : [];
  });
