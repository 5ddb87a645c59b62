/** A daybook as JSON: every kind of entry whole. One entry a line, so that it can be written and compared piece by piece. */
import { MEASURES } from "../daybook/read-reading.ts";
import { MEASURED } from "../daybook/reading.ts";
import type { TakenEntry, TakenFrom } from "./taken.ts";

/** The name by which a file says what it is; its value is the version of the format. */
export const DAYBOOK_FILE = "grazewell_daybook";

const UNITS = Object.fromEntries(
  MEASURED.map((quantity) => [quantity, MEASURES[quantity].units[0] ?? "without unit"]),
);

export function* jsonPieces(from: TakenFrom, entries: Iterable<TakenEntry>): Generator<string> {
  const head = {
    [DAYBOOK_FILE]: 1,
    tank: from.tank,
    taken_out_at: from.at,
    // Texts mean what they say to a keeper of these habits.
    preferences: from.preferences,
    units: UNITS,
  };
  yield `${JSON.stringify(head).slice(0, -1)},"entries":[`;
  let first = true;
  for (const { id, kind, on, body } of entries) {
    const line = JSON.stringify({ entry: id, kind, on, body: withoutNulls(body) });
    yield `${first ? "" : ","}\n${line}`;
    first = false;
  }
  yield "\n]}\n";
}

const withoutNulls = (body: object): object =>
  Object.fromEntries(Object.entries(body).filter(([, value]) => value !== null));
