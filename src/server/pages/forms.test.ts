/**
 * The forms, driven as a browser without script drives them: rows of the inputs catalogue that a form can carry, the
 * same answers by both ways, what happens when two write, and nothing lost when something can't be read.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type FormApp, formApp } from "../../../checks/kit/form-app.ts";
import type { ReadingBody } from "../../contract/daybook/reading.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Json } from "../../store/store.ts";

interface Row {
  readonly id: string;
  readonly input: string;
  readonly verdict: string;
  readonly kind: string | null;
}
const rows = JSON.parse(
  readFileSync(join(import.meta.dirname, "../../../checks/inputs/rows.json"), "utf8"),
) as readonly Row[];
const row = (id: string): Row => rows.find((one) => one.id === id)!;

const TODAY = "2026-06-15";
const NOW = "2026-06-15T12:00:00.000Z";
const HOST = "127.0.0.1:8420";
const stamp = { at: NOW, by: "Tester" };

let app: FormApp["app"];
let store: FormApp["store"];
let close: FormApp["close"];
let ids = 0;
let now = NOW;

beforeAll(async () => {
  ({ app, store, close } = await formApp(() => now));
});
afterAll(() => close());

const KITCHEN: TankFile = {
  grazewell_tank: 1,
  name: "Kitchen",
  preferences: { locale: "en-GB" },
  water_l: "200 L",
  first_seawater_on: "2026-01-10",
};

async function tank(change: Partial<TankFile> = {}): Promise<string> {
  const keeper = await store.keeperNamed("Tester", "keeper-tester", stamp);
  ids += 1;
  const facts = { ...KITCHEN, ...change } as unknown as Json;
  const added = await store.addTank(
    { id: `tank-${ids}`, keeperId: keeper.id, demonstration: false, facts },
    stamp,
  );
  return added.id;
}

type Fields = Readonly<Record<string, string>>;

async function send(path: string, fields: Fields) {
  ids += 1;
  return await app.inject({
    method: "POST",
    url: path,
    headers: {
      host: HOST,
      origin: `http://${HOST}`,
      "content-type": "application/x-www-form-urlencoded",
    },
    // Each request from another place, so that the limit of writes is not what is tried here.
    remoteAddress: `127.0.${Math.floor(ids / 250) % 250}.${(ids % 250) + 1}`,
    payload: new URLSearchParams(fields).toString(),
  });
}
const look = async (path: string) => await app.inject({ method: "GET", url: path, headers: { host: HOST } });

const file = async (id: string): Promise<TankFile> => (await store.tank(id))?.facts as unknown as TankFile;
const readings = async (id: string): Promise<readonly ReadingBody[]> =>
  (await store.entries(id, { kind: "reading", limit: 100 })).map(
    ({ body }) => body as unknown as ReadingBody,
  );

/** Text as it stands in a page. */
const inPage = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");

const KEPT = ["accept", "convert", "flag"];

