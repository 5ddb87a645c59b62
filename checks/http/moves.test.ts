/** Animals moved between two tanks at the API's and the page's door: kept, told, corrected and undone in both daybooks. */
import type { FastifyInstance } from "fastify";
import { expect, test } from "vitest";
import type { EntryView } from "../../src/contract/http/entries.ts";
import { API_ROOT } from "../../src/contract/http/openapi.ts";
import { problem } from "../../src/contract/http/parts.ts";
import type { Json } from "../../src/store/store.ts";
import { appUnderTest, ask, HOST } from "./kit/app.ts";

/** No plan is needed here. */
const NO_ENGINE = { of: () => new Promise<never>(() => {}), ready: () => null };
const stamp = { at: "2026-05-01T09:00:00.000Z", by: "test" };

async function twoTanks() {
  const under = await appUnderTest(NO_ENGINE);
  const { id: keeperId } = await under.store.keeperNamed("Ada (invented)", "ada", stamp);
  const facts = { grazewell_tank: 1, water_l: "200 L", first_seawater_on: "2026-01-10" };
  const snails = [{ animal: "trochus-snail", count: 5 }];
  const add = (id: string, more: Json) =>
    under.store.addTank({ id, keeperId, demonstration: false, facts: { ...facts, ...more } }, stamp);
  await add("kitchen", { name: "Kitchen", animals_present: snails });
  await add("hallway", { name: "Hallway", first_seawater_on: "2026-03-01", animals_present: [] });
  return under;
}

const entriesOf = (tank: string) => `${API_ROOT}/tanks/${tank}/entries`;
const MOVE = { kind: "move", animal: "trochus-snail", count: 3, to: "Hallway", observed: "2026-06-10" };
const send = (app: FastifyInstance, tank: string, body: Json, headers = {}) =>
  ask(app, "POST", entriesOf(tank), { body, headers });
const moves = async (app: FastifyInstance, tank: string): Promise<EntryView[]> =>
  (await ask(app, "GET", entriesOf(tank), { query: { kind: "move", removed: "yes" } })).json().entries;
async function heads(app: FastifyInstance, tank: string): Promise<string> {
  const page = await app.inject({
    method: "GET",
    url: `/tanks/${tank}/daybook/new/head_count`,
    headers: { host: HOST },
  });
  return /trochus snail, (\d+) on record/.exec(page.body)?.[1] ?? "0";
}

test("one move stands in both daybooks, sent twice it is one, and each record has its heads", async () => {
  const { app } = await twoTanks();
  const headers = { "idempotency-key": "one-move" };
  const first = await send(app, "kitchen", MOVE, headers);
  expect(first.statusCode, first.body).toBe(201);
  const said = first.json().said.map(({ message }: { message: string }) => message);
  expect(said.join(" ")).toMatch(/acclimate.*72 hours in Hallway/s);
  const [out, inward] = [await moves(app, "kitchen"), await moves(app, "hallway")];
  expect([out.length, inward.length]).toEqual([1, 1]);
  expect(out[0]).toMatchObject({ on: "2026-06-10", body: { to: "hallway", to_text: "Hallway", from: null } });
  expect(inward[0]).toMatchObject({
    on: "2026-06-10",
    body: { from: "kitchen", from_text: "Kitchen", to: null },
  });
  expect([await heads(app, "kitchen"), await heads(app, "hallway")]).toEqual(["2", "3"]);
  expect((await send(app, "hallway", { ...MOVE, to: undefined, from: "Kitchen", count: 2 })).statusCode).toBe(
    201,
  );
  expect([await heads(app, "kitchen"), await heads(app, "hallway")]).toEqual(["0", "5"]);
});

test("a repeat under one key is the first answer, though nothing is left to move", async () => {
  const { app } = await twoTanks();
  const headers = { "idempotency-key": "all-of-them" };
  const all = { ...MOVE, count: 5 };
  const first = await send(app, "kitchen", all, headers);
  const again = await send(app, "kitchen", all, headers);
  expect([first.statusCode, again.statusCode]).toEqual([201, 201]);
  expect(again.json()).toEqual(first.json());
  expect(await moves(app, "hallway")).toHaveLength(1);
});

