/**
 * Rows of the inputs catalogue (checks/inputs/rows.json) at the door of the API: what is kept and what is asked about
 * must be as at every other door. Rows of a door that is not built yet are listed in the contract's own test.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { describe, expect, test } from "vitest";
import { EXAMPLE, EXAMPLE_FACTS } from "../../src/contract/http/examples.ts";
import { nitrateToN } from "../../src/engine/units/nutrients.ts";
import { LIMITS } from "../../src/server/limits.ts";
import { loadTank } from "../../src/server/load-tank.ts";
import { appUnderTest, ask } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";

interface Row {
  readonly id: string;
  readonly input: string;
  readonly verdict: "accept" | "convert" | "flag" | "ask" | "refuse" | "ignore";
  readonly kind: string | null;
}
const rows = JSON.parse(readFileSync(join(import.meta.dirname, "../inputs/rows.json"), "utf8")) as Row[];
const row = (id: string): Row => {
  const found = rows.find((one) => one.id === id);
  if (found === undefined) throw new Error(`No row ${id}`);
  return found;
};

const TANK = `/api/v1/tanks/${EXAMPLE.tank}`;
const READINGS = `${TANK}/readings`;
const READING = `${READINGS}/${EXAMPLE.reading}`;

async function kitchen() {
  const under = await appUnderTest();
  await fillWithExamples(under.store);
  return under;
}

const keptReadings = async (app: FastifyInstance): Promise<number> =>
  (await ask(app, "GET", READINGS)).json().readings.length;

describe("a body that can't be a reading", () => {
  test.each([
    ["I-152", "/value"],
    ["I-153", "/admin"],
    ["I-154", "/value"],
    ["I-155", "/value"],
    ["I-156", "/__proto__"],
  ])("%s is refused at %s", async (id, pointer) => {
    const { app } = await kitchen();
    const before = await keptReadings(app);
    const answer = await ask(app, "POST", READINGS, { body: row(id).input });
    expect(answer.statusCode).toBe(400);
    expect(answer.headers["content-type"]).toContain("application/problem+json");
    const { errors } = answer.json();
    expect(errors.find((one: { pointer: string }) => one.pointer === pointer)).toMatchObject({
      kind: row(id).kind,
    });
    expect(({} as Record<string, unknown>)["x"]).toBeUndefined();
    expect(await keptReadings(app)).toBe(before);
  });

  test("the field is named, what was typed repeated, what is known listed", async () => {
    const { app } = await kitchen();
    const { errors } = (await ask(app, "POST", READINGS, { body: row("I-153").input })).json();
    const unknown = errors.find((one: { pointer: string }) => one.pointer === "/admin");
    expect(unknown.detail).toContain('"admin": unknown field');
    expect(unknown.allowed).toContain("quantity");
    const { detail } = (await ask(app, "POST", READINGS, { body: row("I-155").input })).json();
    expect(detail).toContain("given twice");
  });
});

describe("a request that comes twice", () => {
  const body = { quantity: "no3_mg_per_l", value: 10, observed: "2026-06-14" };
  const headers = { "idempotency-key": "3f6c0a52" };

  test("I-157: the same answer, one row", async () => {
    const { app } = await kitchen();
    const before = await keptReadings(app);
    const first = await ask(app, "POST", READINGS, { body, headers });
    const again = await ask(app, "POST", READINGS, { body, headers });
    expect(first.statusCode).toBe(201);
    expect([again.statusCode, again.body, again.headers.location, again.headers.etag]).toEqual([
      first.statusCode,
      first.body,
      first.headers.location,
      first.headers.etag,
    ]);
    expect(await keptReadings(app)).toBe(before + 1);
  });

  test("I-157: ten at once make one row", async () => {
    const { app } = await kitchen();
    const before = await keptReadings(app);
    const all = await Promise.all(
      Array.from({ length: 10 }, () => ask(app, "POST", READINGS, { body, headers })),
    );
    expect(new Set(all.map((one) => one.body)).size).toBe(1);
    expect(await keptReadings(app)).toBe(before + 1);
  });

  test("I-158: the same key with another body", async () => {
    const { app } = await kitchen();
    await ask(app, "POST", READINGS, { body, headers });
    const other = await ask(app, "POST", READINGS, { body: { ...body, value: 11 }, headers });
    expect([other.statusCode, other.json().kind]).toEqual([409, row("I-158").kind]);
  });

  test("without a key both are kept: two equal readings are two readings", async () => {
    const { app } = await kitchen();
    const before = await keptReadings(app);
    await ask(app, "POST", READINGS, { body });
    await ask(app, "POST", READINGS, { body });
    expect(await keptReadings(app)).toBe(before + 2);
  });
});

test("I-159: a tank taken away and one that never was answer the same", async () => {
  const { app } = await kitchen();
  const unknown = await ask(app, "GET", "/api/v1/tanks/0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c9999");
  const gone = await ask(app, "GET", `/api/v1/tanks/${EXAMPLE.goneTank}`);
  expect([gone.statusCode, gone.body, gone.headers]).toEqual([404, unknown.body, unknown.headers]);
  expect(unknown.json().kind).toBe(row("I-159").kind);
});

test("I-160: the 121st change in a minute waits, and passes once it has", async () => {
  const { app, wait } = await kitchen();
  const change = () => ask(app, "POST", READINGS, { body: { quantity: "ph", value: 8.1 } });
  for (let i = 0; i < LIMITS.writesPerMinute; i += 1) {
    if (i === 40) wait(20);
    expect((await change()).statusCode).toBe(201);
  }
  const refused = await change();
  expect([refused.statusCode, refused.headers["retry-after"], refused.json().kind]).toEqual([
    429,
    "40",
    "RATE",
  ]);
  expect(refused.json().detail).toContain("Wait 40 seconds");
  expect((await ask(app, "GET", READINGS)).statusCode).toBe(200);
  expect((await ask(app, "POST", "/api/v1/check", { body: EXAMPLE_FACTS })).statusCode).toBe(200);
  wait(40);
  expect((await change()).statusCode).toBe(201);
});

describe("two who change the same", () => {
  const correct = (app: FastifyInstance, value: number, version: number) =>
    ask(app, "PUT", READING, {
      body: { quantity: "no3_mg_per_l", value, observed: "2026-06-10" },
      headers: { "if-match": `"${version}"` },
    });

  test("I-162: the later is told of the earlier, with both to choose from", async () => {
    const { app, wait } = await kitchen();
    expect((await correct(app, 15, 1)).statusCode).toBe(200);
    wait(120);
    const late = await correct(app, 20, 1);
    const told = late.json();
    expect([late.statusCode, told.kind]).toEqual([412, row("I-162").kind]);
    expect(told.detail).toBe(
      "Changed 2 minutes ago to 15 mg/L as NO3. Keep 15 mg/L as NO3, or save 20 mg/L as NO3?",
    );
    expect(told.choices).toHaveLength(2);
    expect(told.current).toMatchObject({ version: 2, text: "15 mg/L as NO3" });
    expect((await correct(app, 20, told.current.version)).statusCode).toBe(200);
  });

  test("I-162: of ten at once one is kept", async () => {
    const { app } = await kitchen();
    const all = await Promise.all(Array.from({ length: 10 }, (_, i) => correct(app, 11 + i, 1)));
    const ended = all.map(({ statusCode }) => statusCode).sort();
    expect(ended).toEqual([200, ...Array.from({ length: 9 }, () => 412)]);
  });

  test("I-163: a correction is a new version, the tank is read with it, the old one stays", async () => {
    const { app, store } = await kitchen();
    expect((await correct(app, 25, 1)).statusCode).toBe(200);
    const tank = await loadTank(store, EXAMPLE.tank, EXAMPLE.today);
    const nitrate = tank?.facts.readings.filter(({ quantity }) => quantity === "no3_mg_n_per_l");
    expect(nitrate?.map(({ value }) => value.central)).toEqual([expect.closeTo(nitrateToN(25), 6)]);
    const { versions } = (await ask(app, "GET", `${READING}/history`)).json();
    expect(versions.map(({ text }: { text: string }) => text)).toEqual(["10 mg/L as NO3", "25 mg/L as NO3"]);
  });

  test("I-164: a tank goes by its own name alone", async () => {
    const { app } = await kitchen();
    const take = (name: string) =>
      ask(app, "DELETE", TANK, { query: { name }, headers: { "if-match": '"1"' } });
    const wrong = await take("kitchen");
    expect([wrong.statusCode, wrong.json().kind]).toEqual([422, row("I-164").kind]);
    expect(wrong.json().errors[0]).toMatchObject({ pointer: "/name", typed: "kitchen" });
    expect((await ask(app, "GET", TANK)).statusCode).toBe(200);
    expect((await take(EXAMPLE_FACTS.name)).statusCode).toBe(200);
    expect((await ask(app, "GET", TANK)).statusCode).toBe(404);
  });

  test("no change goes through without its version", async () => {
    const { app } = await kitchen();
    expect((await ask(app, "DELETE", READING)).statusCode).toBe(428);
    expect((await ask(app, "DELETE", READING, { headers: { "if-match": "*" } })).statusCode).toBe(400);
  });
});

const PSU = { quantity: "salinity_psu", unit: "psu" };
const CELSIUS = { quantity: "temperature_c", unit: "C" };
const DKH = { quantity: "alkalinity_dkh", unit: "dKH" };
const NO3 = { quantity: "no3_mg_per_l", unit: "mg/L as NO3" };
const PO4 = { quantity: "po4_mg_per_l", unit: "mg/L as PO4" };
const several = (ids: readonly number[], sent: Readonly<Record<string, string>>) =>
  ids.map((n): [string, Readonly<Record<string, string>>] => [`I-${String(n).padStart(3, "0")}`, sent]);

/** Row → the rest of the reading it is the text of. */
const AS_READING: readonly [string, Readonly<Record<string, string>>][] = [
  ...several([22, 23, 29, 31, 32, 33, 34, 35], PSU),
  ...several([24], { ...PSU, unit: "sg 25/25" }),
  ...several([25], { ...PSU, unit: "sg 20/20" }),
  ...several([26, 27], { ...PSU, unit: "sg" }),
  ...several([28], { ...PSU, unit: "mS/cm" }),
  ...several([30], { quantity: "salinity_psu" }),
  ...several([36, 37, 39, 40, 41], CELSIUS),
  ...several([38], { ...CELSIUS, unit: "F" }),
  ...several([42, 43, 44], { quantity: "ph" }),
  ...several([45, 47, 48, 49, 51], DKH),
  ...several([46], { ...DKH, unit: "meq/L" }),
  ...several([50], { quantity: "alkalinity_dkh" }),
  ...several([52, 53], { quantity: "calcium_mg_per_l", unit: "mg/L" }),
  ...several([54], { quantity: "magnesium_mg_per_l", unit: "mg/L" }),
  ...several([55, 57, 59, 60, 61, 62, 63, 64], NO3),
  ...several([58], { ...NO3, kit_step: "2" }),
  ...several([56], { quantity: "no3_mg_per_l" }),
  ...several([65, 66, 67, 68, 69, 70, 71], PO4),
  ...several([72], { quantity: "tan_mg_n_per_l", unit: "mg/L as N" }),
  ...several([73], { quantity: "tan_mg_n_per_l" }),
  ...several([74], { quantity: "no2_mg_per_l", unit: "mg/L as NO2" }),
];