/** Sends a row's input; says whether it was kept, and that a page which refuses it holds all that was typed. */
async function judge(id: string, path: string, fields: Fields) {
  const answer = await send(path, fields);
  const { verdict } = row(id);
  expect(
    answer.statusCode,
    answer.body.slice(answer.body.indexOf("error-summary"), answer.body.indexOf("error-summary") + 600),
  ).toBe(KEPT.includes(verdict) ? 303 : 422);
  if (!KEPT.includes(verdict)) {
    expect(answer.body).toContain("<title>Error: ");
    expect(answer.body).toContain("error-summary");
    for (const [name, value] of Object.entries(fields))
      if (name === "water" || name === "sides" || name === "text" || name === "observed" || name === "name")
        expect(answer.body, `what was typed into ${name}`).toContain(inPage(value.trim()).slice(0, 500));
    if (verdict === "ask") expect(answer.body, "readings to choose from").toMatch(/name="fix\./);
  }
  return answer;
}

describe("the water, question 1", () => {
  const us = { preferences: { locale: "en-GB", gallon: "us" as const } };
  const german = { preferences: { locale: "de-DE" } };
  test.each<[string, Fields, Partial<TankFile>, string | undefined]>([
    ["I-001", {}, {}, "200 L"],
    ["I-002", {}, {}, "200 l"],
    ["I-003", {}, {}, "200 L"],
    ["I-004", {}, {}, undefined],
    ["I-005", {}, us, "55 gal"],
    ["I-006", {}, {}, "55 imp gal"],
    ["I-007", {}, german, "180,5 L"],
    ["I-008", {}, {}, undefined],
    ["I-009", {}, german, "1.200,5 L"],
    ["I-010", {}, {}, undefined],
    ["I-011", {}, {}, undefined],
    ["I-012", {}, {}, undefined],
    ["I-013", {}, {}, "about 200 L"],
    ["I-014", {}, {}, "180-220 L"],
    ["I-015", {}, {}, undefined],
    ["I-016", {}, {}, "4 L"],
  ])("%s", async (id, more, change, stored) => {
    const kitchen = await tank({ ...change, water_l: "90 L" });
    await judge(id, `/tanks/${kitchen}/questions/1`, {
      version: "1",
      water: row(id).input,
      water_unit: "L",
      sides: "",
      sides_unit: "cm",
      ...more,
    });
    expect((await file(kitchen)).water_l).toBe(stored ?? "90 L");
  });

  test.each([
    ["I-017", "cm", "120x60x50 cm"],
    ["I-019", "cm", "36×18×18 in"],
    ["I-020", "cm", undefined],
  ])("%s: three sides", async (id, unit, stored) => {
    const kitchen = await tank();
    await judge(id, `/tanks/${kitchen}/questions/1`, {
      version: "1",
      water: "",
      sides: row(id).input,
      sides_unit: unit,
    });
    expect((await file(kitchen)).display_sides_cm).toBe(stored);
  });

  test("I-021: more water than the sides hold", async () => {
    const kitchen = await tank();
    const [water = "", sides = ""] = row("I-021").input.split(" | ");
    const answer = await send(`/tanks/${kitchen}/questions/1`, {
      version: "1",
      water,
      water_unit: "L",
      sides,
    });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain("at most 360 L");
  });

  test("a reading on offer is a button, and picking it is kept", async () => {
    const kitchen = await tank({ water_l: "90 L" });
    const typed = { version: "1", water: "1,200", water_unit: "L" };
    const asked = await send(`/tanks/${kitchen}/questions/1`, typed);
    const fix = /name="fix\.water" value="([^"]+)"/.exec(asked.body)?.[1] ?? "";
    const picked = await send(`/tanks/${kitchen}/questions/1`, { ...typed, "fix.water": fix });
    expect(picked.statusCode).toBe(303);
    expect((await file(kitchen)).water_l).toBe(fix);
  });
});

const NO3 = "mg/L as NO3";
const PO4 = "mg/L as PO4";
/** Row → quantity, unit chosen beside the field, and what else is sent. */
const READING_ROWS: readonly (readonly [string, string, string, Fields?])[] = [
  ["I-022", "salinity_psu", "psu"],
  ["I-023", "salinity_psu", "psu"],
  ["I-024", "salinity_psu", "sg 25/25"],
  ["I-025", "salinity_psu", "sg 20/20"],
  ["I-026", "salinity_psu", "sg"],
  ["I-027", "salinity_psu", "sg"],
  ["I-028", "salinity_psu", "mS/cm"],
  ["I-029", "salinity_psu", "psu"],
  ["I-030", "salinity_psu", ""],
  ["I-031", "salinity_psu", "psu"],
  ["I-032", "salinity_psu", "psu"],
  ["I-034", "salinity_psu", "psu"],
  ["I-035", "salinity_psu", "psu"],
  ["I-036", "temperature_c", "C"],
  ["I-037", "temperature_c", "C"],
  ["I-038", "temperature_c", "F"],
  ["I-040", "temperature_c", "C"],
  ["I-041", "temperature_c", "C"],
  ["I-042", "ph", ""],
  ["I-043", "ph", ""],
  ["I-044", "ph", ""],
  ["I-045", "alkalinity_dkh", "dKH"],
  ["I-046", "alkalinity_dkh", "meq/L"],
  ["I-047", "alkalinity_dkh", "dKH"],
  ["I-048", "alkalinity_dkh", "mg/L as CaCO3"],
  ["I-049", "alkalinity_dkh", "dKH"],
  ["I-050", "alkalinity_dkh", ""],
  ["I-051", "alkalinity_dkh", "dKH"],
  ["I-052", "calcium_mg_per_l", "mg/L"],
  ["I-053", "calcium_mg_per_l", "mg/L"],
  ["I-054", "magnesium_mg_per_l", "mg/L"],
  ["I-055", "no3_mg_per_l", NO3],
  ["I-056", "no3_mg_per_l", ""],
  ["I-057", "no3_mg_per_l", NO3],
  ["I-058", "no3_mg_per_l", NO3, { kit_step: "2" }],
  ["I-059", "no3_mg_per_l", NO3],
  ["I-060", "no3_mg_per_l", NO3],
  ["I-061", "no3_mg_per_l", NO3],
  ["I-062", "no3_mg_per_l", NO3, { kit_step: "2" }],
  ["I-063", "no3_mg_per_l", NO3],
  ["I-064", "no3_mg_per_l", NO3],
  ["I-065", "po4_mg_per_l", PO4],
  ["I-066", "po4_mg_per_l", PO4],
  ["I-067", "po4_mg_per_l", PO4],
  ["I-068", "po4_mg_per_l", PO4],
  ["I-069", "po4_mg_per_l", PO4],
  ["I-070", "po4_mg_per_l", PO4],
  ["I-071", "po4_mg_per_l", PO4],
  ["I-072", "tan_mg_n_per_l", "mg/L as N"],
  ["I-073", "tan_mg_n_per_l", ""],
  ["I-074", "no2_mg_per_l", "mg/L as NO2"],
];