test("it is corrected, taken away and brought back from either half, and both keep in step", async () => {
  const { app } = await twoTanks();
  await send(app, "kitchen", MOVE);
  const [half] = await moves(app, "hallway");
  const address = `${entriesOf("hallway")}/${half?.id}`;
  const body = { kind: "move", animal: "trochus-snail", count: 4, from: "kitchen", observed: "2026-06-11" };
  const corrected = await ask(app, "PUT", address, { body, headers: { "if-match": '"1"' } });
  expect(corrected.statusCode, corrected.body).toBe(200);
  expect((await moves(app, "kitchen"))[0]).toMatchObject({
    version: 2,
    on: "2026-06-11",
    body: { count: 4 },
  });
  const stale = await ask(app, "PUT", address, { body, headers: { "if-match": '"1"' } });
  expect(stale.statusCode).toBe(412);
  const [out] = await moves(app, "kitchen");
  const own = `${entriesOf("kitchen")}/${out?.id}`;
  expect((await ask(app, "DELETE", own, { headers: { "if-match": '"2"' } })).statusCode).toBe(200);
  expect((await moves(app, "hallway"))[0]).toMatchObject({ version: 3, kept: false });
  expect([await heads(app, "kitchen"), await heads(app, "hallway")]).toEqual(["5", "0"]);
  const back = await ask(app, "POST", `${own}/bring-back`, { headers: { "if-match": '"3"' } });
  expect(back.statusCode).toBe(200);
  expect([await heads(app, "kitchen"), await heads(app, "hallway")]).toEqual(["1", "4"]);
});

test("what can't be undone or corrected says why, and nothing changes", async () => {
  const { app } = await twoTanks();
  await send(app, "kitchen", MOVE);
  await send(app, "hallway", {
    ...{ kind: "loss", animal: "trochus-snail", count: 2, certainty: "found", observed: "2026-06-12" },
  });
  const [out] = await moves(app, "kitchen");
  const own = `${entriesOf("kitchen")}/${out?.id}`;
  const undone = await ask(app, "DELETE", own, { headers: { "if-match": '"1"' } });
  expect(undone.statusCode).toBe(422);
  expect(problem.parse(undone.json()).detail).toMatch(
    /Hallway would then have 2 more of .*trochus snail gone than came/,
  );
  const elsewhere = { ...MOVE, to: undefined, from: "Hallway" };
  const turned = await ask(app, "PUT", own, { body: elsewhere, headers: { "if-match": '"1"' } });
  expect(turned.statusCode).toBe(422);
  expect((await moves(app, "hallway"))[0]).toMatchObject({ version: 1, kept: true });
});

test("more than there are on its day, and more than are left since, are both asked about", async () => {
  const { app } = await twoTanks();
  const many = await send(app, "kitchen", { ...MOVE, count: 6 });
  expect(problem.parse(many.json()).errors?.[0]).toMatchObject({ pointer: "/count", kind: "CONFLICT" });
  const loss = {
    kind: "loss",
    animal: "trochus-snail",
    count: 4,
    certainty: "found",
    observed: "2026-06-12",
  };
  expect((await send(app, "kitchen", loss)).statusCode).toBe(201);
  const before = await send(app, "kitchen", MOVE);
  expect(before.statusCode).toBe(422);
  expect(problem.parse(before.json()).detail).toMatch(/Kitchen would then have 2 more/);
});

test("the receiving tank's gate asks for a reason; quarantine and medicines are said", async () => {
  const { app } = await twoTanks();
  await send(app, "hallway", { kind: "change", changed: "other", to: "quarantine: 2 clownfish" });
  await send(app, "hallway", {
    kind: "reading",
    quantity: "tan_mg_n_per_l",
    text: 0.5,
    observed: "2026-06-14",
  });
  const shut = await send(app, "kitchen", MOVE);
  const [fault] = problem.parse(shut.json()).errors ?? [];
  expect(fault).toMatchObject({ pointer: "/despite_gate", kind: "CONFLICT" });
  expect(fault?.detail).toMatch(/Hallway: .*mmonia.*Wait, or say why they move all the same/);
  const despite = await send(app, "kitchen", { ...MOVE, despite_gate: "the tank leaks" });
  expect(despite.statusCode, despite.body).toBe(201);
  expect(JSON.stringify(despite.json().said)).toMatch(/holds 2 clownfish in quarantine until/);
  expect((await moves(app, "hallway"))[0]?.body).toMatchObject({ despite_gate: "the tank leaks" });
});

