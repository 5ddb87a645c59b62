/**
 * A kept tank, read: its document with the latest kept readings of the daybook among its own, through the one reader.
 * A document was judged when it was kept; where a later program reads it otherwise, that is said, not guessed away.
 */
import { createHash } from "node:crypto";
import { findAnimal } from "../catalogue/index.ts";
import { type ReadingBody, readingBody } from "../contract/daybook/reading.ts";
import type { Finding } from "../contract/tank-file/finding.ts";
import { readTankFile, type TankFileResult } from "../contract/tank-file/read.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";
import type { EntryRow, Store, TankRow } from "../store/store.ts";
import { Recent } from "./recent.ts";
import type { LoadedTank } from "./route.ts";

/** The latest readings that are loaded with a tank. */
const READINGS_LOADED = 200;
/** The engine starts from the last ones of each quantity: more say nothing, and each costs reading. */
const READINGS_TOLD = 5;

/** A kept document that can no longer be read. */
export class TankUnread extends Error {
  readonly findings: readonly Finding[];
  readonly tankId: string;
  constructor(tankId: string, findings: readonly Finding[]) {
    super(`Tank ${tankId} can't be read: ${findings[0]?.message.text ?? "no reason given"}`);
    this.tankId = tankId;
    this.findings = findings;
  }
}

type DocumentReading = NonNullable<TankFile["readings"]>[number];

/** Tanks read lately, by their text: pages of one tank ask for the same again and again. */
const read = new Recent<TankFileResult>(500);

export function readDocument(document: TankFile, today: string): TankFileResult {
  const text = JSON.stringify(document);
  // Of a document only its hash is held: one sent to the API may be a megabyte.
  const key = createHash("sha256").update(`${today}\n${text}`).digest("base64url");
  const known = read.get(key);
  if (known !== undefined) return known;
  const result = readTankFile(text, { today, findAnimal });
  read.set(key, result);
  return result;
}

/** The latest kept readings of a tank, as many as are read with it. */
export const readingsOf = (store: Store, tank: string): Promise<readonly EntryRow[]> =>
  store.entries(tank, { kind: "reading", limit: READINGS_LOADED });

/** A kept tank's document with its readings, as the one reader finds it. */
export async function readKept(store: Store, row: TankRow, today: string): Promise<TankFileResult> {
  const readings = await readingsOf(store, row.id);
  return readDocument(withReadings(row.facts as unknown as TankFile, readings), today);
}

/** @throws TankUnread */
export async function loadTank(store: Store, id: string, today: string): Promise<LoadedTank | null> {
  const row = await store.tank(id);
  if (row === null || !row.kept) return null;
  return loaded(row, await readingsOf(store, id), today);
}

/** @throws TankUnread */
export function loaded(row: TankRow, readings: readonly EntryRow[], today: string): LoadedTank {
  const document = row.facts as unknown as TankFile;
  const result = readDocument(withReadings(document, readings), today);
  if (!result.ok) throw new TankUnread(row.id, result.findings);
  return {
    row,
    head: {
      id: row.id,
      name: result.facts.name,
      keeper: row.keeper.name,
      demonstration: row.demonstration,
    },
    document,
    facts: result.facts,
    notices: result.notices,
    readings,
  };
}

/** The latest of each quantity beside the document's own; `latestFirst` as the store gives them. */
export function withReadings(document: TankFile, latestFirst: readonly EntryRow[]): TankFile {
  const told = new Map<string, number>();
  const added: DocumentReading[] = [];
  for (const { on, body } of latestFirst) {
    const quantity = String(body["quantity"]);
    const count = told.get(quantity) ?? 0;
    if (count >= READINGS_TOLD) continue;
    const parsed = readingBody.safeParse(body);
    if (!parsed.success) continue;
    told.set(quantity, count + 1);
    added.push(asWritten(on, parsed.data));
  }
  if (added.length === 0) return document;
  return { ...document, readings: [...(document.readings ?? []), ...added] };
}

function asWritten(on: string, { quantity, text, kit_step }: ReadingBody): DocumentReading {
  return {
    on,
    [quantity]: text,
    ...(kit_step === null ? {} : { kit_steps: { [quantity]: kit_step } }),
  };
}