describe("a reading", () => {
  test.each(READING_ROWS.map(([id, quantity, unit, more]) => ({ id, quantity, unit, more })))(
    "$id",
    async ({ id, quantity, unit, more }) => {
      const kitchen = await tank({ animals_present: [{ animal: "trochus snail", count: 3 }] });
      const { input, verdict, kind } = row(id);
      const fields = { quantity, text: input, unit, observed: "today", once: `once-${id}-0001`, ...more };
      const answer = await judge(id, `/tanks/${kitchen}/readings`, fields);
      const kept = await readings(kitchen);
      expect(kept).toHaveLength(KEPT.includes(verdict) ? 1 : 0);
      const [body] = kept;
      if (body === undefined) return;
      expect(body.text).toContain(input.trim());
      expect(body.flag).toBe(verdict !== "flag" ? null : kind === "DANGER" ? "danger" : "unusual");
      const page = await look(answer.headers.location ?? "");
      expect(page.statusCode).toBe(200);
      // As typed, a temperature's letter with its sign.
      expect(page.body).toContain(inPage(body.text.replace(/ ([CF])$/, " °$1")));
      if (body.flag === "danger") expect(page.body).toContain('<p class="notice-title">Danger</p>');
    },
  );

  test("I-033: fresh water is not kept, and asked about", async () => {
    const kitchen = await tank();
    const fields = { quantity: "salinity_psu", text: "0", unit: "psu" };
    expect((await send(`/tanks/${kitchen}/readings`, fields)).statusCode).toBe(422);
    expect(await readings(kitchen)).toEqual([]);
  });

  test.each<[string, TankFile["preferences"], string | null]>([
    ["I-104", {}, "2026-06-14"],
    ["I-105", {}, "2026-06-14"],
    ["I-106", { dates: "dmy" as const }, "2026-04-03"],
    ["I-107", {}, null],
    ["I-108", {}, null],
    ["I-109", {}, null],
    ["I-110", {}, "2026-06-15"],
    ["I-111", {}, "2026-06-15"],
    ["I-112", {}, null],
    ["I-115", {}, null],
    ["I-116", {}, "2024-02-29"],
    ["I-117", {}, null],
  ])("%s: when", async (id, preferences, on) => {
    const kitchen = await tank({
      first_seawater_on: "2023-01-10",
      preferences: { locale: "en-GB", ...preferences },
    });
    const fields = { quantity: "ph", text: "8.1", observed: row(id).input, once: `once-${id}-0001` };
    await judge(id, `/tanks/${kitchen}/readings`, fields);
    const kept = await store.entries(kitchen, { kind: "reading", limit: 9 });
    expect(kept.map((one) => one.on)).toEqual(on === null ? [] : [on]);
  });

  test.each(["I-120", "I-127"])("%s: a note", async (id) => {
    const kitchen = await tank();
    const note = id === "I-127" ? "x".repeat(100_001) : row(id).input;
    await judge(id, `/tanks/${kitchen}/readings`, {
      quantity: "ph",
      text: "8.1",
      note,
      once: `once-${id}-0001`,
    });
    expect((await readings(kitchen)).map((one) => one.note)).toEqual(id === "I-120" ? [note] : []);
  });

  test("the same form sent twice adds one row; with another figure, another", async () => {
    const kitchen = await tank();
    const fields = { quantity: "ph", text: "8.1", observed: "today", once: "once-twice-0001" };
    const [first, second] = [
      await send(`/tanks/${kitchen}/readings`, fields),
      await send(`/tanks/${kitchen}/readings`, fields),
    ];
    expect(second.headers.location).toBe(first.headers.location);
    expect(await readings(kitchen)).toHaveLength(1);
    await send(`/tanks/${kitchen}/readings`, { ...fields, text: "8.2" });
    expect(await readings(kitchen)).toHaveLength(2);
    // The same words an hour later are meant.
    now = "2026-06-15T13:00:00.000Z";
    await send(`/tanks/${kitchen}/readings`, fields);
    now = NOW;
    expect(await readings(kitchen)).toHaveLength(3);
  });

  test("I-162 and I-163: corrected, and asked about where another came first", async () => {
    const kitchen = await tank();
    await send(`/tanks/${kitchen}/readings`, {
      quantity: "no3_mg_per_l",
      text: "10",
      unit: NO3,
      once: "once-edit-00001",
    });
    const [entry] = await store.entries(kitchen, { kind: "reading", limit: 1 });
    const path = `/tanks/${kitchen}/readings/${entry?.id}`;
    const correct = (text: string, version: string) =>
      send(path, { text, unit: NO3, observed: TODAY, version, go: "correct" });
    expect((await correct("15", "1")).statusCode).toBe(303);
    const clash = await correct("20", "1");
    expect(clash.statusCode).toBe(409);
    expect(clash.body).toContain("15 mg/L as NO3");
    expect(clash.body).toContain('value="20"');
    expect((await readings(kitchen))[0]?.text).toBe("15 mg/L as NO3");
    expect((await correct("20", "2")).statusCode).toBe(303);
    expect((await readings(kitchen))[0]?.text).toBe("20 mg/L as NO3");
    expect((await look(path)).body).toContain("10 mg/L as NO3");
  });

  test("ammonia is a danger wherever something may live, and none in a tank said to be empty", async () => {
    const fields = { quantity: "tan_mg_n_per_l", text: "1.2", unit: "mg/L as N" };
    for (const [animals, flag] of [
      [{}, "danger"],
      [{ animals_present: [], fish: [] }, null],
    ] as const) {
      const kitchen = await tank(animals as Partial<TankFile>);
      await send(`/tanks/${kitchen}/readings`, { ...fields, once: `once-${kitchen}-01` });
      expect((await readings(kitchen))[0]?.flag).toBe(flag);
    }
  });

  test("taken away and brought back, twice the same is done once", async () => {
    const kitchen = await tank();
    await send(`/tanks/${kitchen}/readings`, { quantity: "ph", text: "8.1", once: "once-away-00001" });
    const [entry] = await store.entries(kitchen, { kind: "reading", limit: 1 });
    const path = `/tanks/${kitchen}/readings/${entry?.id}`;
    for (const _ of [1, 2]) await send(path, { version: "1", go: "take_away" });
    expect(await readings(kitchen)).toEqual([]);
    expect((await look(`/tanks/${kitchen}/readings?removed=1`)).body).toContain("Bring it back");
    await send(path, { version: "2", go: "bring_back" });
    expect(await readings(kitchen)).toHaveLength(1);
    expect(await store.entryHistory(entry?.id ?? "")).toHaveLength(3);
  });

  test("before the first seawater told later: the answer that would contradict it is not kept", async () => {
    const kitchen = await tank({ first_seawater_on: "2026-01-10" });
    await send(`/tanks/${kitchen}/readings`, {
      quantity: "ph",
      text: "8.1",
      observed: "2026-02-01",
      once: "once-early-0001",
    });
    const answer = await send(`/tanks/${kitchen}/questions/2`, {
      version: "1",
      first_seawater: "2026-03-01",
    });
    expect(answer.statusCode).toBe(422);
    expect((await file(kitchen)).first_seawater_on).toBe("2026-01-10");
    expect((await look(`/tanks/${kitchen}`)).statusCode).toBe(200);
  });
});

