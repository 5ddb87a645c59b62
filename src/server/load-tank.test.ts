/** A kept tank with its daybook: what is loaded, when it is read anew, and that no entry can make it unreadable. */
import { expect, test } from "vitest";
import { temporaryStore } from "../../checks/kit/store.ts";
import { growthsOf } from "../answers/growths/growths.ts";
import { entryContext } from "../answers/record/entry-context.ts";
import type { EntryKind } from "../contract/daybook/kinds.ts";
import { type EntryText, readEntry } from "../contract/daybook/read-entry.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";
import type { Json, Store } from "../store/store.ts";
import { loadTank } from "./load-tank.ts";
import { newId } from "./new-id.ts";

const today = "2026-06-15";
const stamp = { at: "2026-06-01T09:00:00.000Z", by: "test" };
const FACTS: TankFile = {
  grazewell_tank: 1,
  water_l: "200 L",
  first_seawater_on: "2025-06-01",
  animals_present: [{ animal: "trochus-snail", count: 5 }],
};

async function storeWith(facts: TankFile = FACTS): Promise<Store> {
  const store = await temporaryStore();
  await store.keeperNamed("Ada (invented)", "ada", stamp);
  await store.addTank(
    { id: "t", keeperId: "ada", demonstration: false, facts: facts as unknown as Json },
    stamp,
  );
  return store;
}
const load = async (store: Store) => (await loadTank(store, "t", today))!;

async function log(store: Store, kind: EntryKind, typed: EntryText): Promise<string> {
  const read = readEntry(kind, typed, entryContext(await load(store), { today, now: null }));
  if (!read.ok) throw new Error(read.doubts[0]?.message.text);
  const id = newId();
  await store.addEntries("t", [{ id, kind, on: read.on, body: read.body as Json }], stamp);
  return id;
}
const heads = async (store: Store) => (await load(store)).facts.present.map(({ id, count }) => [id, count]);

test("with facts as of today, entries latest first, and the record", async () => {
  const store = await storeWith();
  await log(store, "addition", { animal: "nassarius-snail", count: "3", observed: "2026-06-05" });
  await log(store, "loss", {
    animal: "trochus-snail",
    count: "1",
    certainty: "found",
    observed: "2026-06-10",
  });
  const { applied, document, entries, record } = await load(store);
  expect(await heads(store)).toEqual([
    ["trochus-snail", 4],
    ["nassarius-snail", 3],
  ]);
  expect(document).toEqual(FACTS);
  expect(applied.animals_present).toHaveLength(2);
  expect(entries.map(({ kind }) => kind)).toEqual(["loss", "addition"]);
  expect(record.happenings.map(({ kind }) => kind)).toEqual(["added", "lost_found"]);
});

test("is read anew when an entry is added, corrected, taken away, or the answers change, and not else", async () => {
  const store = await storeWith();
  const first = await load(store);
  expect((await load(store)).record).toBe(first.record);
  const id = await log(store, "addition", { animal: "trochus-snail", count: "3", observed: "2026-06-05" });
  expect(await heads(store)).toContainEqual(["trochus-snail", 3]);
  const row = (await store.entry(id))!;
  await store.correctEntry(id, 1, { on: row.on, body: { ...row.body, count: 2 }, kept: true }, stamp);
  expect(await heads(store)).toContainEqual(["trochus-snail", 2]);
  await store.correctEntry(id, 2, { on: row.on, body: row.body, kept: false }, stamp);
  expect(await heads(store)).toEqual([["trochus-snail", 5]]);
  await store.saveFacts("t", 1, { ...FACTS, animals_present: [] } as unknown as Json, stamp);
  expect(await heads(store)).toEqual([]);
});

test("answers given later stand above entries from before", async () => {
  const store = await storeWith();
  await log(store, "addition", { animal: "nassarius-snail", count: "3", observed: "2026-06-05" });
  const later = { at: "2026-06-10T09:00:00.000Z", by: "test" };
  const animals = [{ animal: "trochus-snail", count: 7 }];
  await store.saveFacts("t", 1, { ...FACTS, animals_present: animals } as unknown as Json, later);
  expect(await heads(store)).toEqual([["trochus-snail", 7]]);
  // Another part of the answers says nothing of animals.
  await store.saveFacts("t", 2, { ...FACTS, animals_present: animals, corals: "no" } as unknown as Json, {
    at: "2026-06-14T09:00:00.000Z",
    by: "test",
  });
  await log(store, "addition", { animal: "nassarius-snail", count: "2", observed: "2026-06-12" });
  expect(await heads(store)).toEqual([
    ["trochus-snail", 7],
    ["nassarius-snail", 2],
  ]);
});

