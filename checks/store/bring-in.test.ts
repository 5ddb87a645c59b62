/** Files brought in, undone, corrected and brought in again, on both databases: no row is lost, none is doubled. */
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Desk, Store } from "../../src/store/store.ts";
import { liveAll, liveOne, type Toll } from "./bring-in-lives.ts";
import { lives } from "./bring-in-model.ts";
import { DATABASES, type Ground, ground } from "./grounds.ts";

const LIVES = 60;
const SEED = Date.now() % 1_000_000;

test.each(DATABASES)(`${LIVES} random lives on %s show what the page of rules shows`, async (database) => {
  const toll = await liveAll(database, LIVES, SEED);
  console.log(`lives of daybooks under import, ${database}, seed ${SEED}: ${JSON.stringify(toll)}`);
  expect(toll).toMatchObject({ lives: LIVES, lost: 0, doubled: 0, first: [] });
  expect(toll.imports).toBeGreaterThan(LIVES);
});

describe("planted faults are found", () => {
  let land: Ground;
  beforeAll(() => {
    land = ground("sqlite");
  });
  afterAll(() => land.end());

  const faults: readonly (readonly [string, (desk: Desk) => Partial<Desk>])[] = [
    ["what an undo took away counts as deleted", () => ({ undoneAdditions: async () => new Set<string>() })],
    [
      "the last row of a file is dropped",
      (desk) => ({ addEntries: (id, rows, at) => desk.addEntries(id, rows.slice(0, -1), at) }),
    ],
    ["an undo leaves what was added", () => ({ takeAdded: async (ids) => ids.length })],
  ];
  test.each(faults)("%s", async (_, fault) => {
    const store = await land.spot().open();
    const faulty = new Proxy(store, {
      get(target, name) {
        if (name === "together") {
          return (work: (desk: Desk) => Promise<unknown>) =>
            target.together((desk) => work({ ...desk, ...fault(desk) }));
        }
        return Reflect.get(target, name, target) as unknown;
      },
    }) as Store;
    const toll: Toll = { lives: 0, deeds: 0, imports: 0, lost: 0, doubled: 0, first: [] };
    let broke = false;
    for (const deeds of fc.sample(lives, { numRuns: 40, seed: 1 })) {
      await liveOne(faulty, deeds, toll).catch(() => {
        broke = true;
      });
    }
    await store.close();
    expect(broke || toll.lost + toll.doubled > 0).toBe(true);
  });
});
