/** What the store promises, sentence by sentence, on both databases. */
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { withDatabase } from "../../src/store/database.ts";
import { examine } from "../../src/store/examine.ts";
import { openDatabase } from "../../src/store/open.ts";
import type { NewEntry, Store, StoreError } from "../../src/store/store.ts";
import { DATABASES, type Ground, ground, type Spot, stamp } from "./grounds.ts";

const reading = (id: string, on: string, more: object = {}): NewEntry => ({
  id,
  kind: "reading",
  on,
  body: { quantity: "ph", text: "8.1", ...more },
});

describe.each(DATABASES)("the store on %s", (database) => {
  let land: Ground;
  let spot: Spot;
  let store: Store;
  beforeAll(() => {
    land = ground(database);
  });
  afterAll(() => land?.end());
  beforeEach(async () => {
    spot = land.spot();
    store = await spot.open();
  });
  afterEach(() => store.close());

  async function tank(id = "t1", name = "Ada") {
    const keeper = await store.keeperNamed(name, `k-${name}`, stamp());
    return store.addTank(
      { id, keeperId: keeper.id, demonstration: false, facts: { water_l: "30 US gal" } },
      stamp(),
    );
  }

  test("says which database it is", () => expect(store.database).toBe(database));

  test("a keeper is added once for a name, and keeps its first id", async () => {
    const first = await store.keeperNamed("Ada", "k1", stamp());
    expect(first).toEqual({ id: "k1", name: "Ada", addedAt: stamp().at });
    expect(await store.keeperNamed("Ada", "k2", stamp(9))).toEqual(first);
    await store.keeperNamed("ada", "k3", stamp());
    expect((await store.keepers()).map(({ name }) => name)).toEqual(["Ada", "ada"]);
  });

  test("a tank is read as it was written, by whichever program opens the store", async () => {
    const facts = {
      text: "30 US gal",
      deep: [1.1, 5e-324, 1e308, null, true, { "": "\u0000 𝒳 \\" }],
      z: 1,
      a: 2,
    };
    const keeper = await store.keeperNamed("Ada", "k1", stamp());
    const row = await store.addTank({ id: "t1", keeperId: "k1", demonstration: true, facts }, stamp(3));
    expect(row).toEqual({
      id: "t1",
      keeper,
      demonstration: true,
      facts,
      version: 1,
      stamp: stamp(3),
      kept: true,
    });
    await store.close();
    store = await spot.open();
    expect(await store.tank("t1")).toEqual(row);
    expect(JSON.stringify((await store.tank("t1"))?.facts)).toBe(JSON.stringify(facts));
    expect(await store.tank("none")).toBeNull();
  });

  test("facts are saved from the version they were made from; another is a conflict that carries what is there", async () => {
    await tank();
    const saved = await store.saveFacts("t1", 1, { water_l: "120" }, stamp(1));
    expect(saved).toMatchObject({
      kind: "saved",
      row: { version: 2, facts: { water_l: "120" }, stamp: stamp(1) },
    });
    for (const from of [1, 3, 0, -1, 1.5, Number.NaN, 2 ** 31, 1e300]) {
      expect(await store.saveFacts("t1", from, {}, stamp(2))).toEqual({
        kind: "conflict",
        current: await store.tank("t1"),
      });
    }
    expect(await store.saveFacts("none", 1, {}, stamp())).toEqual({ kind: "not_found" });
    expect((await store.tankHistory("t1")).map(({ version, facts }) => [version, facts])).toEqual([
      [1, { water_l: "30 US gal" }],
      [2, { water_l: "120" }],
    ]);
  });

  test("a tank that is taken away is out of the list, and comes back whole", async () => {
    const first = await tank();
    expect(await store.setKept("t1", 1, false, stamp(1))).toMatchObject({
      kind: "saved",
      row: { kept: false, version: 2 },
    });
    expect(await store.tanks()).toEqual([]);
    expect(await store.tank("t1")).toMatchObject({ kept: false, facts: first.facts });
    await store.setKept("t1", 2, true, stamp(2));
    expect(await store.tanks()).toEqual([{ ...first, version: 3, stamp: stamp(2) }]);
    expect((await store.tankHistory("t1")).map(({ kept }) => kept)).toEqual([true, false, true]);
  });

  test("tanks come by keeper's name, then by id", async () => {
    for (const [id, name] of [
      ["b", "Zoe"],
      ["c", "Ada"],
      ["a", "Zoe"],
      ["Z", "Ada"],
    ] as const)
      await tank(id, name);
    expect((await store.tanks()).map(({ id }) => id)).toEqual(["Z", "c", "a", "b"]);
  });

  test("entries come the latest first, by kind and day, page by page", async () => {
    await tank();
    const days = Array.from(
      { length: 30 },
      (_, n) => `2026-01-${String(Math.floor(n / 2) + 1).padStart(2, "0")}`,
    );
    await store.addEntries(
      "t1",
      days.map((on, n) => reading(`e${String(n).padStart(2, "0")}`, on)),
      stamp(),
    );
    await store.addEntries("t1", [{ id: "s1", kind: "sighting", on: "2026-01-09", body: {} }], stamp());
    const ids = async (query: Parameters<Store["entries"]>[1]) =>
      (await store.entries("t1", query)).map(({ id }) => id);
    const all = await ids({ limit: 40_000, kind: "reading" });
    expect(all).toEqual(days.map((_, n) => `e${String(29 - n).padStart(2, "0")}`));
    expect(await ids({ limit: 5, from: "2026-01-09", to: "2026-01-09" })).toEqual(["s1", "e17", "e16"]);
    const pages: string[] = [];
    for (let after: { on: string; id: string } | undefined; ; ) {
      const page = await store.entries("t1", { limit: 7, kind: "reading", ...(after && { after }) });
      if (page.length === 0) break;
      pages.push(...page.map(({ id }) => id));
      after = page.at(-1);
    }
    expect(pages).toEqual(all);
    for (const limit of [0, -1, 1.5, 40_001, Number.NaN])
      await expect(ids({ limit })).rejects.toThrow(RangeError);
  });

  test("an entry corrected, taken away and brought back is one entry of four versions", async () => {
    await tank();
    const [first] = await store.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
    const change = { on: "2026-01-02", body: { quantity: "ph", text: "8.2" }, kept: true };
    expect(await store.correctEntry("e1", 1, change, stamp(1))).toEqual({
      kind: "saved",
      row: { ...first, ...change, version: 2, stamp: stamp(1) },
    });
    expect(await store.correctEntry("e1", 1, change, stamp(2))).toMatchObject({
      kind: "conflict",
      current: { version: 2 },
    });
    await store.correctEntry("e1", 2, { ...change, kept: false }, stamp(3));
    expect(await store.entries("t1", { limit: 9 })).toEqual([]);
    expect(await store.entries("t1", { limit: 9, withRemoved: true })).toHaveLength(1);
    expect(await store.latestReadings(["t1"])).toEqual([]);
    await store.correctEntry("e1", 3, change, stamp(4));
    expect(await store.entry("e1")).toEqual({ ...first, ...change, version: 4, stamp: stamp(4) });
    expect((await store.entryHistory("e1")).map(({ on, kept }) => [on, kept])).toEqual([
      ["2026-01-01", true],
      ["2026-01-02", true],
      ["2026-01-02", false],
      ["2026-01-02", true],
    ]);
    expect(await store.correctEntry("none", 1, change, stamp())).toEqual({ kind: "not_found" });
    expect(await store.entry("none")).toBeNull();
  });

  test("the latest reading of each quantity: by day, within a day by hour, of many tanks at once", async () => {
    await tank("t1");
    await tank("t2");
    await tank("t3");
    const no3 = { quantity: "no3_mg_per_l" };
    await store.addEntries(
      "t1",
      [
        reading("a", "2026-01-03", { observed_at: "2026-01-03T20:00:00+09:00" }),
        reading("b", "2026-01-03", { observed_at: "2026-01-03T20:00:00-05:00" }),
        reading("c", "2026-01-03"),
        reading("d", "2026-01-02"),
        reading("e", "2025-12-31", no3),
        { id: "f", kind: "sighting", on: "2026-02-02", body: { quantity: "ph" } },
      ],
      stamp(),
    );
    await store.addEntries("t2", [reading("g", "2026-01-01"), reading("h", "2026-01-01")], stamp());
    const found = async (...tanks: string[]) =>
      (await store.latestReadings(tanks)).map(({ id, tankId }) => `${tankId}${id}`).sort();
    expect(await found("t1", "t2", "t3", "none")).toEqual(["t1b", "t1e", "t2h"]);
    expect(await found("t2")).toEqual(["t2h"]);
    expect(await found()).toEqual([]);
    const moved = { on: "2026-01-04", body: { quantity: "no3_mg_per_l", text: "5" }, kept: true };
    await store.correctEntry("d", 1, moved, stamp());
    expect(await found("t1")).toEqual(["t1b", "t1d"]);
  });

  test("the latest entries of many tanks: so many of each quantity and kind, oldest first", async () => {
    await tank("t1");
    await tank("t2");
    const chore = (id: string, on: string): NewEntry => ({ id, kind: "chore", on, body: {} });
    const day = (n: number) => `2026-01-0${n}`;
    await store.addEntries(
      "t1",
      [
        ...[1, 2, 3, 4].map((n) => reading(`p${n}`, day(n))),
        ...[1, 2, 3].map((n) => reading(`n${n}`, day(n), { quantity: "no3_mg_per_l" })),
        ...[1, 2, 3].map((n) => chore(`c${n}`, day(n))),
        { id: "s1", kind: "sign", on: day(1), body: { quantity: "ph" } },
      ],
      stamp(),
    );
    await store.addEntries("t2", [chore("d1", day(5))], stamp());
    const found = async (readings: number, others: number, ...tanks: string[]) =>
      (await store.recentEntries(tanks, { readings, others })).map(({ tankId, id }) => `${tankId}${id}`);
    expect(await found(2, 1, "t1", "t2", "none")).toEqual([
      ...["t1s1", "t1n2", "t1c3", "t1n3", "t1p3", "t1p4", "t2d1"],
    ]);
    expect(await found(9, 9, "t2")).toEqual(["t2d1"]);
    expect(await found(9, 9)).toEqual([]);
    await store.correctEntry("p4", 1, { on: day(4), body: {}, kept: false }, stamp(1));
    expect(await found(1, 1, "t1")).toEqual(["t1s1", "t1c3", "t1n3", "t1p3"]);
    await expect(store.recentEntries(["t1"], { readings: 0, others: 1 })).rejects.toThrow(RangeError);
  });

  test("a tank's mark grows with every change of its entries, and with no other's", async () => {
    await tank("t1");
    await tank("t2");
    const mark = async () => (await store.entryMarks(["t1", "t2"])).get("t1") ?? 0;
    const marks = [await mark()];
    await store.addEntries("t1", [reading("a", "2026-01-03"), reading("b", "2026-01-04")], stamp());
    marks.push(await mark());
    await store.correctEntry("a", 1, { on: "2026-01-02", body: {}, kept: true }, stamp(1));
    marks.push(await mark());
    await store.correctEntry("a", 2, { on: "2026-01-02", body: {}, kept: false }, stamp(2));
    marks.push(await mark());
    expect(marks).toEqual([...new Set(marks)].sort((a, b) => a - b));
    await store.addEntries("t2", [reading("c", "2026-01-03")], stamp());
    expect(await mark()).toBe(marks.at(-1));
  });

  test("many entries at once", async () => {
    await tank();
    const many = Array.from({ length: 5_001 }, (_, n) => reading(`e${n}`, "2026-01-01"));
    expect(await store.addEntries("t1", many, stamp())).toHaveLength(5_001);
    expect(await store.entries("t1", { limit: 40_000 })).toHaveLength(5_001);
    expect(await store.addEntries("t1", [], stamp())).toEqual([]);
  });

  test("what calendars were given: each version kept, the latest told, none of another tank", async () => {
    await tank();
    await tank("t2", "Bea");
    const given = (care: string, sequence: number, cancelled = false) => ({
      ...{ care, sequence, at: stamp(sequence).at, cancelled, reach: "2026-07-01" },
      event: { on: "2026-06-20", summary: "Wipe, then look; 🐌" },
    });
    await store.giveEvents("t1", [given("glass", 0), given("wave.2", 0)]);
    await store.giveEvents("t2", [given("glass", 0)]);
    await store.giveEvents("t1", [given("glass", 1, true)]);
    expect(await store.givenEvents("t1")).toEqual([given("glass", 1, true), given("wave.2", 0)]);
    expect(await store.givenEvents("t2")).toEqual([given("glass", 0)]);
    expect(await store.givenEvents("none")).toEqual([]);
    await expect(store.giveEvents("t1", [given("glass", 1)])).rejects.toMatchObject({ reason: "refused" });
    await expect(store.giveEvents("none", [given("glass", 0)])).rejects.toMatchObject({ reason: "refused" });
  });

  test("a calendar's feed is found by its hash, and taken back once", async () => {
    await tank();
    await store.addFeed({ id: "f1", tankId: "t1", tokenHash: "aa" }, stamp());
    await store.addFeed({ id: "f2", tankId: "t1", tokenHash: "bb" }, stamp(1));
    const first = { id: "f1", tankId: "t1", made: stamp(), takenBack: null };
    expect(await store.feedByHash("aa")).toEqual(first);
    expect(await store.feedByHash("none")).toBeNull();
    expect(await store.takeBackFeed("f1", stamp(2))).toBe(true);
    expect(await store.takeBackFeed("f1", stamp(3))).toBe(false);
    expect(await store.takeBackFeed("none", stamp(3))).toBe(false);
    expect(await store.feeds("t1")).toEqual([
      { ...first, takenBack: stamp(2) },
      { id: "f2", tankId: "t1", made: stamp(1), takenBack: null },
    ]);
    await expect(store.addFeed({ id: "f3", tankId: "t1", tokenHash: "bb" }, stamp())).rejects.toMatchObject({
      reason: "refused",
    });
  });

  test("settings: the latest alone", async () => {
    expect(await store.setting("units")).toBeNull();
    await store.saveSetting("units", { volume: "gal" }, stamp());
    await store.saveSetting("units", { volume: "l" }, stamp(1));
    expect(await store.setting("units")).toEqual({ volume: "l" });
  });

  test("together: all or nothing, and reads inside see what was written inside", async () => {
    await tank();
    const failing = store.together(async (desk) => {
      await desk.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
      await desk.saveFacts("t1", 1, { gone: true }, stamp());
      expect(await desk.tank("t1")).toMatchObject({ version: 2 });
      throw new Error("changed my mind");
    });
    await expect(failing).rejects.toThrow("changed my mind");
    expect(await store.tank("t1")).toMatchObject({ version: 1 });
    expect(await store.entry("e1")).toBeNull();
    expect(
      await store.together(
        async (desk) => (await desk.addEntries("t1", [reading("e1", "2026-01-01")], stamp())).length,
      ),
    ).toBe(1);
    expect(await store.entry("e1")).not.toBeNull();
  });

  test("a write of the store inside its own together is a fault that says so, and does not hang", async () => {
    await expect(store.together(() => store.saveSetting("a", {}, stamp()))).rejects.toThrow(
      /use the desk given/,
    );
    await store.saveSetting("a", {}, stamp());
  });

  test("reads go on while a write is under way, and see what was there before it", async () => {
    await tank();
    let letGo = () => {};
    const waiting = new Promise<void>((done) => {
      letGo = done;
    });
    const write = store.together(async (desk) => {
      await desk.saveFacts("t1", 1, { later: true }, stamp());
      await waiting;
    });
    expect(await store.tank("t1")).toMatchObject({ version: 1 });
    letGo();
    await write;
    expect(await store.tank("t1")).toMatchObject({ version: 2 });
  });

  test("once: a repeat gets the first answer and does nothing; another request under the key is told", async () => {
    await tank();
    const add = (id: string) =>
      store.once("key", "POST a", stamp(), async (desk) => {
        await desk.addEntries("t1", [reading(id, "2026-01-01")], stamp());
        return { status: 201, body: { id } };
      });
    expect(await add("e1")).toEqual({ kind: "first", reply: { status: 201, body: { id: "e1" } } });
    expect(await add("e2")).toEqual({ kind: "again", reply: { status: 201, body: { id: "e1" } } });
    expect(await store.once("key", "POST b", stamp(), async () => ({ status: 1, body: {} }))).toEqual({
      kind: "other_request",
    });
    expect(await store.entries("t1", { limit: 9 })).toHaveLength(1);
    await store.close();
    store = await spot.open();
    expect(await add("e3")).toMatchObject({ kind: "again" });
  });

  test("once: work that fails leaves its key free, and nothing behind", async () => {
    await tank();
    const failing = store.once("key", "f", stamp(), async (desk) => {
      await desk.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
      throw new Error("no");
    });
    await expect(failing).rejects.toThrow("no");
    expect(await store.entry("e1")).toBeNull();
    expect(await store.once("key", "f", stamp(), async () => ({ status: 200, body: {} }))).toMatchObject({
      kind: "first",
    });
  });

  const picture = (id: string, image: readonly number[], shows = "") => ({
    ...{ id, entryId: "e1", type: "image/jpeg", widthPx: 4, heightPx: 3, shows },
    image: Uint8Array.from(image),
  });

  test("a picture is kept byte by byte with its entry, and lists name it without its bytes", async () => {
    await tank();
    await store.addEntries("t1", [reading("e1", "2026-01-01"), reading("e2", "2026-01-02")], stamp());
    const every = Array.from({ length: 300_000 }, (_, i) => i % 256);
    const added = await store.addPicture(picture("p1", every, "two snails 🐌"), 4, stamp(1));
    const row = {
      ...{ id: "p1", entryId: "e1", type: "image/jpeg", widthPx: 4, heightPx: 3, sizeBytes: 300_000 },
      ...{
        shows: "two snails 🐌",
        saved: stamp(1),
        takenAway: null,
        sha256: expect.stringMatching(/^[0-9a-f]{64}$/),
      },
    };
    expect(added).toEqual({ kind: "added", row });
    await store.close();
    store = await spot.open();
    expect(await store.pictures(["e2", "e1"])).toEqual([row]);
    expect(await store.picture("p1")).toEqual(row);
    expect(Buffer.from((await store.pictureImage("p1")) ?? []).equals(Buffer.from(every))).toBe(true);
    expect(await store.pictureImage("none")).toBeNull();
    expect(await store.pictures([])).toEqual([]);
  });

  test("the same picture of an entry is one, whoever sends it how often, and at once", async () => {
    await tank();
    await store.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
    const ends = await Promise.all(
      ["p1", "p2", "p3"].map((id) => store.addPicture(picture(id, [1, 2, 3]), 4, stamp())),
    );
    expect(ends.map(({ kind }) => kind).sort()).toEqual(["added", "again", "again"]);
    expect(await store.pictures(["e1"])).toHaveLength(1);
  });

  test("an entry holds so many and no more, at once too; taking one away makes room, and it comes back into room alone", async () => {
    await tank();
    await store.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
    const ends = await Promise.all(
      [1, 2, 3, 4, 5].map((n) => store.addPicture(picture(`p${n}`, [n]), 2, stamp(n))),
    );
    expect(ends.filter(({ kind }) => kind === "full")).toHaveLength(3);
    const [first, second] = await store.pictures(["e1"]);
    const id = first?.id ?? "";
    expect(await store.keepPicture(id, false, 2, stamp(9))).toBe("done");
    expect(await store.keepPicture(id, false, 2, stamp(10))).toBe("done");
    expect(await store.picture(id)).toMatchObject({ takenAway: stamp(9) });
    expect((await store.addPicture(picture("p9", [9]), 2, stamp(11))).kind).toBe("added");
    expect(await store.keepPicture(id, true, 2, stamp(12))).toBe("full");
    expect(await store.keepPicture(second?.id ?? "", false, 2, stamp(13))).toBe("done");
    expect(await store.keepPicture(id, true, 2, stamp(14))).toBe("done");
    expect(await store.picture(id)).toMatchObject({ takenAway: null });
    expect(await store.keepPicture("none", true, 2, stamp())).toBe("not_found");
  });

  test("correcting an entry, taking it away and bringing it back leave its pictures as they are", async () => {
    await tank();
    await store.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
    await store.addPicture(picture("p1", [1]), 4, stamp());
    const before = await store.pictures(["e1"]);
    const change = { on: "2026-01-02", body: { quantity: "ph", text: "8.2" } };
    await store.correctEntry("e1", 1, { ...change, kept: false }, stamp(1));
    await store.correctEntry("e1", 2, { ...change, kept: true }, stamp(2));
    expect(await store.pictures(["e1"])).toEqual(before);
  });

  test("check-store holds every picture against its hash", async () => {
    await tank();
    await store.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
    await store.addPicture(picture("p1", [1, 2, 3]), 4, stamp());
    const { where, options } = spot;
    await withDatabase(await openDatabase(where, options), async (lookedOver) => {
      const finding = async () =>
        (await examine(lookedOver)).find(({ name }) => name === "every picture is as it was sent");
      expect(await finding()).toMatchObject({ good: true });
      await lookedOver.transact((db) =>
        db
          .updateTable("picture")
          .set({ image: Buffer.from([1, 2, 4]) })
          .execute(),
      );
      expect(await finding()).toMatchObject({ good: false, says: "not so for 1" });
    });
  });

  test("a picture of no entry, or of another kind of file, is refused whole", async () => {
    await tank();
    await store.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
    const before = await spot.rows();
    for (const wrong of [{ entryId: "none" }, { type: "image/svg+xml" }, { widthPx: 0 }]) {
      await expect(store.addPicture({ ...picture("p1", [1]), ...wrong }, 4, stamp())).rejects.toMatchObject({
        reason: "refused",
      });
    }
    expect(await spot.rows()).toEqual(before);
  });

  test("a write that breaks a rule is refused whole", async () => {
    await tank();
    await store.addEntries("t1", [reading("e1", "2026-01-01")], stamp());
    const before = await spot.rows();
    const wrong: (() => Promise<unknown>)[] = [
      () => tank(),
      () => store.addTank({ id: "t2", keeperId: "none", demonstration: false, facts: {} }, stamp()),
      () => store.addEntries("none", [reading("e2", "2026-01-01")], stamp()),
      () => store.addEntries("t1", [reading("e2", "2026-01-01"), reading("e1", "2026-01-01")], stamp()),
    ];
    for (const write of wrong) {
      await expect(write()).rejects.toMatchObject({
        name: "Error",
        reason: "refused",
      } satisfies Partial<StoreError>);
    }
    for (const text of ["a\u0000", "\ud800"]) {
      await expect(store.keeperNamed(text, "k9", stamp())).rejects.toThrow(TypeError);
      await expect(store.once(text, "f", stamp(), async () => ({ status: 200, body: {} }))).rejects.toThrow(
        TypeError,
      );
      await expect(store.addEntries("t1", [reading(text, "2026-01-01")], stamp())).rejects.toThrow(TypeError);
    }
    expect(await spot.rows()).toEqual(before);
  });
});
