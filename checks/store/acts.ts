/** Acts on a store, drawn at random as plain data, and how each is done to the store and to the model. */
import fc from "fast-check";
import { expect } from "vitest";
import type { Desk, EntryQuery, Json, Store } from "../../src/store/store.ts";
import { stamp } from "./grounds.ts";
import type { Model } from "./model.ts";

const QUANTITIES = ["ph", "no3_mg_per_l", "salinity_psu"] as const;
const LETTERS = ["a", "Z", "_", "é", "ﬀ", "𝒳", " "] as const;

const json = fc
  .dictionary(fc.string({ unit: "binary", maxLength: 6 }), fc.jsonValue({ maxDepth: 2 }), { maxKeys: 3 })
  .map((value): Json => JSON.parse(JSON.stringify(value).replaceAll("__proto__", "proto")));
const day = fc.integer({ min: 1, max: 9 }).map((n) => `2026-01-0${n}`);
/** Which of those there are, by number; a number beyond them is none. */
const some = fc.oneof({ weight: 9, arbitrary: fc.nat(8) }, fc.constant(99));
/** Pictures of one entry; few, so that it fills. */
const MOST_PICTURES = 2;
/** From the latest version, or so many before or after it. */
const off = fc.oneof({ weight: 6, arbitrary: fc.constant(0) }, fc.constantFrom(-1, 1, -7));
const lines = fc.array(
  fc.record({
    letter: fc.constantFrom(...LETTERS),
    kind: fc.constantFrom("reading", "reading", "sighting"),
    on: day,
    quantity: fc.constantFrom(...QUANTITIES),
    body: json,
  }),
  { maxLength: 4 },
);

export const acts = fc.array(
  fc.oneof(
    fc.record({
      act: fc.constant("tank"),
      name: fc.constantFrom(...LETTERS),
      letter: fc.constantFrom(...LETTERS),
      facts: json,
    }),
    fc.record({ act: fc.constant("facts"), tank: some, off, facts: json }),
    fc.record({ act: fc.constant("kept"), tank: some, off, kept: fc.boolean() }),
    fc.record({ act: fc.constant("add"), tank: some, lines, fails: fc.boolean() }),
    fc.record({ act: fc.constant("as one"), tank: some, lines, about: json, fails: fc.boolean() }),
    fc.record({ act: fc.constant("undo"), which: some, leaves: fc.nat(3) }),
    fc.record({
      act: fc.constant("correct"),
      entry: some,
      off,
      on: day,
      kept: fc.boolean(),
      quantity: fc.constantFrom(...QUANTITIES),
      body: json,
    }),
    fc.record({
      act: fc.constant("once"),
      key: fc.constantFrom("k1", "k2"),
      fingerprint: fc.constantFrom("f1", "f2"),
      value: json,
    }),
    fc.record({
      act: fc.constant("give"),
      tank: some,
      care: fc.constantFrom("glass", "wave.2", "𝒳"),
      cancelled: fc.boolean(),
      event: json,
    }),
    fc.record({ act: fc.constant("feed"), tank: some, takesBack: fc.boolean() }),
    fc.record({
      act: fc.constant("picture"),
      entry: some,
      image: fc.uint8Array({ minLength: 1, maxLength: 3, max: 4 }),
      shows: fc.constantFrom("", "two snails", "𝒳 ﬀ"),
    }),
    fc.record({ act: fc.constant("keep picture"), which: some, kept: fc.boolean() }),
    fc.record({ act: fc.constant("setting"), name: fc.constantFrom("x", "𝒳"), value: json }),
    fc.record({
      act: fc.constant("list"),
      tank: some,
      query: fc.record(
        {
          kind: fc.constantFrom("reading", "sighting"),
          from: day,
          to: day,
          limit: fc.integer({ min: 1, max: 6 }),
          after: fc.record({ on: day, id: fc.constantFrom("a1", "𝒳3", "é2") }),
          withRemoved: fc.boolean(),
        },
        { requiredKeys: ["limit"] },
      ),
    }),
  ),
  { minLength: 5, maxLength: 40, size: "max" },
);
export type Act = (typeof acts extends fc.Arbitrary<infer All> ? All : never)[number];

