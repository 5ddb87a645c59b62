/**
 * A fault at the first, second, ... n-th statement of each of the commonest writes, until one passes untouched: a clear
 * error each time, nothing kept by halves, and the store goes on (after a disk's error: once it was opened anew).
 */
import { execFile } from "node:child_process";
import { join } from "node:path";
import { promisify } from "node:util";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Store, StoreError } from "../../src/store/store.ts";
import { DATABASES, type Ground, ground, type Spot, stamp } from "./grounds.ts";

type Operation = readonly [name: string, work: (store: Store) => Promise<unknown>];
const entry = (id: string) => ({
  id,
  kind: "reading",
  on: "2026-01-02",
  body: { quantity: "ph", text: "8.2" },
});

const OPERATIONS: readonly Operation[] = [
  ["a keeper", (store) => store.keeperNamed("Bo", "k2", stamp())],
  [
    "a tank",
    (store) => store.addTank({ id: "t2", keeperId: "k1", demonstration: false, facts: {} }, stamp()),
  ],
  ["facts", (store) => store.saveFacts("t1", 1, { water_l: "100" }, stamp())],
  ["a tank taken away", (store) => store.setKept("t1", 1, false, stamp())],
  ["an entry", (store) => store.addEntries("t1", [entry("e2")], stamp())],
  [
    "many entries",
    (store) =>
      store.addEntries(
        "t1",
        Array.from({ length: 2_001 }, (_, n) => entry(`m${n}`)),
        stamp(),
      ),
  ],
  ["an entry corrected", (store) => store.correctEntry("e1", 1, { ...entry("e1"), kept: true }, stamp())],
  ["an entry taken away", (store) => store.correctEntry("e1", 1, { ...entry("e1"), kept: false }, stamp())],
  ["a setting", (store) => store.saveSetting("units", { volume: "gal" }, stamp())],
  [
    "a request with its answer",
    (store) =>
      store.once("key", "f", stamp(), async (desk) => {
        await desk.saveFacts("t1", 1, { water_l: "90" }, stamp());
        await desk.addEntries("t1", [entry("e3")], stamp());
        return { status: 201, body: {} };
      }),
  ],
];

interface Fault {
  readonly name: string;
  readonly reason: StoreError["reason"];
  /** What happens at the statement; what it throws is the driver's error. */
  readonly strike: (spot: Spot) => Promise<void>;
  /** After it no more is written until the store is opened anew. */
  readonly reopen: boolean;
}
const thrown = (name: string, code: string, reason: StoreError["reason"], reopen = false): Fault => ({
  name,
  reason,
  reopen,
  strike: async () => {
    throw Object.assign(new Error(name), { code });
  },
});
const FAULTS: Readonly<Record<(typeof DATABASES)[number], readonly Fault[]>> = {
  sqlite: [
    thrown("disk full", "SQLITE_FULL", "cannot_write"),
    thrown("failed sync", "SQLITE_IOERR_FSYNC", "cannot_write", true),
    thrown("read error", "SQLITE_IOERR_READ", "cannot_write", true),
  ],
  postgres: [
    thrown("disk full", "53100", "cannot_write"),
    thrown("disk error", "58030", "cannot_write", true),
    { name: "connections cut, truly", reason: "unreachable", reopen: false, strike: cutConnections },
  ],
};

/** Ends every connection of the store, from outside: what the statement then meets is the server's own. */
async function cutConnections({ where }: Spot): Promise<void> {
  const client = new pg.Client({ connectionString: where });
  await client.connect();
  await client.query(
    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'grazewell'",
  );
  await client.end();
}

describe.each(DATABASES)("faults on %s", (database) => {
  let land: Ground;
  beforeAll(() => {
    land = ground(database);
  });
  afterAll(() => land?.end());

  async function planted(): Promise<Spot> {
    const spot = land.spot();
    const store = await spot.open();
    await store.keeperNamed("Ada", "k1", stamp());
    await store.addTank(
      { id: "t1", keeperId: "k1", demonstration: false, facts: { water_l: "120" } },
      stamp(),
    );
    await store.addEntries("t1", [entry("e1")], stamp());
    await store.close();
    return spot;
  }

  describe.each(FAULTS[database])("$name", ({ reason, strike, reopen }) => {
    test.each(OPERATIONS)("at each statement of: %s", async (_, work) => {
      const spot = await planted();
      const before = await spot.rows();
      let [left, armed] = [0, false];
      const beforeStatement = async () => {
        if (armed && --left === 0) await strike(spot);
      };
      let store = await spot.open({ beforeStatement });
      let strikes = 0;
      for (let n = 1; ; n++) {
        [left, armed] = [n, true];
        const error = await work(store).then(
          () => null,
          (failed: unknown) => failed,
        );
        armed = false;
        if (error === null) break;
        strikes++;
        expect(error).toBeInstanceOf(StoreError);
        expect(error).toMatchObject({ reason, fix: expect.stringMatching(/.{10}/) });
        expect(await spot.rows()).toEqual(before);
        expect(await store.tank("t1")).toMatchObject({ version: 1 }); // reading goes on
        if (!reopen) continue;
        await expect(store.saveSetting("other", {}, stamp())).rejects.toMatchObject({ reason });
        await store.close();
        store = await spot.open({ beforeStatement });
      }
      // Begin, at least one statement, commit.
      expect(strikes).toBeGreaterThanOrEqual(3);
      expect(await spot.rows()).not.toEqual(before);
      await store.close();
    });
  });
});

test("a disk that is truly full: the write is told, what was acknowledged stays, and writing goes on when there is room", async () => {
  const land = ground("sqlite");
  try {
    const spot = land.spot();
    await (await spot.open()).close();
    // No file may grow beyond 600 kB in that program.
    const line = `trap '' XFSZ; ulimit -f 600; exec "$0" "$1" "$2"`;
    const program = join(import.meta.dirname, "fill-disk.ts");
    const { stdout } = await promisify(execFile)("bash", ["-c", line, process.execPath, program, spot.where]);
    const { acknowledged, reason, again } = JSON.parse(stdout);
    expect(acknowledged).toBeGreaterThan(3);
    expect([reason, again]).toEqual(["cannot_write", "cannot_write"]);
    const store = await spot.open();
    const keepers = (await store.keepers()).map(({ name }) => name.slice(0, 4));
    expect(keepers).toEqual(Array.from({ length: acknowledged }, (_, n) => String(1_000 + n)));
    await store.keeperNamed("after", "after", stamp());
    await store.close();
  } finally {
    land.end();
  }
});
