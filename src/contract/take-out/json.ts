/** A daybook as JSON: every kind of entry whole. One entry a line, so that it can be written and compared piece by piece. */
import { MEASURES } from "../daybook/read-reading.ts";
import { MEASURED } from "../daybook/reading.ts";
import type { TakenEntry, TakenFrom } from "./taken.ts";

/** The name by which a file says what it is; its value is the version of the format. */
export const DAYBOOK_FILE = "grazewell_daybook";

/** A picture of an entry, by its bytes' hash. */
export interface NamedPicture {
  readonly sha256: string;
  readonly type: string;
  readonly size_bytes: number;
  readonly shows: string;
}

const PICTURES_ARE_ELSEWHERE =
  "named by the SHA-256 of their bytes and not in this file: a backup of the store holds them";

const UNITS = Object.fromEntries(
  MEASURED.map((quantity) => [quantity, MEASURES[quantity].units[0] ?? "without unit"]),
);

/** @param pictures of entries, by their id: a file names them, and does not hold them */
export function* jsonPieces(
  from: TakenFrom,
  entries: Iterable<TakenEntry>,
  pictures: ReadonlyMap<string, readonly NamedPicture[]> = new Map(),
): Generator<string> {
  const head = {
    [DAYBOOK_FILE]: 1,
    tank: from.tank,
    taken_out_at: from.at,
    // Texts mean what they say to a keeper of these habits.
    preferences: from.preferences,
    units: UNITS,
    ...(pictures.size === 0 ? {} : { pictures: PICTURES_ARE_ELSEWHERE }),
  };
  yield `${JSON.stringify(head).slice(0, -1)},"entries":[`;
  let first = true;
  for (const { id, kind, on, body } of entries) {
    const named = pictures.get(id);
    const line = JSON.stringify({
      ...{ entry: id, kind, on, body: withoutNulls(body) },
      ...(named === undefined ? {} : { pictures: named }),
    });
    yield `${first ? "" : ","}\n${line}`;
    first = false;
  }
  yield "\n]}\n";
}

const withoutNulls = (body: object): object =>
  Object.fromEntries(Object.entries(body).filter(([, value]) => value !== null));
