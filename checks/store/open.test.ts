/** What opening does with what it finds: nothing, a store, an older or newer one, something else, something broken. */
import { execFile } from "node:child_process";
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import BetterSqlite3 from "better-sqlite3";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { examine } from "../../src/store/examine.ts";
import { MIGRATIONS } from "../../src/store/migrations/list.ts";
import { type OpenOptions, openDatabase } from "../../src/store/open.ts";
import type { StoreError } from "../../src/store/store.ts";
import { placeOf } from "../../src/store/where.ts";
import { DATABASES, type Ground, ground, type Spot, spotAt, stamp } from "./grounds.ts";

const lands = new Map<string, Ground>();
beforeAll(() => {
  for (const database of DATABASES) lands.set(database, ground(database));
});
afterAll(() => {
  for (const land of lands.values()) land.end();
});
const land = (database: string) => lands.get(database) as Ground;

async function refusal(opening: Promise<{ close(): Promise<void> }>): Promise<StoreError> {
  const end = await opening.then(
    async (store) => {
      await store.close();
      return null;
    },
    (error) => error as StoreError,
  );
  expect(end).not.toBeNull();
  expect(end?.fix.length).toBeGreaterThan(10);
  return end as StoreError;
}

async function planted(spot: Spot, options: OpenOptions = {}): Promise<void> {
  const store = await spot.open(options);
  await store.together(async (desk) => {
    await desk.keeperNamed("Ada", "k1", stamp());
    await desk.addTank(
      { id: "t1", keeperId: "k1", demonstration: false, facts: { note: "x".repeat(9_000) } },
      stamp(),
    );
  });
  await store.close();
}

describe.each(DATABASES)("opening on %s", (database) => {
  const next = { name: "0006-next", statements: () => ["CREATE TABLE next (id integer)"] };

  test("a store of a newer program is refused by name and left as it is; this program's own opens again", async () => {
    const spot = land(database).spot();
    await planted(spot, { migrations: [...MIGRATIONS, next] });
    const bytes = database === "sqlite" ? readFileSync(spot.where) : null;
    const error = await refusal(spot.open());
    expect(error).toMatchObject({ reason: "newer", message: expect.stringContaining("0006-next") });
    if (bytes !== null) expect(readFileSync(spot.where).equals(bytes)).toBe(true);
    await (await spot.open({ migrations: [...MIGRATIONS, next] })).close();
  });

  test("an older store is copied aside, then brought up to date, once", async () => {
    const spot = land(database).spot();
    await planted(spot);
    const rows = await spot.rows();
    const told: unknown[] = [];
    const options = {
      migrations: [...MIGRATIONS, next],
      onMigrated: (migrated: unknown) => told.push(migrated),
    };
    await (await spot.open(options)).close();
    await (await spot.open(options)).close();
    expect(told).toEqual([{ applied: ["0006-next"], copy: expect.stringContaining("before") }]);
    const [{ copy }] = told as [{ copy: string }];
    const copied = database === "sqlite" ? spotAt(copy, {}) : spotAt(spot.where, { schema: copy });
    expect(await copied.rows()).toEqual(rows);
    expect(await spot.rows()).toEqual(rows);
  });

  test("a change of shape that fails leaves nothing of itself", async () => {
    const spot = land(database).spot();
    await planted(spot);
    const broken = {
      name: "0006-broken",
      statements: () => ["CREATE TABLE half (id integer)", "CREATE TABLE half (id integer)"],
    };
    await expect(spot.open({ migrations: [...MIGRATIONS, broken] })).rejects.toThrow(/half/);
    await (await spot.open({ migrations: [...MIGRATIONS, next] })).close();
    const behind = await openDatabase(spot.where, { ...spot.options, use: "as it is" });
    expect(await behind.tables()).not.toContain("half");
    await behind.close();
  });

  test("nothing is made where a store must be", async () => {
    const spot = land(database).spot();
    expect(await refusal(openDatabase(spot.where, { ...spot.options, use: "existing" }))).toMatchObject({
      reason: "unreachable",
    });
    if (database === "sqlite") expect(existsSync(spot.where)).toBe(false);
  });

  test("a sound store has nothing for check-store to find; rows that disagree are found", async () => {
    const spot = land(database).spot();
    await planted(spot);
    const behind = await openDatabase(spot.where, spot.options);
    expect((await examine(behind)).filter(({ good }) => !good)).toEqual([]);
    await behind.transact((db) => db.updateTable("tank").set({ version: 2 }).execute());
    const bad = (await examine(behind)).filter(({ good }) => !good);
    expect(bad.map(({ name, says }) => [name, says])).toEqual([
      ["tanks agree with their latest version", "not so for 1"],
      ["no version of a tank is missing", "not so for 1"],
    ]);
    await behind.close();
  });

  test("four programs that start at once make one store", async () => {
    const spot = land(database).spot();
    const program = join(import.meta.dirname, "first-start.ts");
    const start = promisify(execFile);
    const ends = await Promise.all(
      [1, 2, 3, 4].map((n) =>
        start(process.execPath, [program, spot.where, spot.options.schema ?? "", String(n)]),
      ),
    );
    expect(ends.map(({ stdout }) => stdout.trim())).toEqual(["opened", "opened", "opened", "opened"]);
    expect((await spot.rows())["keeper"]).toHaveLength(4);
  });
});