describe("animals, question 4", () => {
  test.each<[string, string, Partial<TankFile>]>([
    ["I-075", "trochus snail", {}],
    ["I-077", "trochus snail", {}],
    ["I-078", "trochus snail", {}],
    ["I-079", "trochus snail", { water_l: "20 L" }],
    ["I-080", "copepods", {}],
    ["I-081", "trochus snail", {}],
    ["I-083", "trochus snail", {}],
  ])("%s: a count", async (id, name, change) => {
    const kitchen = await tank(change);
    await judge(id, `/tanks/${kitchen}/questions/4`, { version: "1", animal_1: `${row(id).input} ${name}` });
    expect(((await file(kitchen)).animals_present ?? []).length).toBe(KEPT.includes(row(id).verdict) ? 1 : 0);
  });

  test.each(["I-084", "I-086", "I-087", "I-088"])("%s: a name", async (id) => {
    const kitchen = await tank();
    await judge(id, `/tanks/${kitchen}/questions/4`, { version: "1", animal_1: `2 ${row(id).input}` });
    const kept = (await file(kitchen)).animals_present ?? [];
    expect(kept).toEqual(KEPT.includes(row(id).verdict) ? [{ animal: row(id).input, count: 2 }] : []);
  });
});

describe("floor, food and age", () => {
  test("I-097: a bare floor, and animals that live in sand", async () => {
    const kitchen = await tank({ animals_present: [{ animal: "nassarius snail", count: 6 }] });
    const fields = { version: "1", floor: "sand", sand_depth: row("I-097").input, sand_depth_unit: "cm" };
    await judge("I-097", `/tanks/${kitchen}/questions/5`, fields);
  });

  test.each(["I-099", "I-100", "I-101", "I-102"])("%s: feed", async (id) => {
    const kitchen = await tank({ water_l: "100 L" });
    await judge(id, `/tanks/${kitchen}/questions/6`, { version: "1", food_dry_pellet: row(id).input });
  });

  test("I-098: a tank that is planned", async () => {
    const kitchen = await tank();
    await judge("I-098", `/tanks/${kitchen}/questions/2`, {
      version: "1",
      first_seawater: row("I-098").input,
    });
    expect((await file(kitchen)).first_seawater_on).toBe("2027-01-01");
  });
});

