/** The store as a page of maps: what every act on it must answer. Knows nothing of databases. */
import { createHash } from "node:crypto";
import type {
  ActEntry,
  ActRow,
  AddedPicture,
  EntryQuery,
  EntryRow,
  FeedRow,
  GivenRow,
  Json,
  KeeperRow,
  NewEntry,
  NewPicture,
  PictureRow,
  Saved,
  Stamp,
  TankRow,
} from "../../src/store/store.ts";

type Versions<Row> = Map<string, Row[]>;
type Change = { readonly on: string; readonly body: Json; readonly kept: boolean };

export class Model {
  keepers = new Map<string, KeeperRow>();
  tanks: Versions<TankRow> = new Map();
  entries: Versions<EntryRow> = new Map();
  settings = new Map<string, Json>();
  /** Of each tank, the latest of each duty. */
  given = new Map<string, Map<string, GivenRow>>();
  /** By hash. */
  feeds = new Map<string, FeedRow>();
  acts = new Map<string, { row: ActRow; entries: ActEntry[] }>();
  replies = new Map<string, { readonly fingerprint: string; readonly body: Json }>();

  pictures = new Map<string, { row: PictureRow; readonly image: Uint8Array }>();

  keeperNamed(name: string, id: string, stamp: Stamp): KeeperRow {
    const there = this.keepers.get(name) ?? { id, name, addedAt: stamp.at };
    this.keepers.set(name, there);
    return there;
  }
  give(tankId: string, row: GivenRow): void {
    this.given.set(tankId, new Map(this.given.get(tankId)).set(row.care, row));
  }
  addTank(id: string, keeper: KeeperRow, demonstration: boolean, facts: Json, stamp: Stamp): TankRow {
    const row = { id, keeper, demonstration, facts, version: 1, stamp, kept: true };
    this.tanks.set(id, [row]);
    return row;
  }
  saveTank(id: string, from: number, change: Partial<Pick<TankRow, "facts" | "kept">>, stamp: Stamp) {
    return save<TankRow>(this.tanks, id, from, change, stamp);
  }
  addEntries(tankId: string, added: readonly NewEntry[], stamp: Stamp): EntryRow[] {
    return added.map((one) => {
      const row = { ...one, tankId, version: 1, stamp, kept: true };
      this.entries.set(one.id, [row]);
      return row;
    });
  }
  correctEntry(id: string, from: number, change: Change, stamp: Stamp) {
    return save(this.entries, id, from, change, stamp);
  }

