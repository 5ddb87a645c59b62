/**
 * Heads moved between two tanks, on both databases: whatever is moved, lost, corrected, undone and brought back in whatever
 * order, the two records together hold those that there were less those found dead, and the halves of a move say the same.
 */
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { EntryBody } from "../../src/contract/daybook/kinds.ts";
import { loadTank } from "../../src/server/load-tank.ts";
import { changeEntry, type Hand, keepEntry, otherHalf } from "../../src/server/moves/keep.ts";
import { headsRecord } from "../../src/server/moves/record.ts";
import { newId } from "../../src/server/new-id.ts";
import type { Desk, EntryRow, Json, Store } from "../../src/store/store.ts";
import { DATABASES, type Ground, ground } from "./grounds.ts";

const TODAY = "2026-06-15";
const KINDS = ["trochus-snail", "nassarius-snail"] as const;
type Kind = (typeof KINDS)[number];
const hand: Hand = { stamp: { at: "2026-06-15T12:00:00.000Z", by: "checks" }, newId, today: TODAY };
const COMMON = { observed_text: "today", observed_at: null, note: null };
/** More where asked: GRAZEWELL_MOVES=200. */
const LIVES = Number(process.env["GRAZEWELL_MOVES"] ?? 12);

interface Life {
  readonly store: Store;
  readonly tanks: readonly [string, string];
  /** There were as many of each kind, in both. */
  readonly began: number;
}

async function begin(store: Store, each: number): Promise<Life> {
  const tanks = [newId(), newId()] as const;
  const facts = {
    ...{ grazewell_tank: 1, water_l: "200 L", first_seawater_on: "2026-01-10" },
    animals_present: KINDS.map((animal) => ({ animal, count: each })),
  };
  const early = { at: "2026-05-01T09:00:00.000Z", by: "checks" };
  await store.together(async (desk) => {
    const { id: keeperId } = await desk.keeperNamed("Ada (invented)", "ada", early);
    for (const [i, id] of tanks.entries())
      await desk.addTank(
        { id, keeperId, demonstration: false, facts: { ...facts, name: `Tank ${i}` } },
        early,
      );
  });
  return { store, tanks, began: 2 * each };
}

const moveBody = (animal: Kind, count: number, to: string): EntryBody<"move"> => ({
  ...COMMON,
  ...{ animal_text: animal, animal, count, to, to_text: "the other", from: null, from_text: null },
  ...{ condition: null, despite_gate: null },
});
const lossBody = (animal: Kind, count: number): EntryBody<"loss"> => ({
  ...COMMON,
  ...{ animal_text: animal, animal, count, certainty: "found", body_removed: true, cause: "unknown" },
});

const day = fc.integer({ min: 1, max: 15 }).map((n) => `2026-06-${String(n).padStart(2, "0")}`);
const kind = fc.constantFrom(...KINDS);
const which = fc.nat({ max: 50 });
const count = fc.integer({ min: 1, max: 4 });
const side = fc.constantFrom(0 as const, 1 as const);
const deed = fc.oneof(
  { weight: 4, arbitrary: fc.record({ deed: fc.constant("move" as const), kind, count, side, on: day }) },
  { weight: 2, arbitrary: fc.record({ deed: fc.constant("lose" as const), kind, count, side, on: day }) },
  { weight: 2, arbitrary: fc.record({ deed: fc.constant("undo" as const), which, side }) },
  { weight: 2, arbitrary: fc.record({ deed: fc.constant("back" as const), which, side }) },
  { weight: 2, arbitrary: fc.record({ deed: fc.constant("correct" as const), which, side, count, on: day }) },
);
const deeds = fc.array(deed, { minLength: 4, maxLength: 14 });
type Deed = typeof deed extends fc.Arbitrary<infer One> ? One : never;

const rowsOf = (store: Store, tank: string, of: "move" | "loss") =>
  store.entries(tank, { kind: of, limit: 1000, withRemoved: true });