describe("a new tank", () => {
  test.each([
    ["I-121", "<script>alert(1)</script>"],
    ["I-122", "Robert'); DROP TABLE tank;--"],
    ["I-123", "Zoë’s 礁 🪸"],
    ["I-124", null],
    ["I-125", "gnp.exe"],
    ["I-126", null],
    ["I-128", "Kitchen"],
  ])("%s: its name", async (id, name) => {
    const before = (await store.tanks()).length;
    const answer = await judge(id, "/new", {
      name: row(id).input,
      water: "200",
      water_unit: "L",
      once: `once-${id}-0001`,
    });
    const after = await store.tanks();
    expect(after).toHaveLength(before + (name === null ? 0 : 1));
    if (name === null) return;
    const made = /\/tanks\/([^/]+)\//.exec(answer.headers.location ?? "")?.[1] ?? "";
    expect((await file(made)).name).toBe(name);
    expect((await look(`/tanks/${made}`)).body).not.toContain("<script>alert(1)");
  });

  test("named by nobody it has its defaults; sent twice it is one", async () => {
    const before = (await store.tanks()).length;
    const fields = { water: "55", water_unit: "US gal", once: "once-twice-0002" };
    for (const _ of [1, 2]) expect((await send("/new", fields)).statusCode).toBe(303);
    const tanks = await store.tanks();
    expect(tanks).toHaveLength(before + 1);
    expect(tanks.find(({ facts }) => facts["water_l"] === "55 US gal")).toMatchObject({
      keeper: { name: "Me" },
      facts: { name: "My tank" },
    });
  });

  test("I'm not sure is an answer", async () => {
    const answer = await send("/new", { go: "not_sure", once: "once-unsure-001" });
    const id = /\/tanks\/([^/]+)\//.exec(answer.headers.location ?? "")?.[1] ?? "";
    expect((await file(id)).water_l).toBe("40-300 L");
  });
});

