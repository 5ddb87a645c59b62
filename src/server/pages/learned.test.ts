/** What the daybook has taught, served: while the engine learns anew, what it taught before and what came since. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { LearnedOutput } from "../../answers/learned/output.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { wordToEngine } from "../../contract/worker/messages.ts";
import { openStore } from "../../store/open.ts";
import type { Store } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { buildApp } from "../app.ts";

const NOW = "2026-06-15T12:00:00.000Z";
const HOST = "127.0.0.1:8420";
const headers = { host: HOST, origin: `http://${HOST}`, "sec-fetch-site": "same-origin" };
const stamp = { at: "2026-06-01T12:00:00.000Z", by: "Tester" };
const TAUGHT: LearnedOutput = {
  ...{ observations: 9, least: 4 },
  taught: {
    ...{ from: "2026-05-01", to: "2026-06-15", members: 200, groups: [], readings: [] },
    quantities: [
      {
        ...{ id: "a", label: "film that grows", unit: "mg C/d", spread_left: 0.3, seen: "well" },
        ...{ figure: "learned.a", pulled_by: null },
        ...{ before: { low: 1, central: 4, high: 16 }, after: { low: 3, central: 5, high: 7 } },
      },
    ],
  },
};

let app: FastifyInstance;
let store: Store;
let folder: string;
let tank: string;
let answers: TankAnswers | null = null;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "learned-"));
  store = await openStore(join(folder, "store.db"));
  const { id: keeperId } = await store.keeperNamed("Nell", "keeper-nell", stamp);
  const facts = { grazewell_tank: 1, name: "Alder", water_l: "200 L", first_seawater_on: "2025-01-10" };
  tank = (await store.addTank({ id: "tank-1", keeperId, demonstration: false, facts }, stamp)).id;
  app = buildApp({
    store,
    answers: { ready: () => answers, of: () => Promise.reject(new Error("not asked")) },
    built: {
      files: new Map(),
      addresses: new Proxy(
        { "client/learn-again": "/built/client/learn-again" },
        { get: (_, name) => `/built/${String(name)}` },
      ),
    } as never,
    now: () => new Date(NOW),
    today: () => "2026-06-15",
  });
});
afterAll(async () => {
  await app.close();
  await store.close();
  rmSync(folder, { recursive: true });
});

const get = async (url: string) => (await app.inject({ url, headers })).body;

test("before the engine has had a word, a slot that it will fill, and the module that the page in it wants", async () => {
  const page = await get(to.learned(tank));
  expect(page).toContain(`data-src="${to.learned(tank)}?part=1"`);
  expect(page).toContain("/built/client/learn-again");
});

test("learned: the page, with the way to learn again; a newer daybook is told of until it is learned from", async () => {
  answers = { learned: TAUGHT } as TankAnswers;
  const page = await get(to.learned(tank));
  expect(page).toContain("Film that grows: well seen");
  expect(page).toContain("Learn again from the daybook");
  expect(page).not.toContain("come in since");
  answers = null;
  const sent = { quantity: "no3_mg_per_l", text: "10", unit: "mg/L as NO3", observed: "today" };
  const reply = await app.inject({
    ...{ method: "POST", url: `/tanks/${tank}/readings` },
    payload: new URLSearchParams({ ...sent, once: "k".repeat(22) }).toString(),
    headers: { ...headers, "content-type": "application/x-www-form-urlencoded" },
  });
  expect(reply.statusCode).toBe(303);
  const older = await get(to.learned(tank));
  expect(older).toContain("Film that grows: well seen");
  expect(older).toContain("1 entry has come in since this was learned.");
  answers = { learned: TAUGHT } as TankAnswers;
  expect(await get(to.learned(tank))).not.toContain("come in since");
});

test("what is learned from is a word that the browser's engine takes", async () => {
  const asked = JSON.parse(await get(to.learnPart(tank))) as object;
  expect(wordToEngine({ kind: "learn", id: 1, ...asked })).not.toBeNull();
  expect(asked).toMatchObject({ record: { asOf: "2026-06-15", observations: [{ on: "2026-06-15" }] } });
});
