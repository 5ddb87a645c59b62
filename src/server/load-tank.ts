/**
 * A kept tank, read: its answers and its daybook as of today, through the one reader, and the record that readers of the
 * daybook take. Pages ask for the same tank again and again: what was read is kept by versions of tank and entries.
 * A document was judged when it was kept; where a later program reads it otherwise, that is said, not guessed away.
 */
import { createHash } from "node:crypto";
import { zoneOf } from "../answers/record/entry-context.ts";
import { recordOf } from "../answers/record/record.ts";
import { withTold } from "../answers/record/told.ts";
import { findAnimal } from "../catalogue/index.ts";
import { olderLots } from "../contract/daybook/apply/lots.ts";
import type { Since } from "../contract/daybook/apply/scene.ts";
import { readingsTold } from "../contract/daybook/apply/seen.ts";
import { byDay } from "../contract/daybook/by-day.ts";
import { type DaybookEntry, entryOfRow } from "../contract/daybook/kinds.ts";
import { dayIn } from "../contract/quantity/zone.ts";
import type { Finding } from "../contract/tank-file/finding.ts";
import { readTankFile, type TankFileResult } from "../contract/tank-file/read.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";
import type { TankRecord } from "../engine/types/record.ts";
import type { EntryRow, Store, TankRow } from "../store/store.ts";
import { givenSince } from "./given-since.ts";
import { Recent } from "./recent.ts";
import type { LoadedTank } from "./route.ts";
import { type WithDaybook, withDaybook } from "./with-daybook.ts";

/** The latest readings of each quantity, and entries of each other kind, that are loaded with a tank. */
export const LOADED = { readings: 200, others: 2000 };
/** The latest readings of all quantities that pages list. */
const READINGS_LISTED = 200;

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

/** The latest kept readings of a tank, as many as pages list. */
export const readingsOf = (store: Store, tank: string): Promise<readonly EntryRow[]> =>
  store.entries(tank, { kind: "reading", limit: READINGS_LISTED });

/** A kept tank and its daybook, as the one reader finds them. */
export async function readKept(store: Store, row: TankRow, today: string): Promise<TankFileResult> {
  return (await keptDaybook(store, row, today)).read.result;
}

/**
 * @param today of this machine @param now an instant, UTC: with it the day is the tank's own, where its zone is known
 * @throws TankUnread
 */
export async function loadTank(
  store: Store,
  id: string,
  today: string,
  now: string | null = null,
): Promise<LoadedTank | null> {
  const row = await store.tank(id);
  if (row === null || !row.kept) return null;
  const daybook = await keptDaybook(store, row, today);
  const zone = zoneOf({ document: row.facts as unknown as TankFile, entries: daybook.entries }, today);
  const day = zone === null || now === null ? today : dayIn(now, zone);
  return tankOf(row, day === today ? daybook : await keptDaybook(store, row, day), { zone, today: day });
}

/** Of entries given, latest first; none say how the answers read alone. @throws TankUnread */
export function loaded(
  row: TankRow,
  entries: readonly EntryRow[],
  today: string,
  since: Since = {},
): LoadedTank {
  return tankOf(row, daybookOf(row, entries, today, since), { zone: null, today });
}

interface Daybook {
  /** Latest first. */
  readonly readings: readonly EntryRow[];
  readonly entries: readonly DaybookEntry[];
  readonly since: Since;
  readonly read: WithDaybook;
  readonly record: LoadedTank["record"];
}

/** By store, as tests have several; then by tank, versions and day. */
const daybooks = new WeakMap<Store, Recent<Daybook>>();
const DAYBOOKS_HELD = 100;

async function keptDaybook(store: Store, row: TankRow, today: string): Promise<Daybook> {
  const held = daybooks.get(store) ?? new Recent<Daybook>(DAYBOOKS_HELD);
  daybooks.set(store, held);
  const mark = (await store.entryMarks([row.id])).get(row.id) ?? 0;
  const key = JSON.stringify([row.id, row.version, mark, today]);
  const known = held.get(key);
  if (known !== undefined) return known;
  const [rows, history] = await Promise.all([
    store.recentEntries([row.id], LOADED),
    mark === 0 && (row.facts as unknown as TankFile).sightings === undefined ? [] : store.tankHistory(row.id),
  ]);
  const daybook = daybookOf(row, rows.toReversed(), today, givenSince(history));
  held.set(key, daybook);
  return daybook;
}

/** `rows`: latest first. */
function daybookOf(row: TankRow, rows: readonly EntryRow[], today: string, since: Since): Daybook {
  const document = row.facts as unknown as TankFile;
  const entries = rows.flatMap((one) => entryOfRow(one) ?? []);
  const older = olderLots(document, findAnimal);
  return {
    readings: rows.filter(({ kind }) => kind === "reading").slice(0, READINGS_LISTED),
    entries,
    since,
    read: withDaybook(document, entries, { today, since }, (file) => readDocument(file, today)),
    record: dated(recordOf(entries, today, older)),
  };

  /** What the questions told is read by itself only where there is something of it. */
  function dated(record: TankRecord): TankRecord {
    if (document.sightings === undefined && document.feeding === undefined)
      return { ...record, told: { sightings: null, feed: null } };
    const answers = readDocument(document, today);
    return answers.ok ? withTold(record, answers.facts, since, entries) : record;
  }
}

/** @throws TankUnread */
function tankOf(
  row: TankRow,
  { readings, entries, since, read: { document, result }, record }: Daybook,
  place: Pick<LoadedTank, "zone" | "today">,
): LoadedTank {
  if (!result.ok) throw new TankUnread(row.id, result.findings);
  return {
    row,
    head: {
      id: row.id,
      name: result.facts.name,
      keeper: row.keeper.name,
      demonstration: row.demonstration,
    },
    document: row.facts as unknown as TankFile,
    applied: document,
    facts: result.facts,
    notices: result.notices,
    readings,
    entries,
    since,
    record,
    ...place,
  };
}

/** A file with the latest readings of each quantity beside its own; `latestFirst` as the store gives them. */
export function withReadings(file: TankFile, latestFirst: readonly EntryRow[]): TankFile {
  const entries = latestFirst.flatMap((row) => entryOfRow(row) ?? []);
  const added = readingsTold(byDay(entries), null);
  return added.length === 0 ? file : { ...file, readings: [...(file.readings ?? []), ...added] };
}
