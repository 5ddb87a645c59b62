/**
 * What is kept, and the one way to it. Facts, readings and events are append-only versions: correcting, taking away and
 * bringing back each add a version; the present is the latest. SQLite and PostgreSQL stand behind this interface.
 * A write names the version it was made from; where another came first, the answer is a conflict that carries it.
 * Limits: knows JSON, not biology; the contract has judged every document before it comes here.
 */

/** A JSON object, already judged by the contract. */
export type Json = { readonly [name: string]: unknown };

/** When and by whose hand; `at` is an instant in UTC, ISO 8601 with milliseconds and Z. */
export interface Stamp {
  readonly at: string;
  readonly by: string;
}

export interface Version {
  /** Counts from 1 for each tank or entry. */
  readonly version: number;
  readonly stamp: Stamp;
  /** False once taken away; a later version may bring it back. */
  readonly kept: boolean;
}

export interface KeeperRow {
  readonly id: string;
  /** Name or nickname. */
  readonly name: string;
  readonly addedAt: string;
}

export interface TankRow extends Version {
  readonly id: string;
  readonly keeper: KeeperRow;
  /** An invented tank that came with the program. */
  readonly demonstration: boolean;
  /** The tank file, as plain data: texts as they were typed, with their units. */
  readonly facts: Json;
}

/** Something measured, seen or done: one line of the daybook. */
export interface EntryRow extends Version {
  readonly id: string;
  readonly tankId: string;
  /** `reading` now; further kinds come with the daybook. */
  readonly kind: string;
  /** Day in the tank's own zone, ISO date: entries are ordered and asked for by it. */
  readonly on: string;
  readonly body: Json;
}

export type NewEntry = Pick<EntryRow, "id" | "kind" | "on" | "body">;

/** Entries added or changed as one: a file brought in, undone as one; animals moved, whose halves stay together. */
export interface ActRow {
  readonly id: string;
  /** The tank it began in. */
  readonly tankId: string;
  readonly kind: string;
  readonly stamp: Stamp;
  readonly about: Json;
  /** Null while it stands. */
  readonly undone: Stamp | null;
}

/** What an act did to one entry. */
export interface ActEntry {
  readonly entryId: string;
  /** The version that it made: 1 where it added the entry, else the one before was there already. */
  readonly version: number;
  /** The version that undoing it made; null where none was. */
  readonly undoneVersion: number | null;
}

/** One version of what calendars were given of a duty. */
export interface GivenRow {
  /** Id of the duty. */
  readonly care: string;
  /** Counts from 0. */
  readonly sequence: number;
  readonly at: string;
  readonly cancelled: boolean;
  /** ISO date: the last day of any version so far. */
  readonly reach: string;
  readonly event: Json;
}

/** An address by which a calendar asks for a tank's duties. */
export interface FeedRow {
  readonly id: string;
  readonly tankId: string;
  readonly made: Stamp;
  /** Null while it stands. */
  readonly takenBack: Stamp | null;
}

/** A picture kept with an entry, without its bytes. */
export interface PictureRow {
  readonly id: string;
  readonly entryId: string;
  /** Of the bytes, hexadecimal. */
  readonly sha256: string;
  readonly type: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sizeBytes: number;
  /** What it shows, as the keeper says it; may be empty. */
  readonly shows: string;
  readonly saved: Stamp;
  /** Null while it stands. */
  readonly takenAway: Stamp | null;
}

export type NewPicture = Pick<PictureRow, "id" | "entryId" | "type" | "widthPx" | "heightPx" | "shows"> & {
  readonly image: Uint8Array;
};

/** The end of adding a picture. */
export type AddedPicture =
  /** `again`: the entry had that very picture; it stands now, with the words of this time. */
  | { readonly kind: "added" | "again"; readonly row: PictureRow }
  /** The entry has as many as it may. */
  | { readonly kind: "full" };

/** The end of a write. */
export type Saved<Row> =
  | { readonly kind: "saved"; readonly row: Row }
  /** Another version came first: here it is. */
  | { readonly kind: "conflict"; readonly current: Row }
  | { readonly kind: "not_found" };

export interface EntryQuery {
  readonly kind?: string;
  /** ISO dates, both included. */
  readonly from?: string;
  readonly to?: string;
  /** At most so many, the latest first; 1 to 40,000. */
  readonly limit: number;
  /** Go on after this entry of an earlier answer. */
  readonly after?: { readonly on: string; readonly id: string };
  /** Also those taken away. */
  readonly withRemoved?: boolean;
}

/** So many of each quantity of readings, and of each other kind of entry; 1 or more. */
export interface RecentQuery {
  readonly readings: number;
  readonly others: number;
}

/** An answer given before to the same key: given again, not done again. */
export interface Reply {
  readonly status: number;
  readonly body: Json;
}
export type Once =
  | { readonly kind: "first" | "again"; readonly reply: Reply }
  /** The same key came with another request. */
  | { readonly kind: "other_request" };

/** Reads and writes; inside `together` all of them or none. */
export interface Desk {
  /** The keeper of that name, added where there is none yet. */
  keeperNamed(name: string, id: string, stamp: Stamp): Promise<KeeperRow>;
  keepers(): Promise<readonly KeeperRow[]>;

  addTank(
    tank: {
      readonly id: string;
      readonly keeperId: string;
      readonly demonstration: boolean;
      readonly facts: Json;
    },
    stamp: Stamp,
  ): Promise<TankRow>;
  /** Kept tanks, by keeper's name and then by id. */
  tanks(): Promise<readonly TankRow[]>;
  /** Also one that was taken away: see `kept`. */
  tank(id: string): Promise<TankRow | null>;
  /** `from`: the version that this was made from. */
  saveFacts(id: string, from: number, facts: Json, stamp: Stamp): Promise<Saved<TankRow>>;
  /** Takes a tank away or brings it back: a version like any other. */
  setKept(id: string, from: number, kept: boolean, stamp: Stamp): Promise<Saved<TankRow>>;
  tankHistory(id: string): Promise<readonly TankRow[]>;
  /** Lets no other write that holds one of these tanks come between: it waits, or is done again after this one. */
  holdTanks(ids: readonly string[]): Promise<void>;