test("answers put back hold from the day they were given first", async () => {
  const store = await storeWith();
  await log(store, "addition", { animal: "nassarius-snail", count: "3", observed: "2026-06-05" });
  const before = await heads(store);
  const later = { at: "2026-06-10T09:00:00.000Z", by: "test" };
  await store.saveFacts("t", 1, { ...FACTS, animals_present: [] } as unknown as Json, later);
  expect(await heads(store)).toEqual([]);
  await store.saveFacts("t", 2, FACTS as unknown as Json, later);
  expect(await heads(store)).toEqual(before);
});

test("where an entry and the answers can't stand together, the answers stand, and that is said", async () => {
  const store = await storeWith({ ...FACTS, floor: { kind: "sand", depth_mm: "0" } });
  await log(store, "addition", { animal: "nassarius-snail", count: "3", observed: "2026-06-05" });
  await log(store, "chore", { chore: "sand_stirred", observed: "2026-06-06" });
  const { facts, notices } = await load(store);
  expect(facts.present.map(({ id }) => id)).toEqual(["trochus-snail"]);
  expect(notices.map(({ text }) => text).join()).toContain("the answers stand");
});

test("an entry of another shape than this program knows is left out, and stays kept", async () => {
  const store = await storeWith();
  await store.addEntries("t", [{ id: newId(), kind: "mood", on: "2026-06-05", body: { fine: true } }], stamp);
  await store.addEntries("t", [{ id: newId(), kind: "loss", on: "2026-06-05", body: { count: -1 } }], stamp);
  expect((await load(store)).entries).toEqual([]);
  expect(await store.entries("t", { limit: 10 })).toHaveLength(2);
});

test("the reader of entries knows the record, the zone and the first day", async () => {
  const store = await storeWith();
  await log(store, "relocation", { to: "the hall", zone: "Asia/Kolkata", observed: "2026-06-10" });
  await log(store, "loss", {
    animal: "trochus-snail",
    count: "2",
    certainty: "found",
    observed: "2026-06-10",
  });
  const context = entryContext(await load(store), { today, now: null });
  expect(context).toMatchObject({
    zone: "Asia/Kolkata",
    notBefore: "2025-06-01",
    waterL: 200,
    stocked: true,
  });
  expect(context.onRecord("trochus-snail", today)).toBe(3);
  const old = readEntry("addition", { animal: "trochus-snail", count: "2", observed: "2026-05-20" }, context);
  expect(old.ok && old.said.map(({ text }) => text).join()).toContain("on 1 June 2026: kept as history");
  expect(context.onRecord("trochus-snail", "2026-06-09")).toBe(5);
});

test("what the questions told has the day on which they were, and the feed that the first change after it changed", async () => {
  const told = {
    ...FACTS,
    sightings: { hair_algae: "patches" },
    feeding: { foods: [{ kind: "dry_pellet", g_per_day: "0.5 g" }] },
  };
  const store = await storeWith(told as TankFile);
  expect((await load(store)).record.told?.sightings).toEqual({
    on: "2026-06-01",
    covers: { hair_algae: "patches" },
  });
  const before = await log(store, "change", { changed: "feed", to: "0.8 g", observed: "2026-05-20" });
  expect((await load(store)).record.told?.feed).toEqual({ gPerDay: 0.5, changedBy: null });
  const after = await log(store, "change", { changed: "feed", to: "1 g", observed: "2026-06-10" });
  expect(after).not.toBe(before);
  expect((await load(store)).record.told?.feed).toEqual({ gPerDay: 0.5, changedBy: after });
});

test("a growth that the daybook saw long ago was not told in the questions", async () => {
  const store = await storeWith();
  await log(store, "growth", { growth: "hair_algae", score: "3", observed: "2026-04-01" });
  const { record, facts } = await load(store);
  expect(record.told?.sightings?.covers ?? {}).toEqual({});
  expect(growthsOf({ facts, record, today }).output.growths).toEqual([]);
});
