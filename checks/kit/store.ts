/**
 * A new store in a folder of its own, gone after the test that asked for it; in memory where there is room, since it
 * need not outlive its test and waiting for a disk tries nothing here. What a disk does to a store: checks/store.
 */
import { mkdtempSync, rmSync, statfsSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { openStore } from "../../src/store/open.ts";
import type { Store } from "../../src/store/store.ts";

const IN_MEMORY = "/dev/shm";
const ROOM_BYTES = 512 * 1024 * 1024;

function place(): string {
  try {
    const { bavail, bsize } = statfsSync(IN_MEMORY);
    return bavail * bsize > ROOM_BYTES ? IN_MEMORY : tmpdir();
  } catch {
    return tmpdir();
  }
}

export async function temporaryStore(): Promise<Store> {
  const folder = mkdtempSync(join(place(), "grazewell-store-"));
  const store = await openStore(join(folder, "store.db"));
  onTestFinished(async () => {
    await store.close();
    rmSync(folder, { recursive: true });
  });
  return store;
}
