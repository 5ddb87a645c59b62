/**
 * The application for tests of its forms, over a new store: without the engine (every plan is still being worked out)
 * and without built files. The clock is the test's; the day is that of the clock.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { buildApp } from "../../src/server/app.ts";
import { openStore } from "../../src/store/open.ts";
import type { Store } from "../../src/store/store.ts";

export interface FormApp {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly close: () => Promise<void>;
}

/** @param now an instant, UTC, as the clock would show it */
export async function formApp(now: () => string): Promise<FormApp> {
  const folder = mkdtempSync(join(tmpdir(), "grazewell-forms-"));
  const store = await openStore(join(folder, "store.db"));
  const app = buildApp({
    store,
    answers: { ready: () => null, of: () => Promise.reject(new Error("not asked for here")) },
    built: {
      files: new Map(),
      addresses: new Proxy({}, { get: (_, name) => `/built/${String(name)}` }),
    } as never,
    now: () => new Date(now()),
    today: () => now().slice(0, 10),
  });
  return {
    app,
    store,
    close: async () => {
      await app.close();
      await store.close();
      rmSync(folder, { recursive: true });
    },
  };
}
