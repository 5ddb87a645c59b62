/**
 * The store over a database of either kind. Every write is a transaction, done again when another write came between;
 * after an error of the disk no more is written until the store was opened, and so checked, anew.
 */
import { AsyncLocalStorage } from "node:async_hooks";
import type { Transaction } from "kysely";
import type { Database } from "./database.ts";
import { deskOn } from "./desk/desk.ts";
import { json, plain, read } from "./desk/text.ts";
import { anotherCameFirst, diskFailed, storeErrorOf } from "./errors.ts";
import { type Desk, type Once, type Reply, type Stamp, type Store, StoreError } from "./store.ts";
import type { Tables } from "./tables.ts";

/** How often a write is tried that others come between; then it is `busy`. From the third time on it is let in alone. */
const TRIES = 20;
const TRIES_TOGETHER = 2;

export class KeptStore implements Store {
  readonly #database: Database;
  readonly #reads: Desk;
  readonly #inside = new AsyncLocalStorage<true>();
  #broken: StoreError | null = null;

  constructor(database: Database) {
    this.#database = database;
    this.#reads = deskOn(database.reads);
  }

  get database(): Store["database"] {
    return this.#database.name;
  }

  keepers: Store["keepers"] = () => this.#read((desk) => desk.keepers());
  tanks: Store["tanks"] = () => this.#read((desk) => desk.tanks());
  tank: Store["tank"] = (id) => this.#read((desk) => desk.tank(id));
  tankHistory: Store["tankHistory"] = (id) => this.#read((desk) => desk.tankHistory(id));
  entry: Store["entry"] = (id) => this.#read((desk) => desk.entry(id));
  entries: Store["entries"] = (tank, query) => this.#read((desk) => desk.entries(tank, query));
  entryHistory: Store["entryHistory"] = (id) => this.#read((desk) => desk.entryHistory(id));
  latestReadings: Store["latestReadings"] = (tanks) => this.#read((desk) => desk.latestReadings(tanks));
  recentEntries: Store["recentEntries"] = (tanks, query) =>
    this.#read((desk) => desk.recentEntries(tanks, query));
  entryMarks: Store["entryMarks"] = (tanks) => this.#read((desk) => desk.entryMarks(tanks));
  act: Store["act"] = (id) => this.#read((desk) => desk.act(id));
  acts: Store["acts"] = (...all) => this.#read((desk) => desk.acts(...all));
  actEntries: Store["actEntries"] = (id) => this.#read((desk) => desk.actEntries(id));
  addedBeside: Store["addedBeside"] = (...all) => this.#read((desk) => desk.addedBeside(...all));
  undoneAdditions: Store["undoneAdditions"] = (tank) => this.#read((desk) => desk.undoneAdditions(tank));
  givenEvents: Store["givenEvents"] = (tank) => this.#read((desk) => desk.givenEvents(tank));
  feeds: Store["feeds"] = (tank) => this.#read((desk) => desk.feeds(tank));
  feedByHash: Store["feedByHash"] = (hash) => this.#read((desk) => desk.feedByHash(hash));
  pictures: Store["pictures"] = (ids) => this.#read((desk) => desk.pictures(ids));
  picture: Store["picture"] = (id) => this.#read((desk) => desk.picture(id));
  pictureImage: Store["pictureImage"] = (id) => this.#read((desk) => desk.pictureImage(id));
  setting: Store["setting"] = (name) => this.#read((desk) => desk.setting(name));

