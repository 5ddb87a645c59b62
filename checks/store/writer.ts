/**
 * A program of its own that writes until it is killed: three tanks at once, each write a new version of the facts and
 * two entries, together. A write is told on standard output after the store has acknowledged it, never before.
 * Says when it is ready and waits for a word, so that its start is no part of what is killed; `open` is killed too.
 */
import { readSync, writeSync } from "node:fs";
import { openStore } from "../../src/store/open.ts";
import type { Store } from "../../src/store/store.ts";
import { stamp } from "./grounds.ts";

export const TANKS = ["t0", "t1", "t2"] as const;

async function plant(store: Store): Promise<void> {
  await store.together(async (desk) => {
    const keeper = await desk.keeperNamed("Ada", "k1", stamp());
    for (const id of TANKS) {
      if ((await desk.tank(id)) !== null) continue;
      await desk.addTank({ id, keeperId: keeper.id, demonstration: false, facts: { n: 0 } }, stamp());
    }
  });
}

/** The `n`-th write of a tank makes its version n + 1. */
async function write(store: Store, tank: string, n: number): Promise<void> {
  await store.together(async (desk) => {
    const saved = await desk.saveFacts(tank, n, { n, filler: "x".repeat((n * 37) % 900) }, stamp(n));
    if (saved.kind !== "saved") throw new Error(`Write ${n} of ${tank}: ${saved.kind}`);
    const entries = ["a", "b"].map((id) => ({
      id: `${tank}.${n}.${id}`,
      kind: "reading",
      on: "2026-01-01",
      body: { quantity: "ph", n },
    }));
    await desk.addEntries(tank, entries, stamp(n));
  });
}

if (process.argv[1] === import.meta.filename) {
  const [where, schema = ""] = process.argv.slice(2);
  writeSync(1, "ready\n");
  readSync(0, Buffer.alloc(1));
  const store = await openStore(where, schema === "" ? {} : { schema });
  await plant(store);
  await Promise.all(
    TANKS.map(async (tank) => {
      for (let n = (await store.tank(tank))?.version ?? 1; ; n++) {
        await write(store, tank, n);
        writeSync(1, `${tank} ${n}\n`);
        await new Promise(setImmediate);
      }
    }),
  );
}

export { plant, write };