describe("files that are no store", () => {
  const at = (name: string) => join(land("sqlite").folder, name);

  test.each([
    ["text", "notes of mine\n".repeat(40)],
    ["a short text", "x"],
    ["another magic", `SQLite format 2\u0000${"\u0000".repeat(4_096)}`],
  ])("%s is left as it is", async (name, text) => {
    const file = at(`foreign-${name}`);
    writeFileSync(file, text);
    expect(await refusal(spotAt(file, {}).open())).toMatchObject({ reason: "foreign" });
    expect(readFileSync(file, "utf8")).toBe(text);
  });

  test.each([0, 0x1234])("another program's database, marked %d, is left as it is", async (mark) => {
    const file = at(`other-${mark}.db`);
    const other = new BetterSqlite3(file);
    other.exec(`PRAGMA application_id = ${mark}; CREATE TABLE accounts (id)`);
    other.close();
    const before = readFileSync(file);
    expect(await refusal(spotAt(file, {}).open())).toMatchObject({ reason: "foreign" });
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(land("sqlite").folder).filter((name) => name.startsWith(`other-${mark}.db-`))).toEqual(
      [],
    );
  });

  test("an empty file is a place where nothing is yet; with a log beside it, or a log alone, part is missing", async () => {
    const file = at("empty.db");
    writeFileSync(file, "");
    await planted(spotAt(file, {}));
    const cut = at("cut.db");
    writeFileSync(cut, "");
    writeFileSync(`${cut}-wal`, "frames");
    expect(await refusal(spotAt(cut, {}).open())).toMatchObject({ reason: "damaged" });
    rmSync(cut);
    expect(await refusal(spotAt(cut, {}).open())).toMatchObject({ reason: "damaged" });
    expect(existsSync(cut)).toBe(false);
    expect(readFileSync(`${cut}-wal`, "utf8")).toBe("frames");
  });

  test("a folder, and a folder that is a file", async () => {
    mkdirSync(at("folder.db"));
    expect(await refusal(spotAt(at("folder.db"), {}).open())).toMatchObject({ reason: "unreachable" });
    writeFileSync(at("file"), "");
    expect(await refusal(spotAt(join(at("file"), "store.db"), {}).open())).toMatchObject({
      reason: "unreachable",
    });
  });

  test("a missing folder is made, for its owner alone", async () => {
    const file = at("a/b/store.db");
    await planted(spotAt(file, {}));
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(statSync(at("a/b")).mode & 0o777).toBe(0o700);
  });

  test.each([
    ["cut in half", (file: string) => truncateSync(file, statSync(file).size / 2)],
    ["a page overwritten by text", (file: string) => write(file, 4_096, "text ".repeat(800))],
    [
      "every second page zeroed",
      (file: string) => {
        for (let at = 8_192; at < statSync(file).size; at += 8_192) write(file, at, "\u0000".repeat(4_096));
      },
    ],
  ])("%s is told as damaged, when it is opened", async (name, damage) => {
    const file = at(`damaged ${name}.db`);
    await planted(spotAt(file, {}));
    damage(file);
    expect(await refusal(spotAt(file, {}).open())).toMatchObject({ reason: "damaged" });
  });

  test("the settings that keep an acknowledged write are read back", async () => {
    const behind = await openDatabase(at("settings.db"));
    expect((await behind.durableSettings()).map(({ name, value }) => `${name} ${value}`)).toEqual([
      "journal_mode wal",
      "synchronous 2",
      "foreign_keys 1",
    ]);
    await behind.close();
  });
});