  keeperNamed: Store["keeperNamed"] = (...all) => this.together((desk) => desk.keeperNamed(...all));
  addTank: Store["addTank"] = (...all) => this.together((desk) => desk.addTank(...all));
  saveFacts: Store["saveFacts"] = (...all) => this.together((desk) => desk.saveFacts(...all));
  holdTanks: Store["holdTanks"] = (ids) => this.together((desk) => desk.holdTanks(ids));
  setKept: Store["setKept"] = (...all) => this.together((desk) => desk.setKept(...all));
  addEntries: Store["addEntries"] = (...all) => this.together((desk) => desk.addEntries(...all));
  correctEntry: Store["correctEntry"] = (...all) => this.together((desk) => desk.correctEntry(...all));
  addAct: Store["addAct"] = (...all) => this.together((desk) => desk.addAct(...all));
  takeAdded: Store["takeAdded"] = (...all) => this.together((desk) => desk.takeAdded(...all));
  undoAct: Store["undoAct"] = (...all) => this.together((desk) => desk.undoAct(...all));
  giveEvents: Store["giveEvents"] = (...all) => this.together((desk) => desk.giveEvents(...all));
  addFeed: Store["addFeed"] = (...all) => this.together((desk) => desk.addFeed(...all));
  takeBackFeed: Store["takeBackFeed"] = (...all) => this.together((desk) => desk.takeBackFeed(...all));
  addPicture: Store["addPicture"] = (...all) => this.together((desk) => desk.addPicture(...all));
  keepPicture: Store["keepPicture"] = (...all) => this.together((desk) => desk.keepPicture(...all));
  saveSetting: Store["saveSetting"] = (...all) => this.together((desk) => desk.saveSetting(...all));

  together<T>(work: (desk: Desk) => Promise<T>): Promise<T> {
    return this.#write((db) => work(deskOn(db)));
  }

  async once(
    key: string,
    fingerprint: string,
    stamp: Stamp,
    work: (desk: Desk) => Promise<Reply>,
  ): Promise<Once> {
    plain("a key", key);
    plain("a fingerprint", fingerprint);
    return this.#write(async (db): Promise<Once> => {
      // The key is taken first: a second call of it waits here until the first has ended, and then finds its answer.
      const { numInsertedOrUpdatedRows } = await db
        .insertInto("reply")
        .values({ key, fingerprint, saved_at: stamp.at, status: null, body: null })
        .onConflict((conflict) => conflict.column("key").doNothing())
        .executeTakeFirst();
      if (numInsertedOrUpdatedRows !== 1n) {
        const before = await db
          .selectFrom("reply")
          .selectAll()
          .where("key", "=", key)
          .executeTakeFirstOrThrow();
        if (before.fingerprint !== fingerprint || before.status === null || before.body === null) {
          return { kind: "other_request" };
        }
        return { kind: "again", reply: { status: before.status, body: read(before.body) } };
      }
      const reply = await work(deskOn(db));
      await db
        .updateTable("reply")
        .set({ status: reply.status, body: json(reply.body) })
        .where("key", "=", key)
        .execute();
      return { kind: "first", reply };
    });
  }

  async close(): Promise<void> {
    await this.#database.close();
  }

  async #read<T>(work: (desk: Desk) => Promise<T>): Promise<T> {
    try {
      return await work(this.#reads);
    } catch (error) {
      throw storeErrorOf(error, this.#database.place);
    }
  }

  async #write<T>(work: (db: Transaction<Tables>) => Promise<T>): Promise<T> {
    if (this.#inside.getStore() === true) {
      throw new Error(
        "Cannot write to the store inside its own `together` or `once`: use the desk given there",
      );
    }
    for (let attempt = 1; ; attempt++) {
      if (this.#broken !== null) throw this.#broken;
      try {
        return await this.#inside.run(true, () => this.#database.transact(work, attempt > TRIES_TOGETHER));
      } catch (error) {
        if (anotherCameFirst(error) && attempt < TRIES) {
          await moment(attempt);
          continue;
        }
        const told = storeErrorOf(error, this.#database.place);
        if (diskFailed(error) && told instanceof StoreError) this.#broken = told;
        throw told;
      }
    }
  }
}

/** A wait that grows with the attempts, unlike for each: those that met once don't meet again. */
const moment = (attempt: number) =>
  new Promise<void>((done) => setTimeout(done, Math.random() * 4 * attempt));