  addEntries(tankId: string, entries: readonly NewEntry[], stamp: Stamp): Promise<readonly EntryRow[]>;
  entry(id: string): Promise<EntryRow | null>;
  entries(tankId: string, query: EntryQuery): Promise<readonly EntryRow[]>;
  correctEntry(
    id: string,
    from: number,
    change: { readonly on: string; readonly body: Json; readonly kept: boolean },
    stamp: Stamp,
  ): Promise<Saved<EntryRow>>;
  entryHistory(id: string): Promise<readonly EntryRow[]>;
  /** The latest kept entry of each quantity of readings, of every tank at once: for lists of tanks. */
  latestReadings(tankIds: readonly string[]): Promise<readonly EntryRow[]>;
  /** The latest kept entries of each kind, of every tank at once; oldest first within a tank. */
  recentEntries(tankIds: readonly string[], query: RecentQuery): Promise<readonly EntryRow[]>;
  /** A number a tank that grows whenever an entry is added, corrected, taken away or brought back; none without entries. */
  entryMarks(tankIds: readonly string[]): Promise<ReadonlyMap<string, number>>;

  addAct(
    act: { readonly id: string; readonly tankId: string; readonly kind: string; readonly about: Json },
    entries: readonly Pick<ActEntry, "entryId" | "version">[],
    stamp: Stamp,
  ): Promise<ActRow>;
  act(id: string): Promise<ActRow | null>;
  /** Of one kind; the latest first, at most so many. */
  acts(tankId: string, kind: string, limit: number): Promise<readonly ActRow[]>;
  actEntries(id: string): Promise<readonly ActEntry[]>;
  /** Other entries, of any tank, that the act of that kind added which added this one. */
  addedBeside(entryId: string, kind: string): Promise<readonly EntryRow[]>;
  /** Marks an act as undone; false where it was already. The entries themselves are corrected by who calls. */
  undoAct(
    id: string,
    entries: readonly { readonly entryId: string; readonly undoneVersion: number }[],
    stamp: Stamp,
  ): Promise<boolean>;
  /**
   * Takes away added entries that nobody touched since, each with its second version; returns how many it were. Those
   * that were touched stay as they are.
   */
  takeAdded(entryIds: readonly string[], stamp: Stamp): Promise<number>;
  /** Entries that acts added and their undoing took away, and nobody touched since: no keeper ever deleted them. */
  undoneAdditions(tankId: string): Promise<ReadonlySet<string>>;

  /** The latest that calendars were given of each duty, by its id. */
  givenEvents(tankId: string): Promise<readonly GivenRow[]>;
  /** Each a version after the latest of its duty, or its first. */
  giveEvents(tankId: string, events: readonly GivenRow[]): Promise<void>;
  addFeed(
    feed: { readonly id: string; readonly tankId: string; readonly tokenHash: string },
    stamp: Stamp,
  ): Promise<void>;
  /** The oldest first, those taken back too. */
  feeds(tankId: string): Promise<readonly FeedRow[]>;
  feedByHash(tokenHash: string): Promise<FeedRow | null>;
  /** False where it was already, or there is none. */
  takeBackFeed(id: string, stamp: Stamp): Promise<boolean>;

  /** `most`: so many of one entry may stand. The same bytes are one picture of an entry. */
  addPicture(picture: NewPicture, most: number, stamp: Stamp): Promise<AddedPicture>;
  /** Of these entries, in the order they were added; those taken away too. */
  pictures(entryIds: readonly string[]): Promise<readonly PictureRow[]>;
  picture(id: string): Promise<PictureRow | null>;
  pictureImage(id: string): Promise<Uint8Array | null>;
  /** Takes one away, or brings it back; nothing where it is so already. `full`: no room for it to come back. */
  keepPicture(id: string, kept: boolean, most: number, stamp: Stamp): Promise<"done" | "not_found" | "full">;

  setting(name: string): Promise<Json | null>;
  saveSetting(name: string, value: Json, stamp: Stamp): Promise<void>;
}

export interface Store extends Desk {
  readonly database: "sqlite" | "postgres";
  /**
   * All writes of `work` or none of them; reads see one moment. `work` may be done again when another write came
   * between, so it does nothing that can't be: it uses `desk` alone. Calling the store itself inside is a fault.
   */
  together<T>(work: (desk: Desk) => Promise<T>): Promise<T>;
  /**
   * Does `work` once for a key; a repeat gets the first answer. The answer is kept in the same transaction as the
   * work. `fingerprint` tells the request: the same key with another is refused.
   */
  once(key: string, fingerprint: string, stamp: Stamp, work: (desk: Desk) => Promise<Reply>): Promise<Once>;
  close(): Promise<void>;
}

/**
 * The store can't be used as it is: another program's, newer than this one, damaged, locked, not reached; or `refused`,
 * a write that breaks its rules (an id twice, an entry of no tank), which the contract should have caught.
 */
export class StoreError extends Error {
  readonly reason: "newer" | "foreign" | "damaged" | "busy" | "unreachable" | "cannot_write" | "refused";
  /** What to do. */
  readonly fix: string;
  constructor(reason: StoreError["reason"], message: string, fix: string, options?: ErrorOptions) {
    super(message, options);
    this.reason = reason;
    this.fix = fix;
  }
}
