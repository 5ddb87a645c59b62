/** Many writers at once: no write lost, none done twice, and each conflict told. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Store } from "../../src/store/store.ts";
import { DATABASES, type Ground, ground, type Spot, stamp } from "./grounds.ts";

describe.each(DATABASES)("writers at once on %s", (database) => {
  let land: Ground;
  let spot: Spot;
  let stores: Store[] = [];
  beforeAll(async () => {
    land = ground(database);
    spot = land.spot();
    // Opened at the same moment, where nothing is yet: as two first starts would.
    stores = await Promise.all([1, 2, 3].map(() => spot.open()));
    const [store] = stores as [Store];
    await store.keeperNamed("Ada", "k1", stamp());
    for (const id of ["t1", "t2", "t3"]) {
      await store.addTank({ id, keeperId: "k1", demonstration: false, facts: { count: 0 } }, stamp());
    }
  });
  afterAll(async () => {
    await Promise.all(stores.map((store) => store.close()));
    land?.end();
  });
  const each = <T>(n: number, work: (store: Store, n: number) => Promise<T>) =>
    Promise.all(Array.from({ length: n }, (_, i) => work(stores[i % stores.length] as Store, i)));

  test("of saves made from one version one comes first, the others are told", async () => {
    const ends = await each(12, (store, n) => store.saveFacts("t1", 1, { by: n }, stamp()));
    expect(ends.filter(({ kind }) => kind === "saved")).toHaveLength(1);
    expect(ends.filter(({ kind }) => kind === "conflict")).toHaveLength(11);
    expect(await stores[0]?.tankHistory("t1")).toHaveLength(2);
  });

  test("counting up together loses no count", async () => {
    await each(40, (store) =>
      store.together(async (desk) => {
        const before = await desk.tank("t2");
        if (before === null) throw new Error("no tank");
        const saved = await desk.saveFacts(
          "t2",
          before.version,
          { count: Number(before.facts["count"]) + 1 },
          stamp(),
        );
        expect(saved.kind).toBe("saved");
      }),
    );
    expect(await stores[1]?.tank("t2")).toMatchObject({ version: 41, facts: { count: 40 } });
  });

  test("one key at once, from several programs: done once, all get the one answer", async () => {
    for (let round = 0; round < 5; round++) {
      let done = 0;
      const ends = await each(9, (store, n) =>
        store.once(`key${round}`, "f", stamp(), async (desk) => {
          await desk.addEntries(
            "t3",
            [{ id: `e${round}.${n}`, kind: "reading", on: "2026-01-01", body: {} }],
            stamp(),
          );
          done++;
          return { status: 201, body: { n } };
        }),
      );
      expect(done).toBe(1);
      expect(ends.filter(({ kind }) => kind === "first")).toHaveLength(1);
      expect(new Set(ends.map((end) => JSON.stringify("reply" in end && end.reply))).size).toBe(1);
      expect(await stores[2]?.entries("t3", { limit: 99 })).toHaveLength(round + 1);
    }
  });

  test("a keeper's name is taken once", async () => {
    const rows = await each(9, (store, n) => store.keeperNamed("Bo", `bo${n}`, stamp()));
    expect(new Set(rows.map(({ id }) => id)).size).toBe(1);
  });

  test("a corrected entry keeps every version that was acknowledged", async () => {
    await stores[0]?.addEntries(
      "t1",
      [{ id: "c1", kind: "reading", on: "2026-01-01", body: { n: -1 } }],
      stamp(),
    );
    const saved: number[] = [];
    await each(6, async (store, writer) => {
      for (let n = 0; n < 10; n++) {
        const before = await store.entry("c1");
        const end = await store.correctEntry(
          "c1",
          before?.version ?? 0,
          { on: "2026-01-01", body: { n: writer * 100 + n }, kept: true },
          stamp(),
        );
        if (end.kind === "saved") saved.push(writer * 100 + n);
      }
    });
    const history = (await stores[0]?.entryHistory("c1")) ?? [];
    expect(history.map(({ version }) => version)).toEqual(history.map((_, n) => n + 1));
    expect(
      history
        .slice(1)
        .map(({ body }) => Number(body["n"]))
        .sort(),
    ).toEqual(saved.sort());
  });
});
