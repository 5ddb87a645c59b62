/** A tank's daybook as the pieces of a file, in turns: a long one holds nobody up. */

import { isPictured } from "../../contract/picture/limits.ts";
import { csvPieces, sheetPieces } from "../../contract/take-out/csv-file.ts";
import { jsonPieces, type NamedPicture } from "../../contract/take-out/json.ts";
import type { TakeOutFormat } from "../../contract/take-out/taken.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Desk } from "../../store/store.ts";
import { keptEntries } from "../bring-in/daybook.ts";
import { turn } from "../bring-in/in-turn.ts";

export interface TakeOutRequest {
  readonly tank: { readonly id: string; readonly name: string };
  readonly document: Pick<TankFile, "preferences">;
  readonly format: TakeOutFormat;
  /** ISO dates, both included; null: from the first, to the last. */
  readonly from: string | null;
  readonly to: string | null;
  /** Instant, UTC. */
  readonly now: string;
}

const STRETCH_MS = 8;
/** Letters joined before they go out: many small pieces cost more than they carry. */
const PIECE_LETTERS = 32_000;

export async function* takeOut(desk: Desk, request: TakeOutRequest): AsyncGenerator<string> {
  const { tank, document, format, from, to, now } = request;
  const { entries } = await keptEntries(desk, tank.id, {
    ...(from === null ? {} : { from }),
    ...(to === null ? {} : { to }),
  });
  const preferences = preferencesOf(document.preferences);
  const pieces =
    format === "json"
      ? jsonPieces({ tank, at: now, preferences }, entries, await picturesNamed(desk, entries))
      : format === "csv"
        ? csvPieces(new Set(entries.map(({ kind }) => kind)), entries)
        : sheetPieces(entries, preferences);
  let joined = "";
  let began = performance.now();
  for (const piece of pieces) {
    joined += piece;
    if (joined.length > PIECE_LETTERS) {
      yield joined;
      joined = "";
    }
    if (performance.now() - began < STRETCH_MS) continue;
    await turn();
    began = performance.now();
  }
  if (joined !== "") yield joined;
}

async function picturesNamed(
  desk: Desk,
  entries: readonly { readonly id: string; readonly kind: string }[],
): Promise<ReadonlyMap<string, readonly NamedPicture[]>> {
  const named = new Map<string, NamedPicture[]>();
  const ids = entries.filter(({ kind }) => isPictured(kind)).map(({ id }) => id);
  for (const { entryId, sha256, type, sizeBytes, shows, takenAway } of await desk.pictures(ids)) {
    if (takenAway !== null) continue;
    const one = { sha256, type, size_bytes: sizeBytes, shows };
    named.set(entryId, [...(named.get(entryId) ?? []), one]);
  }
  return named;
}

export const EXTENSION: Readonly<Record<TakeOutFormat, string>> = {
  csv: "csv",
  json: "json",
  readings: "csv",
};
export const TYPE: Readonly<Record<TakeOutFormat, string>> = {
  csv: "text/csv; charset=utf-8",
  json: "application/json; charset=utf-8",
  readings: "text/csv; charset=utf-8",
};