describe("texts of readings", () => {
  test.each(AS_READING)("%s as %o", async (id, rest) => {
    const { app } = await kitchen();
    const answer = await ask(app, "POST", READINGS, { body: { ...rest, text: row(id).input } });
    expectVerdict(answer, row(id), "/text");
  });

  test.each(several([104, 105, 108, 110, 111, 112, 115, 116, 117], { ...NO3, text: "10" }))(
    "%s as the day of a reading",
    async (id, rest) => {
      const { app, store } = await appUnderTest();
      await fillWithExamples(store);
      const old = { ...EXAMPLE_FACTS, first_seawater_on: "2020-01-10" };
      await ask(app, "PUT", TANK, { body: { facts: old }, headers: { "if-match": '"1"' } });
      const answer = await ask(app, "POST", READINGS, { body: { ...rest, observed: row(id).input } });
      expectVerdict(answer, row(id), "/observed");
    },
  );
});

test("a name without a value is kept as one left out, and its pages open", async () => {
  const { app } = await appUnderTest();
  const facts = {
    grazewell_tank: 1,
    water_l: "200 L",
    fish: null,
    animals_present: null,
    rock: { start: null },
  };
  const { tank } = (await ask(app, "POST", "/api/v1/tanks", { body: { keeper: "Ada", facts } })).json();
  expect(tank.facts).toEqual({ grazewell_tank: 1, water_l: "200 L", rock: {} });
  expect((await ask(app, "GET", `/tanks/${tank.id}/form`)).statusCode).toBe(200);
});

