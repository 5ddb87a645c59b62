/** Bench, round and the wave that has come, driven as a browser without script drives them. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { GATE_WORDS, SIGN_OF_SHELF } from "../../engine/stocking/gates.ts";
import { openStore } from "../../store/open.ts";
import type { Json, Store } from "../../store/store.ts";
import { buildApp } from "../app.ts";
import { readCloser } from "./round-tanks.ts";

const TODAY = "2026-06-15";
const NOW = "2026-06-15T12:00:00.000Z";
const HOST = "127.0.0.1:8420";
const stamp = { at: NOW, by: "Tester" };

const figures = { from: "a", planned_share: "b", shelves: {} };
const animal = (id: string, name: string, count: number) => ({
  ...{ id, name, count, eats: ["film_glass"], binding: { kind: "food", text: "food", figure: null } },
  ...{ cautions: [], only_if: [], spare_shells: 0, figures: { count: "c", spare_shells: null } },
});
/** As much of a tank's answers as these pages read. */
const ANSWERS = {
  larder: { shelves: {}, mouths: [] },
  animals: { animals: [] },
  waves: {
    ...{ kind: "waves", because: [], because_figures: [], look_again_on: null, look_again_figure: null },
    tank: { name: "x", as_of: TODAY, assumed: [], unknown_animals: [], figures: { water: "w", age: "g" } },
    ...{ residents: [], fed_by_hand: [], left_to_hand: [], would_change: [], check: [] },
    waves: [
      {
        ...{ number: 1, from: TODAY, to: "2026-06-28", planned_share: 0.5, figures },
        only_if: [GATE_WORDS.firstTests, SIGN_OF_SHELF.film_glass],
        ...{ sooner_if: GATE_WORDS.open, stop_if: GATE_WORDS.stopGrazers },
        animals: [
          animal("trochus-snail", "trochus snail", 3),
          animal("nassarius-snail", "nassarius snail", 2),
        ],
      },
    ],
  },
} as unknown as TankAnswers;

let app: FastifyInstance;
let store: Store;
let folder: string;
let answers: TankAnswers | null = null;
let ids = 0;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "round-"));
  store = await openStore(join(folder, "store.db"));
  app = buildApp({
    store,
    answers: {
      ready: () => answers,
      of: () => (answers === null ? Promise.reject(new Error("not asked")) : Promise.resolve(answers)),
    },
    built: {
      files: new Map(),
      addresses: new Proxy({}, { get: (_, name) => `/built/${String(name)}` }),
    } as never,
    now: () => new Date(NOW),
    today: () => TODAY,
  });
});
afterAll(async () => {
  await app.close();
  await store.close();
  rmSync(folder, { recursive: true });
});

async function tank(name: string, change: object = {}, keeper = "Tester"): Promise<string> {
  const { id: keeperId } = await store.keeperNamed(keeper, `keeper-${keeper}`, stamp);
  ids += 1;
  const facts = {
    ...{ grazewell_tank: 1, name, water_l: "200 L", first_seawater_on: "2026-01-10" },
    ...{ animals_present: [{ animal: "trochus-snail", count: 5 }], ...change },
  } as unknown as Json;
  return (await store.addTank({ id: `tank-${ids}`, keeperId, demonstration: false, facts }, stamp)).id;
}

const headers = { host: HOST, origin: `http://${HOST}`, "sec-fetch-site": "same-origin" };
const get = (url: string) => app.inject({ url, headers });
const send = (url: string, fields: Readonly<Record<string, string>>) =>
  app.inject({
    ...{ method: "POST", url, payload: new URLSearchParams(fields).toString() },
    headers: { ...headers, "content-type": "application/x-www-form-urlencoded" },
  });
const hidden = (page: string, name: string, after = 0): string =>
  new RegExp(`name="${name}" value="([^"]*)"`).exec(page.slice(after))?.[1] ?? "";
