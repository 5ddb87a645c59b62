/** A new store in a folder of its own, gone after the test that asked for it. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { openStore } from "../../src/store/open.ts";
import type { Store } from "../../src/store/store.ts";

export async function temporaryStore(): Promise<Store> {
  const folder = mkdtempSync(join(tmpdir(), "grazewell-store-"));
  const store = await openStore(join(folder, "store.db"));
  onTestFinished(async () => {
    await store.close();
    rmSync(folder, { recursive: true });
  });
  return store;
}