describe("questions one by one and on one form", () => {
  const answers: readonly Fields[] = [
    { water: "55", water_unit: "US gal" },
    { first_seawater: "1 May 2026", rock: "dry" },
    { seen_film_glass: "patches", seen_diatoms: "trace" },
    { animal_1: "2 clownfish", animal_2: "5 trochus snail" },
    { floor: "sand", sand_depth: "3", sand_depth_unit: "cm", grain: "fine" },
    { food_dry_pellet: "0.2", left: "some" },
    { temperature: "25.5", temperature_unit: "C", nitrate: "10", nitrate_unit: NO3 },
    { wrong: "no" },
  ];

  test("make the same document", async () => {
    const [one, other] = [await tank(), await tank()];
    for (const [i, fields] of answers.entries()) {
      const { version = 0 } = (await store.tank(one)) ?? {};
      const answer = await send(`/tanks/${one}/questions/${i + 1}`, { ...fields, version: String(version) });
      expect(answer.statusCode).toBe(303);
      const page = await look(answer.headers.location ?? "");
      expect(page.statusCode).toBe(200);
    }
    expect(
      (await send(`/tanks/${other}/form`, { ...Object.assign({}, ...answers), version: "1" })).statusCode,
    ).toBe(303);
    expect(JSON.stringify(await file(one))).toBe(JSON.stringify(await file(other)));
    expect((await store.tank(one))?.version).toBeGreaterThan(6);
    expect((await store.tank(other))?.version).toBe(2);
  });

  test("how it was read is echoed on the next page, and taken back in one step", async () => {
    const kitchen = await tank();
    const answer = await send(`/tanks/${kitchen}/questions/1`, {
      version: "1",
      water: "55",
      water_unit: "US gal",
    });
    const page = await look(answer.headers.location ?? "");
    expect(page.body).toContain("208.2 L");
    const restore = /name="restore" value="(\d+)"/.exec(page.body)?.[1] ?? "";
    const back = await send(`/tanks/${kitchen}/history`, { restore, version: "2", next: "1" });
    expect(back.headers.location).toBe(`/tanks/${kitchen}/questions/1`);
    expect((await file(kitchen)).water_l).toBe("200 L");
  });

  test("two who answer different questions don't meet; the same one is asked about", async () => {
    const kitchen = await tank();
    await send(`/tanks/${kitchen}/questions/1`, { version: "1", water: "150", water_unit: "L" });
    const other = await send(`/tanks/${kitchen}/questions/5`, { version: "1", floor: "bare" });
    expect(other.statusCode).toBe(303);
    const clash = await send(`/tanks/${kitchen}/questions/1`, {
      version: "1",
      water: "180",
      water_unit: "L",
    });
    expect(clash.statusCode).toBe(409);
    expect(clash.body).toContain("150");
    expect(clash.body).toContain('value="180"');
    expect((await file(kitchen)).water_l).toBe("150 L");
    const again = await send(`/tanks/${kitchen}/questions/1`, {
      version: "3",
      water: "180",
      water_unit: "L",
    });
    expect(again.statusCode).toBe(303);
  });

  test("yes to question 8 leads to what to do first, and to an advice that says so", async () => {
    const kitchen = await tank();
    const answer = await send(`/tanks/${kitchen}/questions/8`, {
      version: "1",
      wrong: "yes",
      trouble: "fish gasping",
    });
    expect(answer.headers.location).toBe(`/something-is-wrong?tank=${kitchen}`);
    expect((await look(answer.headers.location ?? "")).body).toContain("Back to Kitchen");
    const bench = await look(`/tanks/${kitchen}`);
    expect(bench.body).toContain("See to what is wrong first");
    expect((await look("/")).body).toContain("fish gasping");
  });
});

describe("units, history, taking a tank away", () => {
  test("units are kept, offered first, and shown; what was typed stays", async () => {
    const kitchen = await tank();
    const answer = await send(`/tanks/${kitchen}/units`, {
      version: "1",
      volume: "US gal",
      temperature: "F",
      dates: "dmy",
    });
    expect(answer.statusCode).toBe(303);
    expect(await file(kitchen)).toMatchObject({
      water_l: "200 L",
      preferences: { gallon: "us", dates: "dmy", shown_in: { volume: "US gal", temperature: "F" } },
    });
    expect((await look(`/tanks/${kitchen}`)).body).toContain("52.8 US gal of water");
    expect((await look(`/tanks/${kitchen}/questions/7`)).body).toMatch(/<option value="F" selected/);
  });

  test("I-164: a tank is taken away by its name, leaves the list, and comes back", async () => {
    const kitchen = await tank({ name: "Hall tank" });
    const history = `/tanks/${kitchen}/history`;
    const wrong = await send(history, { version: "1", go: "take_away", confirm: "hal tank" });
    expect(wrong.statusCode).toBe(422);
    expect(wrong.body).toContain("hal tank");
    expect((await send(history, { version: "1", go: "take_away", confirm: "Hall tank" })).statusCode).toBe(
      303,
    );
    expect((await look(`/tanks/${kitchen}`)).statusCode).toBe(404);
    expect((await send(history, { version: "2", go: "bring_back" })).statusCode).toBe(303);
    expect((await look(`/tanks/${kitchen}`)).statusCode).toBe(200);
  });
});