/** Does an act to both and holds the answers together. `n`: which act of its run it is; ids are made from it. */
export async function perform(act: Act, n: number, store: Store, model: Model): Promise<void> {
  const at = stamp(n);
  const [tankIds, entryIds] = [[...model.tanks.keys()], [...model.entries.keys()]];
  const tankId = "tank" in act ? (tankIds[act.tank] ?? "none") : "";
  switch (act.act) {
    case "tank": {
      const keeper = model.keeperNamed(act.name, `k${n}`, at);
      const id = `${act.letter}${n}`;
      const added = await store.together(async (desk) => {
        expect(await desk.keeperNamed(act.name, `k${n}`, at)).toEqual(keeper);
        return desk.addTank({ id, keeperId: keeper.id, demonstration: n % 2 === 0, facts: act.facts }, at);
      });
      expect(added).toEqual(model.addTank(id, keeper, n % 2 === 0, act.facts, at));
      break;
    }
    case "facts": {
      const from = versionOf(model.tanks, tankId) + act.off;
      expect(await store.saveFacts(tankId, from, act.facts, at)).toEqual(
        model.saveTank(tankId, from, { facts: act.facts }, at),
      );
      break;
    }
    case "kept": {
      const from = versionOf(model.tanks, tankId) + act.off;
      expect(await store.setKept(tankId, from, act.kept, at)).toEqual(
        model.saveTank(tankId, from, { kept: act.kept }, at),
      );
      break;
    }
    case "add": {
      if (tankId === "none") break;
      const added = act.lines.map(({ letter, kind, on, quantity, body }, i) => ({
        id: `${letter}${n}.${i}`,
        kind,
        on,
        body: { ...body, quantity },
      }));
      const work = async (desk: Desk) => {
        const rows = await desk.addEntries(tankId, added, at);
        if (act.fails) throw new Error("on purpose");
        return rows;
      };
      if (act.fails) await expect(store.together(work)).rejects.toThrow("on purpose");
      else expect(await store.together(work)).toEqual(model.addEntries(tankId, added, at));
      break;
    }
    case "as one": {
      if (tankId === "none") break;
      const added = act.lines.map(({ letter, kind, on, quantity, body }, i) => ({
        id: `${letter}${n}.${i}`,
        kind,
        on,
        body: { ...body, quantity },
      }));
      const one = { id: `act${n}`, tankId, kind: "bring_in", about: act.about };
      const made = added.map(({ id }) => ({ entryId: id, version: 1 }));
      const work = async (desk: Desk) => {
        await desk.addEntries(tankId, added, at);
        const row = await desk.addAct(one, made, at);
        if (act.fails) throw new Error("on purpose");
        return row;
      };
      if (act.fails) {
        await expect(store.together(work)).rejects.toThrow("on purpose");
        break;
      }
      const row = await store.together(work);
      model.addEntries(tankId, added, at);
      const ids = added.map(({ id }) => id);
      expect(row).toEqual(model.addAct(one.id, tankId, act.about, ids, at));
      break;
    }
    case "undo": {
      const [id, kept] = [...model.acts][act.which] ?? ["none", undefined];
      const undone: { entryId: string; undoneVersion: number }[] = [];
      const added: string[] = [];
      const first = kept?.row.undone === null;
      for (const { entryId } of first ? kept.entries.slice(act.leaves) : []) {
        const latest = model.entries.get(entryId)?.at(-1);
        if (latest === undefined) continue;
        const change = { on: latest.on, body: latest.body, kept: false };
        if (latest.version === 1) added.push(entryId);
        else await store.correctEntry(entryId, latest.version, change, at);
        model.correctEntry(entryId, latest.version, change, at);
        undone.push({ entryId, undoneVersion: latest.version + 1 });
      }
      expect(await store.takeAdded(added, at)).toBe(added.length);
      expect(await store.undoAct(id, undone, at)).toBe(model.undoAct(id, undone, at));
      break;
    }
    case "correct": {
      const id = entryIds[act.entry] ?? "none";
      const from = versionOf(model.entries, id) + act.off;
      const change = { on: act.on, kept: act.kept, body: { ...act.body, quantity: act.quantity } };
      expect(await store.correctEntry(id, from, change, at)).toEqual(
        model.correctEntry(id, from, change, at),
      );
      break;
    }
    case "once": {
      const { key, fingerprint, value } = act;
      const before = model.replies.get(key);
      const reply = { status: 200, body: value };
      const kind =
        before === undefined ? "first" : before.fingerprint === fingerprint ? "again" : "other_request";
      const work = async (desk: Desk) => {
        await desk.saveSetting(key, value, at);
        return reply;
      };
      const expected =
        kind === "other_request" ? { kind } : { kind, reply: { status: 200, body: before?.body ?? value } };
      expect(await store.once(key, fingerprint, at, work)).toEqual(expected);
      if (kind === "first") {
        model.replies.set(key, { fingerprint, body: value });
        model.settings.set(key, value);
      }
      break;
    }
    case "setting":
      await store.saveSetting(act.name, act.value, at);
      model.settings.set(act.name, act.value);
      break;
    case "list":
      expect(await store.entries(tankId, act.query as EntryQuery)).toEqual(
        model.listEntries(tankId, act.query as EntryQuery),
      );
      break;
    case "give": {
      if (!model.tanks.has(tankId)) break;
      const sequence = (model.given.get(tankId)?.get(act.care)?.sequence ?? -1) + 1;
      const row = {
        care: act.care,
        sequence,
        at: at.at,
        cancelled: act.cancelled,
        reach: "2026-02-01",
        event: act.event,
      };
      await store.giveEvents(tankId, [row]);
      model.give(tankId, row);
      break;
    }
    case "feed": {
      if (!model.tanks.has(tankId)) break;
      await store.addFeed({ id: `f${n}`, tankId, tokenHash: `h${n}` }, at);
      model.feeds.set(`h${n}`, { id: `f${n}`, tankId, made: at, takenBack: null });
      if (!act.takesBack) break;
      expect(await store.takeBackFeed(`f${n}`, at)).toBe(true);
      model.feeds.set(`h${n}`, { id: `f${n}`, tankId, made: at, takenBack: at });
      break;
    }
    case "picture": {
      const entryId = entryIds[act.entry];
      if (entryId === undefined) break;
      const size = { type: "image/png", widthPx: 1 + n, heightPx: 2 };
      const one = { id: `p${n}`, entryId, ...size, shows: act.shows, image: act.image };
      expect(await store.addPicture(one, MOST_PICTURES, at)).toEqual(
        model.addPicture(one, MOST_PICTURES, at),
      );
      break;
    }
    case "keep picture": {
      const id = [...model.pictures.keys()][act.which] ?? "none";
      const done = model.keepPicture(id, act.kept, MOST_PICTURES, at);
      expect(await store.keepPicture(id, act.kept, MOST_PICTURES, at)).toBe(done);
      break;
    }
  }
}

