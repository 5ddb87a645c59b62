/** "Keep these dates": one press, one entry; other dates that run into it correct it; taken away, the page asks anew. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { type FormApp, formApp } from "../../../checks/kit/form-app.ts";

const HOST = "127.0.0.1:8420";
const NOW = "2026-06-15T12:00:00.000Z";
const PAGE = "/tanks/tank-1/feeding/holiday";

let app: FormApp["app"];
let store: FormApp["store"];
let close: FormApp["close"];

beforeAll(async () => {
  ({ app, store, close } = await formApp(() => NOW));
  const stamp = { at: NOW, by: "Tester" };
  const keeper = await store.keeperNamed("Tester", "keeper-tester", stamp);
  const facts = { grazewell_tank: 1, name: "Kitchen", water_l: "200 L", first_seawater_on: "2025-01-10" };
  await store.addTank({ id: "tank-1", keeperId: keeper.id, demonstration: false, facts }, stamp);
});
afterAll(() => close());

const press = (fields: Readonly<Record<string, string>>) =>
  app.inject({
    method: "POST",
    url: PAGE,
    headers: { host: HOST, origin: `http://${HOST}`, "content-type": "application/x-www-form-urlencoded" },
    payload: new URLSearchParams(fields).toString(),
  });
const shown = async () => (await app.inject({ method: "GET", url: PAGE, headers: { host: HOST } })).body;
const entries = () => store.entries("tank-1", { kind: "absence", limit: 9 });

const dates = { from: "2026-07-01", to: "2026-07-15", every: "2", fed_by: "sitter", once: "k".repeat(22) };

test("kept once, corrected by other dates, gone when taken away", async () => {
  expect(await shown()).not.toContain("Kept:");
  const first = await press(dates);
  expect(first.statusCode).toBe(303);
  await press(dates);
  const [row, ...more] = await entries();
  expect(more).toEqual([]);
  expect(first.headers.location).toContain(`kept=${row?.id}`);
  expect(row).toMatchObject({ version: 1, body: { from: "2026-07-01", to: "2026-07-15", portions: 6 } });
  expect(await shown()).toContain("Away from 1 Jul 2026 to 15 Jul 2026, a sitter feeds every 2 days.");

  await press({ ...dates, to: "2026-07-20", fed_by: "nobody" });
  const [corrected, ...none] = await entries();
  expect(none).toEqual([]);
  expect(corrected).toMatchObject({ id: row?.id, version: 2, body: { to: "2026-07-20", fed_by: "nobody" } });

  await press({ ...dates, from: "2026-08-10", to: "2026-08-20" });
  expect(await entries()).toHaveLength(2);
  for (const one of await entries())
    await store.correctEntry(
      one.id,
      one.version,
      { on: one.on, body: one.body, kept: false },
      { at: NOW, by: "Tester" },
    );
  expect(await shown()).not.toContain("Kept:");
});

test("dates that can't be are told, and nothing is kept", async () => {
  const reply = await press({ ...dates, to: "2026-07-01" });
  expect(reply.statusCode).toBe(422);
  expect(reply.body).toContain("must be 1 to 42 days after leaving");
  expect((await press({ fed_by: "sitter" })).statusCode).toBe(422);
  expect(await entries()).toEqual([]);
});