async function live({ store, tanks }: Life, one: Deed): Promise<string> {
  const [tank, other] = one.side === 0 ? tanks : [tanks[1], tanks[0]];
  if (one.deed === "move") {
    const body = moveBody(one.kind, one.count, other) as Json;
    const entry = { id: newId(), kind: "move", on: one.on, body };
    return (await store.together((desk) => keepEntry(desk, tank, entry, hand))).kind;
  }
  if (one.deed === "lose") {
    // As the door does: no more than there are on that day and since.
    const row = await store.tank(tank);
    if (row === null) throw new Error("no tank");
    const entry = { id: newId(), kind: "loss", on: one.on, body: lossBody(one.kind, one.count) };
    const { entries, lacking } = await headsRecord(store, row, TODAY);
    if ((lacking([...entries, entry as never]).get(one.kind) ?? 0) > 0) return "none left";
    return (
      await store.together((desk) => keepEntry(desk, tank, { ...entry, body: entry.body as Json }, hand))
    ).kind;
  }
  const rows = await rowsOf(store, tank, "move");
  const row = rows[one.which % Math.max(1, rows.length)];
  if (row === undefined) return "nothing there";
  const body = one.deed === "correct" ? { ...row.body, count: one.count } : row.body;
  const on = one.deed === "correct" ? one.on : row.on;
  const kept = one.deed === "correct" ? row.kept : one.deed === "back";
  const done = await store.together((desk) => changeEntry(desk, row, row.version, { on, body, kept }, hand));
  return done.kind;
}

/** What is wrong with the two daybooks; empty where nothing is. */
async function wrongIn({ store, tanks, began }: Life): Promise<string[]> {
  const wrong: string[] = [];
  const heads = new Map<string, number>(KINDS.map((id) => [id, 0]));
  for (const tank of tanks) {
    const loaded = await loadTank(store, tank, TODAY);
    if (loaded === null) throw new Error("no tank");
    for (const { id, count: there } of loaded.facts.present) heads.set(id, (heads.get(id) ?? 0) + there);
    for (const { text } of loaded.notices) if (/more gone than came/.test(text)) wrong.push(text);
    for (const row of await rowsOf(store, tank, "loss")) {
      const { animal, count: dead } = row.body as EntryBody<"loss">;
      if (row.kept) heads.set(animal ?? "", (heads.get(animal ?? "") ?? 0) + dead);
    }
    for (const row of await rowsOf(store, tank, "move")) wrong.push(...(await halvesApart(store, row)));
  }
  for (const [id, there] of heads) if (there !== began) wrong.push(`${id}: ${there} of ${began}`);
  return wrong;
}

async function halvesApart(store: Store, row: EntryRow): Promise<string[]> {
  const other = await otherHalf(store, row.id);
  if (other === null) return [`${row.id} stands alone`];
  const matter = ({ on, kept, version, body }: EntryRow) => {
    const { to, to_text, from, from_text, ...same } = body;
    return JSON.stringify([on, kept, version, same]);
  };
  const named = other.body["to"] === row.tankId || other.body["from"] === row.tankId;
  return matter(row) === matter(other) && named ? [] : [`the halves of ${row.id} differ`];
}

async function liveMany(store: Store, runs: number, seed: number): Promise<Record<string, number>> {
  const ends: Record<string, number> = {};
  for (const all of fc.sample(deeds, { numRuns: runs, seed })) {
    const life = await begin(store, 3);
    for (const one of all) {
      const end = `${one.deed}: ${await live(life, one)}`;
      ends[end] = (ends[end] ?? 0) + 1;
      expect(await wrongIn(life), `seed ${seed}, after ${JSON.stringify(one)}`).toEqual([]);
    }
  }
  return ends;
}