describe("texts of a tank's facts", () => {
  type Place = readonly [pointer: string, facts: (text: string) => Readonly<Record<string, unknown>>];
  const water: Place = ["/facts/water_l", (text) => ({ water_l: text })];
  const inGerman: Place = ["/facts/water_l", (text) => ({ water_l: text, preferences: { locale: "de-DE" } })];
  const name: Place = ["/facts/name", (text) => ({ name: text, water_l: "200 L" })];
  const note: Place = ["/facts/note", (text) => ({ note: text, water_l: "200 L" })];
  const animal: Place = [
    "/facts/animals_present/0/animal",
    (text) => ({ water_l: "200 L", animals_present: [{ animal: text, count: 1 }] }),
  ];
  const ids = (place: Place, ...numbers: number[]) =>
    numbers.map((n): [string, Place] => [`I-${String(n).padStart(3, "0")}`, place]);

  test.each([
    ...ids(water, 1, 2, 3, 4, 6, 8, 10, 11, 12, 13, 14, 15, 16),
    ...ids(inGerman, 7, 9),
    ...ids(note, 120),
    ...ids(name, 121, 122, 123, 124, 125, 126),
    ...ids(animal, 84, 86, 87),
  ])("%s", async (id, [pointer, facts]) => {
    const { app } = await appUnderTest();
    const sent = { grazewell_tank: 1, preferences: { locale: "en-GB" }, ...facts(row(id).input) };
    const answer = await ask(app, "POST", "/api/v1/tanks", { body: { keeper: "Ada", facts: sent } });
    expectVerdict(answer, row(id), pointer);
    if (answer.statusCode === 201) expect(answer.json().tank.facts).toEqual(sent);
  });
});

/** Kept with 201, or asked about with 422, the place named and what was typed repeated. */
function expectVerdict(
  answer: { readonly statusCode: number; readonly body: string; json: () => unknown },
  { verdict, kind }: Row,
  pointer: string,
): void {
  const kept = verdict === "accept" || verdict === "convert" || verdict === "flag";
  expect(answer.statusCode, answer.body).toBe(kept ? 201 : 422);
  if (kept) return;
  const { errors } = answer.json() as {
    readonly errors: readonly {
      pointer: string;
      kind: string;
      choices: readonly unknown[];
      detail: string;
    }[];
  };
  const told = errors.find((one) => one.pointer === pointer);
  expect(told?.kind, answer.body).toBe(kind);
  if (verdict === "ask") expect(told?.choices.length, answer.body).toBeGreaterThan(0);
}