  #hasRoom(entryId: string, most: number): boolean {
    const all = [...this.pictures.values()].filter(({ row }) => row.entryId === entryId);
    return all.filter(({ row }) => row.takenAway === null).length < most;
  }
  addPicture({ image, ...one }: NewPicture, most: number, stamp: Stamp): AddedPicture {
    const sha256 = createHash("sha256").update(image).digest("hex");
    const before = [...this.pictures.values()].find(
      ({ row }) => row.entryId === one.entryId && row.sha256 === sha256,
    );
    if (before?.row.takenAway !== null && !this.#hasRoom(one.entryId, most)) return { kind: "full" };
    if (before !== undefined) {
      before.row = { ...before.row, takenAway: null, shows: one.shows || before.row.shows };
      return { kind: "again", row: before.row };
    }
    const row = { ...one, sha256, sizeBytes: image.length, saved: stamp, takenAway: null };
    this.pictures.set(one.id, { row, image });
    return { kind: "added", row };
  }
  keepPicture(id: string, kept: boolean, most: number, stamp: Stamp) {
    const one = this.pictures.get(id);
    if (one === undefined) return "not_found";
    if ((one.row.takenAway === null) === kept) return "done";
    if (kept && !this.#hasRoom(one.row.entryId, most)) return "full";
    one.row = { ...one.row, takenAway: kept ? null : stamp };
    return "done";
  }
  listPictures(): PictureRow[] {
    return [...this.pictures.values()]
      .map(({ row }) => row)
      .sort((a, b) => bytes(a.saved.at, b.saved.at) || bytes(a.id, b.id));
  }

  /** An act of entries that were added just now. */
  addAct(id: string, tankId: string, about: Json, entryIds: readonly string[], stamp: Stamp): ActRow {
    const row = { id, tankId, kind: "bring_in", stamp, about, undone: null };
    const entries = entryIds.map((entryId) => ({ entryId, version: 1, undoneVersion: null }));
    this.acts.set(id, { row, entries: entries.sort((a, b) => bytes(a.entryId, b.entryId)) });
    return row;
  }
  undoAct(id: string, undone: readonly { entryId: string; undoneVersion: number }[], stamp: Stamp): boolean {
    const act = this.acts.get(id);
    if (act === undefined || act.row.undone !== null) return false;
    act.row = { ...act.row, undone: stamp };
    act.entries = act.entries.map((one) => ({
      ...one,
      undoneVersion: undone.find(({ entryId }) => entryId === one.entryId)?.undoneVersion ?? null,
    }));
    return true;
  }
  listActs(tankId: string): ActRow[] {
    return [...this.acts.values()]
      .map(({ row }) => row)
      .filter((row) => row.tankId === tankId)
      .sort((a, b) => bytes(b.stamp.at, a.stamp.at) || bytes(b.id, a.id));
  }
  undoneAdditions(tankId: string): Set<string> {
    const taken = [...this.acts.values()].flatMap(({ row, entries }) =>
      row.tankId !== tankId
        ? []
        : entries.filter(({ entryId, undoneVersion }) => {
            const latest = this.entries.get(entryId)?.at(-1);
            return latest?.kept === false && latest.version === undoneVersion;
          }),
    );
    return new Set(taken.map(({ entryId }) => entryId));
  }

  listTanks(): TankRow[] {
    return latest(this.tanks)
      .filter(({ kept }) => kept)
      .sort((a, b) => bytes(a.keeper.name, b.keeper.name) || bytes(a.id, b.id));
  }
  listEntries(tankId: string, { kind, from, to, limit, after, withRemoved }: EntryQuery): EntryRow[] {
    return latest(this.entries)
      .filter((row) => row.tankId === tankId && (withRemoved === true || row.kept))
      .filter((row) => kind === undefined || row.kind === kind)
      .filter(({ on }) => (from === undefined || on >= from) && (to === undefined || on <= to))
      .sort(latestFirst)
      .filter((row) => after === undefined || latestFirst(after, row) < 0)
      .slice(0, limit);
  }
  latestReadings(): EntryRow[] {
    const found = new Map<string, EntryRow>();
    for (const row of latest(this.entries).filter(({ kind, kept }) => kind === "reading" && kept)) {
      const key = JSON.stringify([row.tankId, row.body["quantity"]]);
      const other = found.get(key);
      if (other === undefined || latestFirst(row, other) < 0) found.set(key, row);
    }
    return [...found.values()];
  }
}

const latest = <Row>(all: Versions<Row>): Row[] =>
  [...all.values()].map((versions) => versions.at(-1) as Row);
const bytes = (a: string, b: string) => Buffer.compare(Buffer.from(a), Buffer.from(b));
const latestFirst = (a: { on: string; id: string }, b: { on: string; id: string }) =>
  bytes(b.on, a.on) || bytes(b.id, a.id);

function save<Row extends { readonly version: number; readonly stamp: Stamp }>(
  all: Versions<Row>,
  id: string,
  from: number,
  change: Partial<Row>,
  stamp: Stamp,
): Saved<Row> {
  const versions = all.get(id);
  const current = versions?.at(-1);
  if (versions === undefined || current === undefined) return { kind: "not_found" };
  if (current.version !== from) return { kind: "conflict", current };
  const row = { ...current, ...change, version: from + 1, stamp };
  versions.push(row);
  return { kind: "saved", row };
}
