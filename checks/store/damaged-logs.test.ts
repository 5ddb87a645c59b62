/**
 * The stand-in for a power cut: SQLite's log as a disk may leave it, cut, with a bit flipped, with a stretch zeroed.
 * The store opens, is sound, and what is left is what was acknowledged up to some moment: never a later write
 * without an earlier, never half of one.
 */
import { copyFileSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { examine } from "../../src/store/examine.ts";
import { openDatabase } from "../../src/store/open.ts";
import { Chance } from "../kit/chance.ts";
import { type Ground, ground } from "./grounds.ts";
import { plant, TANKS, write } from "./writer.ts";

/** So many of each kind. */
const EACH = 120;
const WRITES = 50;
const SEED = 20_260_615;

let land: Ground;
const whole = () => join(land.folder, "whole.db");
beforeAll(async () => {
  land = ground("sqlite");
  const spot = land.spot();
  const store = await spot.open();
  await plant(store);
  for (let n = 1; n <= WRITES; n++) for (const tank of TANKS) await write(store, tank, n);
  // Nobody writes now: the two files fit each other, as they would stand after a cut.
  for (const end of ["", "-wal"]) copyFileSync(`${spot.where}${end}`, `${whole()}${end}`);
  await store.close();
});
afterAll(() => land?.end());

type Damage = (log: Buffer, chance: Chance) => Buffer;
const KINDS: readonly (readonly [string, Damage])[] = [
  ["cut", (log, chance) => log.subarray(0, chance.whole(0, log.length - 1))],
  [
    "flipped",
    (log, chance) => {
      const at = chance.whole(0, log.length - 1);
      log[at] = (log[at] ?? 0) ^ (1 << chance.whole(0, 7));
      return log;
    },
  ],
  [
    "zeroed",
    (log, chance) => {
      const at = chance.whole(0, log.length - 1);
      return log.fill(0, at, Math.min(log.length, at + chance.whole(1, 20_000)));
    },
  ],
];

test.each(KINDS)("%s: what survives is a prefix of what was acknowledged", async (kind, damage) => {
  const chance = new Chance(
    SEED,
    KINDS.findIndex(([name]) => name === kind),
  );
  const left: number[] = [];
  for (let n = 0; n < EACH; n++) {
    const file = join(land.folder, `${kind}-${n}.db`);
    copyFileSync(whole(), file);
    writeFileSync(`${file}-wal`, damage(readFileSync(`${whole()}-wal`), chance));
    const database = await openDatabase(file);
    try {
      expect((await examine(database)).filter(({ good }) => !good)).toEqual([]);
      const tanks = await database.reads.selectFrom("tank").select(["id", "version"]).orderBy("id").execute();
      const writes = tanks.map(({ version }) => version - 1);
      // The tanks were written in turn: t0, t1, t2, t0 ...
      expect(writes).toEqual(writes.toSorted((a, b) => b - a));
      expect((writes[0] ?? 0) - (writes.at(-1) ?? 0)).toBeLessThanOrEqual(1);
      const sum = writes.reduce((all, one) => all + one, 0);
      const rows = await database.reads.selectFrom("entry").select(["id"]).execute();
      const expected = TANKS.flatMap((tank, i) =>
        Array.from({ length: writes[i] ?? 0 }, (_, w) =>
          ["a", "b"].map((end) => `${tank}.${w + 1}.${end}`),
        ).flat(),
      );
      expect(rows.map(({ id }) => id).sort()).toEqual(expected.sort());
      left.push(sum);
    } finally {
      await database.close();
    }
  }
  // The damage reached what was kept: not all of it survived every time, and not none.
  expect(Math.min(...left)).toBeLessThan(TANKS.length * WRITES);
  expect(Math.max(...left)).toBeGreaterThan(0);
});

test("the log that is damaged here holds most of the writes", () => {
  expect(statSync(`${whole()}-wal`).size).toBeGreaterThan(500_000);
});