test("a daybook taken out names the other tank by id and name, and brought in again it is the same", async () => {
  const { app, store } = await twoTanks();
  await send(app, "kitchen", MOVE);
  for (const [format, name] of [
    ["csv", "kitchen.csv"],
    ["json", "kitchen.json"],
  ] as const) {
    const file = await ask(app, "GET", `${API_ROOT}/tanks/kitchen/take-out`, { query: { format } });
    expect(file.statusCode, file.body).toBe(200);
    expect(file.body).toMatch(/hallway/);
    expect(file.body).toMatch(/Hallway/);
    const { text } = file.json();
    const again = await ask(app, "POST", `${API_ROOT}/tanks/kitchen/bring-in`, {
      body: { name, text },
    });
    expect(again.statusCode, again.body).toBe(200);
    expect(again.json()).toMatchObject({ added: 0, changed: 0 });
    // Into a tank of another store, where there is no other half: the half that the file tells.
    await store.addTank(
      {
        id: `copy-${format}`,
        keeperId: "ada",
        demonstration: false,
        facts: { grazewell_tank: 1, name: format, water_l: "200 L" },
      },
      stamp,
    );
    const copied = await ask(app, "POST", `${API_ROOT}/tanks/copy-${format}/bring-in`, {
      body: { name, text },
    });
    expect(copied.json(), copied.body).toMatchObject({ added: 1 });
    const bodies = [await moves(app, "kitchen"), await moves(app, `copy-${format}`)].map(
      ([one]) => one?.body,
    );
    expect(bodies[1]).toEqual(bodies[0]);
    expect(await moves(app, "hallway")).toHaveLength(1);
  }
});

test("its page tells the other half; the form keeps what was typed where it can't be", async () => {
  const { app } = await twoTanks();
  const page = (url: string) => app.inject({ method: "GET", url, headers: { host: HOST } });
  const post = (url: string, form: Record<string, string>) =>
    app.inject({
      method: "POST",
      url,
      headers: { host: HOST, "content-type": "application/x-www-form-urlencoded" },
      payload: new URLSearchParams(form).toString(),
    });
  const address = "/tanks/kitchen/daybook/new/move";
  const form = (await page(address)).body;
  expect(form).toMatch(/<option value="hallway">Hallway, kept by Ada \(invented\)<\/option>/);
  expect((await page(`${address}?way=in`)).body).toMatch(/<select[^>]*name="from"/);
  const kept = await post(address, { animal: "trochus snail", count: "3", to: "hallway", observed: "today" });
  expect(kept.statusCode, kept.body.slice(0, 300)).toBe(303);
  expect((await page(String(kept.headers.location))).body).toMatch(
    /3 banded trochus snails moved to Hallway/,
  );
  const [half] = await moves(app, "hallway");
  const shown = (await page(`/tanks/hallway/daybook/entries/${half?.id}`)).body;
  expect(shown).toMatch(/3 banded trochus snails moved here from Kitchen/);
  const [out] = await moves(app, "kitchen");
  expect(shown).toContain(`/tanks/kitchen/daybook/entries/${out?.id}`);
  const undone = await post(`/tanks/hallway/daybook/entries/${half?.id}`, { go: "take_away", version: "1" });
  expect(undone.statusCode).toBe(303);
  expect((await moves(app, "kitchen"))[0]?.kept).toBe(false);
  const none = await post(address, { animal: "trochus snail", count: "9", to: "nowhere", observed: "today" });
  expect(none.statusCode).toBe(422);
  expect(none.body).toMatch(/there is no such tank here/);
  expect(none.body).toMatch(/<option value="nowhere" selected[^>]*>nowhere/);
});