function write(file: string, at: number, text: string): void {
  const descriptor = openSync(file, "r+");
  writeSync(descriptor, text, at);
  closeSync(descriptor);
}

describe("PostgreSQL that can't be used", () => {
  test("not there, no such database, no such user: unreachable, and no password in what is said", async () => {
    const { where } = land("postgres").spot();
    const wrong = [
      "postgres://ada:hush-hush@/postgres?host=/nowhere",
      where.replace("/postgres?", "/none?"),
      where.replace("keeper@", "nobody:hush-hush@"),
    ];
    for (const url of wrong) {
      const error = await refusal(openDatabase(url));
      expect(error.reason).toBe("unreachable");
      expect(`${error.message} ${error.fix}`).not.toContain("hush");
    }
  });

  test("a schema that holds another program's tables is left as it is", async () => {
    const spot = land("postgres").spot();
    await query(
      spot.where,
      `CREATE SCHEMA ${spot.options.schema}; CREATE TABLE ${spot.options.schema}.accounts (id integer)`,
    );
    expect(await refusal(spot.open())).toMatchObject({ reason: "foreign" });
  });

  test.each(["fsync", "full_page_writes"])(
    "a server with %s off could lose what it has acknowledged: refused, and check-store finds it",
    async (name) => {
      const spot = land("postgres").spot();
      await planted(spot);
      await query(spot.where, `ALTER SYSTEM SET ${name} = off`);
      await query(spot.where, "SELECT pg_reload_conf()");
      try {
        await expect
          .poll(() => refusal(spot.open()).then(({ message }) => message))
          .toContain(`${name} is off`);
        const seen = await openDatabase(spot.where, { ...spot.options, use: "as it is" });
        const wrong = (await examine(seen)).filter(({ good }) => !good);
        await seen.close();
        expect(wrong).toEqual([{ name: `setting ${name}`, good: false, says: "off; must be on" }]);
      } finally {
        await query(spot.where, `ALTER SYSTEM RESET ${name}`);
        await query(spot.where, "SELECT pg_reload_conf()");
      }
      await expect
        .poll(() => spot.open().then((store) => store.close().then(() => "opens"), String))
        .toBe("opens");
    },
  );

  async function query(url: string, text: string): Promise<void> {
    const client = new pg.Client({ connectionString: url });
    await client.connect();
    await client.query(text);
    await client.end();
  }
});

test("where the store is: as said, else DATABASE_URL, else among the user's data", () => {
  expect(placeOf("a.db", { DATABASE_URL: "postgres://x/y" })).toEqual({ kind: "sqlite", file: "a.db" });
  expect(placeOf(undefined, { DATABASE_URL: "postgresql://x/y" })).toEqual({
    kind: "postgres",
    url: "postgresql://x/y",
  });
  expect(placeOf(undefined, { DATABASE_URL: "", XDG_DATA_HOME: "/data" })).toEqual({
    kind: "sqlite",
    file: "/data/grazewell/grazewell.db",
  });
  expect(placeOf(undefined, {})).toMatchObject({
    kind: "sqlite",
    file: expect.stringContaining(".local/share/grazewell"),
  });
});