const versionOf = (all: ReadonlyMap<string, readonly { version: number }[]>, id: string) =>
  all.get(id)?.at(-1)?.version ?? 1;

/** All that a store can be asked, against the model. */
export async function sameAsModel(store: Store, model: Model): Promise<void> {
  expect(await store.tanks()).toEqual(model.listTanks());
  const tankIds = [...model.tanks.keys()];
  for (const id of tankIds) {
    expect(await store.tankHistory(id)).toEqual(model.tanks.get(id));
    const query = { limit: 40_000, withRemoved: true };
    expect(await store.entries(id, query)).toEqual(model.listEntries(id, query));
    expect(await store.acts(id, "bring_in", 1000)).toEqual(model.listActs(id));
    expect(await store.undoneAdditions(id)).toEqual(model.undoneAdditions(id));
    expect(new Map((await store.givenEvents(id)).map((one) => [one.care, one]))).toEqual(
      model.given.get(id) ?? new Map(),
    );
  }
  for (const [hash, row] of model.feeds) expect(await store.feedByHash(hash)).toEqual(row);
  for (const [id, { row, entries }] of model.acts) {
    expect(await store.act(id)).toEqual(row);
    expect(await store.actEntries(id)).toEqual(entries);
  }
  for (const id of [...model.entries.keys()].slice(0, 200))
    expect(await store.entryHistory(id)).toEqual(model.entries.get(id));
  for (const [name, value] of model.settings) expect(await store.setting(name)).toEqual(value);
  expect(await store.pictures([...model.entries.keys()])).toEqual(model.listPictures());
  for (const [id, { row, image }] of model.pictures) {
    expect(await store.picture(id)).toEqual(row);
    expect([...((await store.pictureImage(id)) ?? [])]).toEqual([...image]);
  }
  const byId = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id).sort();
  expect(byId(await store.latestReadings(tankIds))).toEqual(byId(model.latestReadings()));
}