const names = (page: string): string[] =>
  [...page.matchAll(/class="round-tank"[\s\S]*?<a href="[^"]*">([^<]*)</g)].map((found) => found[1] ?? "");

describe("the round", () => {
  let quiet: string;
  beforeAll(async () => {
    quiet = await tank("Alder");
    await tank("Birch", {}, "Nell");
    await tank("Cedar", { trouble: "fish gasping" });
  });

  test("the neediest first, then by name", async () => {
    const page = await get("/round");
    expect(page.statusCode).toBe(200);
    expect(names(page.body)[0]).toBe("Cedar");
    expect(page.body).toContain("Of 3 tanks, you are needed at 1 today.");
  });

  test("a dangerous reading moves its tank up at the next look", async () => {
    const sent = {
      quantity: "temperature_c",
      text: "31.8",
      unit: "C",
      observed: "today",
      once: "k".repeat(22),
    };
    expect((await send(`/tanks/${quiet}/readings`, sent)).statusCode).toBe(303);
    const page = await get("/round");
    expect(names(page.body).slice(0, 2)).toEqual(["Alder", "Cedar"]);
  });

  test("one that is taken away moves it down again", async () => {
    const [row] = await store.entries(quiet, { kind: "reading", limit: 1 });
    await store.correctEntry(row!.id, 1, { on: row!.on, body: row!.body, kept: false }, stamp);
    expect(names((await get("/round")).body)[0]).toBe("Cedar");
  });

  test.each([
    ["keeper=Nell", ["Birch"]],
    ["urgency=today", ["Cedar"]],
    ["words=gasping", ["Cedar"]],
    ["words=alder+tester", ["Alder"]],
    ["sort=name", ["Alder", "Birch", "Cedar"]],
    ["urgency=no-such&sort=no-such&rows=no-such", ["Cedar", "Alder", "Birch"]],
    ["words=nowhere", []],
  ])("%s", async (query, found) => {
    const page = await get(`/round?${query}`);
    expect(names(page.body)).toEqual(found);
    if (found.length === 0) expect(page.body).toContain("No tank fits what you look for.");
  });

  test("what trends, heads, growths and the start-up ask for stands on the round too, once it is read", async () => {
    const young = { first_seawater_on: "2026-05-25", animals_present: [], fish: [] };
    const id = await tank("Willow", young, "Wim");
    const nitrite = {
      ...{ quantity: "no2_mg_per_l", text: "0.5", unit: "mg/L as NO2", observed: "today" },
      once: "n".repeat(22),
    };
    expect((await send(`/tanks/${id}/readings`, nitrite)).statusCode).toBe(303);
    const first = (await get("/round?keeper=Wim")).body;
    expect(first).toContain("are still being read: look again in a minute. Dangers stand here already.");
    expect(first).not.toContain("Keep things as they are.");
    await readCloser(store, [id], TODAY);
    const then = (await get("/round?keeper=Wim")).body;
    expect(then).toContain("Wait for nitrite to go.");
    expect(then).toContain("This week");
    const row = (await store.tank(id))!;
    await store.setKept(id, row.version, false, stamp);
  });

  test("a tank whose answers can't be read is listed, and says so", async () => {
    const broken = await tank("Damson", { water_l: "no amount" });
    expect((await get("/round?words=damson")).body).toContain("can't be read");
    await store.setKept(broken, 1, false, stamp);
    expect(names((await get("/round?words=damson")).body)).toEqual([]);
  });
});

describe("declining", () => {
  const adviceIn = (page: string) => ({
    advice: hidden(page, "advice"),
    rests: hidden(page, "rests"),
    once: hidden(page, "once"),
  });

  test("needs a reason, is kept with it, and can be brought up again", async () => {
    const id = await tank("Elm", { trouble: "one snail missing" });
    const form = adviceIn((await get(`/tanks/${id}`)).body);
    expect(form.advice).toBe("trouble");
    const empty = await send(`/tanks/${id}/decline`, { ...form, "reason.0": " " });
    expect(empty.statusCode).toBe(422);
    expect(empty.body).toContain("nothing entered");
    const kept = { ...form, "reason.0": "It hides every day" };
    for (let i = 0; i < 2; i += 1) {
      expect((await send(`/tanks/${id}/decline`, kept)).statusCode).toBe(303);
    }
    const entries = await store.entries(id, { kind: "decline", limit: 9 });
    expect(entries).toMatchObject([{ body: { advice: "trouble", rests_on: "one snail missing" } }]);
    const page = (await get(`/tanks/${id}`)).body;
    expect(page).toContain("It hides every day");
    expect(adviceIn(page).advice).not.toBe("trouble");
    // On the round a danger is put off, not away.
    expect((await get("/round?words=elm")).body).toMatch(/Declined on 15\s?Jun\s?2026: It hides every day\./);
    const back = { go: "bring_back", entry: entries[0]!.id };
    expect((await send(`/tanks/${id}/decline`, back)).statusCode).toBe(303);
    expect(adviceIn((await get(`/tanks/${id}`)).body).advice).toBe("trouble");
  });

  test("what has changed since the page was drawn is not declined unseen", async () => {
    const id = await tank("Fir", { trouble: "gasping" });
    const form = adviceIn((await get(`/tanks/${id}`)).body);
    const row = (await store.tank(id))!;
    await store.saveFacts(id, 1, { ...row.facts, trouble: "two fish dead" }, stamp);
    const sent = await send(`/tanks/${id}/decline`, { ...form, "reason.0": "It is nothing" });
    expect(sent.statusCode).toBe(409);
    expect(await store.entries(id, { kind: "decline", limit: 9 })).toEqual([]);
  });
});

test("before the plan is known, what the daybook asks for is all on the bench", async () => {
  const id = await tank("Rowan", { sightings: { hair_algae: "covered" } });
  const page = (await get(`/tanks/${id}`)).body;
  expect(page).toContain("The plan is being worked out");
  expect(page.slice(page.indexOf("What is due already"))).toContain("Likeliest cause");
});

describe("a wave that has come", () => {
  beforeAll(() => {
    answers = ANSWERS;
  });
  afterAll(() => {
    answers = null;
  });
  const added = async (id: string) =>
    (await store.entries(id, { kind: "addition", limit: 9 })).map(({ body }) => [
      body["animal"],
      body["count"],
      body["wave"],
      body["despite_gate"],
    ]);
  const test1 = (quantity: string, days: number) => ({
    ...{ id: `reading-${quantity}-${days}-${ids}`, kind: "reading", on: `2026-06-${15 - days}` },
    body: {
      ...{ quantity, text: "0", kit_step: null, observed_text: "", observed_at: null },
      ...{ value: { low: 0, central: 0, high: 0 }, censored: null, flag: null, said: null, note: null },
    },
  });
  const met = async (id: string) => {
    const tests = ["tan_mg_n_per_l", "no2_mg_per_l"].flatMap((one) => [test1(one, 5), test1(one, 1)]);
    const film = {
      ...{ id: `film-${ids}`, kind: "chore", on: "2026-06-13" },
      body: {
        ...{ observed_text: "", observed_at: null, note: null, chore: "glass_wiped" },
        ...{ amount_text: null, share: null, film_days: 4 },
      },
    };
    await store.addEntries(id, [...tests, film], stamp);
  };

  test("I-166: a gate that is not logged asks; waiting is the way out, a reason lets it through and is kept", async () => {
    const id = await tank("Gorse");
    const address = `/tanks/${id}/waves/1`;
    const page = (await get(address)).body;
    expect(page).toContain("Wait, and go back to the waves");
    const form = { once: hidden(page, "once"), "count.trochus-snail": "3", "count.nassarius-snail": "2" };
    const asked = await send(address, form);
    expect(asked.statusCode).toBe(422);
    expect(asked.body).toContain("not logged. Wait, or say why you add them anyway");
    expect(await added(id)).toEqual([]);
    const despite = { ...form, "count.nassarius-snail": "0", despite_gate: "They are here already" };
    expect((await send(address, despite)).statusCode).toBe(303);
    expect(await added(id)).toEqual([["trochus-snail", 3, 1, "They are here already"]]);
  });

  test("I-167: accepted twice, it is one wave, also with other numbers typed", async () => {
    const id = await tank("Hazel");
    await met(id);
    const address = `/tanks/${id}/waves/1`;
    const page = (await get(address)).body;
    expect(page).not.toContain("Wait, and go back to the waves");
    const form = { once: hidden(page, "once"), "count.trochus-snail": "3", "count.nassarius-snail": "2" };
    const replies = await Promise.all([send(address, form), send(address, form)]);
    expect(replies.map(({ statusCode }) => statusCode)).toEqual([303, 303]);
    expect((await send(address, { ...form, "count.trochus-snail": "9" })).statusCode).toBe(303);
    expect((await added(id)).toSorted()).toEqual([
      ["nassarius-snail", 2, 1, null],
      ["trochus-snail", 3, 1, null],
    ]);
  });

  test("an order adds nothing; what then arrives takes its place, dead ones and strays with it", async () => {
    const id = await tank("Sorrel");
    await met(id);
    const order = `/tanks/${id}/waves/1/order`;
    const form = {
      once: hidden((await get(order)).body, "once"),
      ...{
        "count.trochus-snail": "3",
        "count.nassarius-snail": "0",
        expected: "2026-06-20",
        from: "Mill Lane",
      },
    };
    const replies = await Promise.all([send(order, form), send(order, form)]);
    expect(replies.map(({ statusCode }) => statusCode)).toEqual([303, 303]);
    const orders = await store.entries(id, { kind: "order", limit: 9 });
    expect(orders.map(({ body }) => [body["animal"], body["count"], body["expected"]])).toEqual([
      ["trochus-snail", 3, "2026-06-20"],
    ]);
    expect(await added(id)).toEqual([]);
    expect((await get(order)).body).toContain("On order: 3.");
    const arrival = `/tanks/${id}/waves/1`;
    const page = (await get(arrival)).body;
    expect(page).toContain("On order: 3.");
    const came = { once: hidden(page, "once"), "count.trochus-snail": "2", "dead.trochus-snail": "1" };
    expect((await send(arrival, { ...came, "count.nassarius-snail": "0" })).statusCode).toBe(303);
    expect(await added(id)).toEqual([["trochus-snail", 2, 1, null]]);
    const [addition] = await store.entries(id, { kind: "addition", limit: 1 });
    expect(addition?.body["dead_on_arrival"]).toBe(1);
    expect((await get(order)).body).not.toContain("On order");
  });

  test("an order behind a gate that is not met takes a reason, as an arrival does", async () => {
    const id = await tank("Tansy");
    const order = `/tanks/${id}/waves/1/order`;
    const form = { once: hidden((await get(order)).body, "once"), "count.trochus-snail": "3" };
    const asked = await send(order, form);
    expect(asked.statusCode).toBe(422);
    expect(asked.body).toContain("Wait, or say why you order anyway");
    expect(await store.entries(id, { kind: "order", limit: 9 })).toEqual([]);
  });

  test("a count that can't be read adds nothing of the wave", async () => {
    const id = await tank("Ivy");
    await met(id);
    const address = `/tanks/${id}/waves/1`;
    const once = hidden((await get(address)).body, "once");
    const sent = await send(address, { once, "count.trochus-snail": "3", "count.nassarius-snail": "some" });
    expect(sent.statusCode).toBe(422);
    expect(sent.body).toContain('href="#count.nassarius-snail"');
    expect(await added(id)).toEqual([]);
  });

  test("there is no second wave to accept before the first has come", async () => {
    const id = await tank("Juniper");
    expect((await get(`/tanks/${id}/waves/2`)).statusCode).toBe(404);
  });
});
