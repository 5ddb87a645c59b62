/** Backup, restore and moving, drilled on both databases: what comes back is what was there, row by row. */
import { cpSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { moveStore } from "../../src/store/backup/move.ts";
import { restore } from "../../src/store/backup/restore.ts";
import { backUp } from "../../src/store/backup/write.ts";
import { openDatabase } from "../../src/store/open.ts";
import { acts, perform, sameAsModel } from "./acts.ts";
import { DATABASES, type Ground, ground, type Spot, spotAt, stamp } from "./grounds.ts";
import { Model } from "./model.ts";

const lands = new Map<string, Ground>();
const models = new Map<string, Model>();
const spots = new Map<string, Spot>();
const land = (database: string) => lands.get(database) as Ground;
const spot = (database: string) => spots.get(database) as Spot;
let backups = 0;
const folder = () => join(land("sqlite").folder, `backup-${++backups}`);

beforeAll(async () => {
  // The same acts on both: many, and each kind of them.
  const all = fc.sample(acts, { seed: 8, numRuns: 12 }).flat();
  for (const database of DATABASES) {
    lands.set(database, ground(database));
    spots.set(database, land(database).spot());
    models.set(database, new Model());
    const store = await spot(database).open();
    for (const [n, act] of all.entries()) await perform(act, n, store, models.get(database) as Model);
    // More rows than are read or written at once.
    const [tank] = models.get(database)?.tanks.keys() ?? [];
    const many = Array.from({ length: 2_300 }, (_, n) => ({
      id: `many${n}`,
      kind: "reading",
      on: "2026-01-01",
      body: { quantity: "ph", n },
    }));
    await store.addEntries(tank ?? "", many, stamp());
    models.get(database)?.addEntries(tank ?? "", many, stamp());
    // Longer than a piece of a file as it is read, and more than are read or written at once.
    for (let n = 0; n < 6; n += 1) {
      const image = Uint8Array.from({ length: 150_000 }, (_, i) => (i * 7 + n) % 256);
      const size = { type: "image/webp", widthPx: 640, heightPx: 480 };
      const one = { id: `picture${n}`, entryId: `many${n}`, ...size, shows: `number ${n}`, image };
      const at = stamp(5_000 + n);
      expect(await store.addPicture(one, 4, at)).toEqual(models.get(database)?.addPicture(one, 4, at));
    }
    await store.close();
  }
});
afterAll(() => {
  for (const one of lands.values()) one.end();
});

async function backedUp(from: Spot): Promise<string> {
  const to = folder();
  const database = await openDatabase(from.where, { ...from.options, use: "existing" });
  try {
    await backUp(database, to, { program: "0.0.0" });
  } finally {
    await database.close();
  }
  return to;
}
const restored = (from: string, to: Spot) => restore(from, to.where, to.options);

describe.each(DATABASES)("a backup of a store on %s", (database) => {
  test.each(DATABASES)("restores to the same rows on %s, and answers as before", async (onto) => {
    const to = land(onto).spot();
    const { kept, manifest } = await restored(await backedUp(spot(database)), to);
    expect(kept).toBeNull();
    expect(manifest.tables.find(({ table }) => table === "entry")?.rows).toBeGreaterThan(2_300);
    expect(await to.rows()).toEqual(await spot(database).rows());
    const store = await to.open();
    await sameAsModel(store, models.get(database) as Model);
    await store.close();
  });

  test("is the same, byte for byte, as one of the other database's", async () => {
    const [a, b] = [await backedUp(spot(database)), await backedUp(spot("sqlite"))];
    for (const name of readdirSync(a).filter((one) => one.endsWith(".jsonl"))) {
      expect(readFileSync(join(a, name)).equals(readFileSync(join(b, name)))).toBe(true);
    }
    expect(readdirSync(a)).toHaveLength(13);
  });

  test("the old store is kept and named, and is whole", async () => {
    const to = land(database).spot();
    const store = await to.open();
    await store.keeperNamed("Before", "k", stamp());
    await store.close();
    const { kept } = await restored(await backedUp(spot(database)), to);
    const old = database === "sqlite" ? spotAt(kept ?? "", {}) : spotAt(to.where, { schema: kept ?? "" });
    expect((await old.rows())["keeper"]).toMatchObject([{ name: "Before" }]);
    expect(await to.rows()).toEqual(await spot(database).rows());
  });

  test("made while writes go on: what it holds is one moment", async () => {
    const from = land(database).spot();
    const store = await from.open();
    await store.keeperNamed("Ada", "k", stamp());
    await store.addTank({ id: "t", keeperId: "k", demonstration: false, facts: {} }, stamp());
    let [going, written] = [true, 0];
    const writer = (async () => {
      for (; going; written++) {
        await new Promise(setImmediate); // SQLite's promises alone would never let the backup's files have a turn
        await store.together(async (desk) => {
          await desk.saveFacts("t", written + 1, { n: written }, stamp());
          await desk.addEntries(
            "t",
            [1, 2].map((i) => ({ id: `${written}.${i}`, kind: "reading", on: "2026-01-01", body: {} })),
            stamp(),
          );
        });
      }
    })();
    const made: string[] = [];
    for (let n = 0; n < 4; n++) made.push(await backedUp(from));
    going = false;
    await writer;
    await store.close();
    expect(written).toBeGreaterThan(10);
    const to = land("sqlite").spot();
    const [rows, all] = [await restored(made[3] as string, to).then(() => to.rows()), await from.rows()];
    const versions = rows["tank_version"]?.length ?? 0;
    expect(versions).toBeGreaterThan(1);
    expect(rows["entry"]).toHaveLength(2 * (versions - 1));
    expect(rows["tank_version"]).toEqual(all["tank_version"]?.slice(0, versions));
  });
});

describe("a backup that does not count", () => {
  const text = (file: string) => readFileSync(file, "utf8");

  test("I-151: one byte changed, in any of its files, is told with the table; the store is untouched", async () => {
    const whole = await backedUp(spot("sqlite"));
    const to = land("sqlite").spot();
    await (await to.open()).close();
    const before = readFileSync(to.where);
    const named = () =>
      readdirSync(land("sqlite").folder).filter((name) => name.startsWith(basename(to.where)));
    const beside = named();
    for (const name of readdirSync(whole)) {
      for (const share of [0, 0.5, 0.999]) {
        const hurt = folder();
        cpSync(whole, hurt, { recursive: true });
        const bytes = readFileSync(join(hurt, name));
        const at = Math.floor(bytes.length * share);
        bytes[at] = (bytes[at] ?? 0) ^ 1;
        writeFileSync(join(hurt, name), bytes);
        const where = name === "manifest.json" ? "the manifest" : `table ${name.replace(".jsonl", "")}`;
        await expect(restored(hurt, to)).rejects.toMatchObject({
          reason: "damaged",
          message: expect.stringContaining(`check value differs at ${where}`),
        });
      }
    }
    for (const name of readdirSync(whole)) {
      const hurt = folder();
      cpSync(whole, hurt, { recursive: true });
      rmSync(join(hurt, name));
      await expect(restored(hurt, to)).rejects.toMatchObject({
        reason: name === "manifest.json" ? "foreign" : "damaged",
      });
    }
    expect(readFileSync(to.where).equals(before)).toBe(true);
    expect(named()).toEqual(beside);
  });

  test("I-150: one of a newer version is told by that version; the store is untouched", async () => {
    const { manifestOf, textOf } = await import("../../src/store/backup/manifest.ts");
    const newer = await backedUp(spot("sqlite"));
    const manifest = JSON.parse(text(join(newer, "manifest.json")));
    writeFileSync(join(newer, "manifest.json"), textOf(manifestOf("7.8.9", "0042-later", manifest.tables)));
    const to = land("sqlite").spot();
    await expect(restored(newer, to)).rejects.toMatchObject({
      reason: "newer",
      message: expect.stringMatching(/7\.8\.9.*0042-later/),
      fix: expect.stringContaining("Update"),
    });
    expect(existsSync(to.where)).toBe(false);
  });

  test("a manifest that names other tables or columns is not written from, however well it is signed", async () => {
    const { manifestOf, textOf } = await import("../../src/store/backup/manifest.ts");
    const forged = await backedUp(spot("sqlite"));
    const manifest = JSON.parse(text(join(forged, "manifest.json")));
    manifest.tables[0].table = "migration";
    writeFileSync(
      join(forged, "manifest.json"),
      textOf(manifestOf("0.0.0", manifest.store, manifest.tables)),
    );
    await expect(restored(forged, land("sqlite").spot())).rejects.toMatchObject({ reason: "damaged" });
  });

  test("it never takes the place of another, and nothing is left of one that failed", async () => {
    const there = await backedUp(spot("sqlite"));
    const database = await openDatabase(spot("sqlite").where);
    await expect(backUp(database, there, { program: "0.0.0" })).rejects.toMatchObject({
      reason: "cannot_write",
    });
    const failing = {
      program: "0.0.0",
      progress: () => {
        throw new Error("stop");
      },
    };
    const to = folder();
    await expect(backUp(database, to, failing)).rejects.toThrow("stop");
    await database.close();
    expect(
      readdirSync(land("sqlite").folder).filter((name) => name.includes(to.split("/").at(-1) ?? "")),
    ).toEqual([]);
  });
});

describe("a backup that an older Grazewell made", () => {
  const old = join(import.meta.dirname, "recorded/backup-0005");

  test.each(DATABASES)("is restored and brought to this program's shape, on %s", async (onto) => {
    const to = land(onto).spot();
    const { manifest } = await restored(old, to);
    expect(manifest.store).toBe("0005-setting");
    const rows = await to.rows();
    for (const { table, rows: count } of manifest.tables) expect(rows[table]).toHaveLength(count);
    expect(rows["act"]).toEqual([]);
    const store = await to.open();
    const [tank] = await store.tanks();
    await store.addAct({ id: "a", tankId: tank?.id ?? "", kind: "bring_in", about: {} }, [], stamp());
    expect(await store.acts(tank?.id ?? "", "bring_in", 9)).toHaveLength(1);
    await store.close();
  });

  test("may not name tables that came later, however well it is signed", async () => {
    const { manifestOf, textOf } = await import("../../src/store/backup/manifest.ts");
    const forged = await backedUp(spot("sqlite"));
    const { tables } = JSON.parse(readFileSync(join(forged, "manifest.json"), "utf8"));
    writeFileSync(join(forged, "manifest.json"), textOf(manifestOf("0.1.0", "0005-setting", tables)));
    await expect(restored(forged, land("sqlite").spot())).rejects.toMatchObject({ reason: "damaged" });
  });
});

test("a SQLite store that a program has open is not replaced, and goes on", async () => {
  const to = land("sqlite").spot();
  const store = await to.open();
  await store.keeperNamed("Here", "k", stamp());
  const backup = await backedUp(spot("sqlite"));
  await expect(restored(backup, to)).rejects.toMatchObject({ reason: "busy" });
  expect(await store.keepers()).toHaveLength(1);
  await store.keeperNamed("Still", "k2", stamp());
  await store.close();
  expect(readdirSync(land("sqlite").folder).filter((name) => name.includes("restoring"))).toEqual([]);
  expect((await restored(backup, to)).kept).toContain("before-restore");
});

test("a damaged SQLite store can be replaced, and is kept", async () => {
  const to = land("sqlite").spot();
  writeFileSync(to.where, "");
  writeFileSync(`${to.where}-wal`, "frames");
  const { kept } = await restored(await backedUp(spot("sqlite")), to);
  expect(readFileSync(`${kept}-wal`, "utf8")).toBe("frames");
  expect(await to.rows()).toEqual(await spot("sqlite").rows());
});

test("a log that was left without its file is kept, and not taken for the restored store's", async () => {
  const to = land("sqlite").spot();
  const store = await to.open();
  await store.keeperNamed("Gone", "k", stamp());
  const log = readFileSync(`${to.where}-wal`);
  await store.close();
  rmSync(to.where);
  writeFileSync(`${to.where}-wal`, log);
  const { kept } = await restored(await backedUp(spot("sqlite")), to);
  expect(readFileSync(`${kept}-wal`).equals(log)).toBe(true);
  expect(await to.rows()).toEqual(await spot("sqlite").rows());
});

test("a server that is away is told as that", async () => {
  const away = spotAt("postgres://ada@/postgres?host=/nowhere", {});
  await expect(restored(await backedUp(spot("sqlite")), away)).rejects.toMatchObject({
    reason: "unreachable",
  });
});

test("on PostgreSQL a store in use is replaced under its programs: they go on with the new one", async () => {
  const to = land("postgres").spot();
  const store = await to.open();
  await store.keeperNamed("Before", "k", stamp());
  await restored(await backedUp(spot("postgres")), to);
  await sameAsModel(store, models.get("postgres") as Model);
  await store.keeperNamed("After", "k-after", stamp());
  await store.close();
  expect((await to.rows())["keeper"]?.map(({ name }) => name)).toContain("After");
});

test("SQLite to PostgreSQL to SQLite: every row as it was; a place that holds something is refused", async () => {
  const start = spot("sqlite");
  const stations = [start, land("postgres").spot(), land("sqlite").spot()];
  for (const [n, to] of stations.entries()) {
    if (n === 0) continue;
    const from = stations[n - 1] as Spot;
    const [a, b] = [await openDatabase(from.where, from.options), await openDatabase(to.where, to.options)];
    const counts = await moveStore(a, b);
    expect(counts["entry"]).toBeGreaterThan(2_300);
    await expect(moveStore(a, b)).rejects.toMatchObject({ reason: "cannot_write" });
    await a.close();
    await b.close();
    expect(await to.rows()).toEqual(await start.rows());
  }
});