describe.each(DATABASES)("moves on %s", (database) => {
  let land: Ground;
  let stores: Store[];
  beforeAll(async () => {
    land = ground(database);
    const spot = land.spot();
    stores = [await spot.open(), await spot.open()];
  });
  afterAll(async () => {
    await Promise.all(stores.map((store) => store.close()));
    land.end();
  });

  test(`heads are conserved over ${LIVES} random lives`, async () => {
    const [store] = stores as [Store];
    await liveMany(store, LIVES, Date.now() % 1_000_000);
    // Of lives that are always the same it is known that everything happened in them.
    const ends = await liveMany(store, 12, 1);
    console.log(`moves, ${database}: ${JSON.stringify(ends)}`);
    for (const end of ["move: added", "move: refused", "undo: saved", "back: saved", "correct: saved"])
      expect(ends[end], end).toBeGreaterThan(0);
  });

  test("the last heads can be moved once, however many ask at once", async () => {
    const life = await begin(stores[0] as Store, 3);
    const [from, to] = life.tanks;
    const ends = await Promise.all(
      Array.from({ length: 8 }, (_, i) => {
        const entry = {
          id: newId(),
          kind: "move",
          on: TODAY,
          body: moveBody("trochus-snail", 3, to) as Json,
        };
        return (stores[i % 2] as Store).together((desk) => keepEntry(desk, from, entry, hand));
      }),
    );
    expect(ends.filter((end) => end.kind === "added")).toHaveLength(1);
    expect(ends.filter((end) => end.kind === "refused")).toHaveLength(7);
    expect(await wrongIn(life)).toEqual([]);
  });

  test("of two who change its two halves at once one is told that the other came first", async () => {
    const life = await begin(stores[0] as Store, 3);
    const [from, to] = life.tanks;
    const entry = { id: newId(), kind: "move", on: TODAY, body: moveBody("trochus-snail", 2, to) as Json };
    const kept = await life.store.together((desk) => keepEntry(desk, from, entry, hand));
    const half = kept.kind === "added" ? await otherHalf(life.store, kept.row.id) : null;
    if (kept.kind !== "added" || half === null) throw new Error("not kept");
    const change = (row: EntryRow, n: number) => ({
      on: row.on,
      kept: true,
      body: { ...row.body, count: n },
    });
    const ends = await Promise.all(
      [kept.row, half].map((row, i) =>
        (stores[i] as Store).together((desk) => changeEntry(desk, row, 1, change(row, i + 1), hand)),
      ),
    );
    expect(ends.map((end) => end.kind).toSorted()).toEqual(["conflict", "saved"]);
    expect(await wrongIn(life)).toEqual([]);
  });

  test("with a tank taken away nothing is moved, corrected or undone, and why is said", async () => {
    const life = await begin(stores[0] as Store, 3);
    const [from, to] = life.tanks;
    const entry = () => ({
      ...{ id: newId(), kind: "move", on: TODAY },
      body: moveBody("trochus-snail", 1, to) as Json,
    });
    const kept = await life.store.together((desk) => keepEntry(desk, from, entry(), hand));
    if (kept.kind !== "added") throw new Error("not kept");
    await life.store.setKept(to, 1, false, hand.stamp);
    const again = await life.store.together((desk) => keepEntry(desk, from, entry(), hand));
    const { on, body } = kept.row;
    const undone = await life.store.together((desk) =>
      changeEntry(desk, kept.row, 1, { on, body, kept: false }, hand),
    );
    const because = expect.stringContaining("The other tank was taken away");
    expect([again, undone]).toEqual([
      { kind: "refused", because },
      { kind: "refused", because },
    ]);
  });
});

test("a move that reaches one daybook alone is found", async () => {
  const land = ground("sqlite");
  const store = await land.spot().open();
  const oneSided = (desk: Desk): Desk => ({
    ...desk,
    addEntries: (id, rows, at) => desk.addEntries(id, rows[0]?.body["from"] === null ? rows : [], at),
    addAct: async (act, _, at) => ({ ...act, stamp: at, undone: null }),
  });
  const life = await begin(store, 3);
  const [from, to] = life.tanks;
  const entry = { id: newId(), kind: "move", on: TODAY, body: moveBody("trochus-snail", 1, to) as Json };
  await store.together((desk) => keepEntry(oneSided(desk), from, entry, hand));
  expect(await wrongIn(life)).toEqual([expect.stringContaining("stands alone"), "trochus-snail: 5 of 6"]);
  await store.close();
  land.end();
});
