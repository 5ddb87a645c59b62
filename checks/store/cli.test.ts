/** The commands that handle a whole store, as their users run them: words, data, exit codes. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { EXIT } from "../../src/cli/io.ts";
import { grazewell } from "../journeys/command.ts";
import { DATABASES, type Ground, ground, spotAt, stamp } from "./grounds.ts";

let [files, server]: (Ground | undefined)[] = [];
const at = (name: string) => join(files?.folder ?? "", name);
beforeAll(async () => {
  [files, server] = DATABASES.map(ground);
  const store = await spotAt(at("tanks.db"), {}).open();
  await store.keeperNamed("Ada", "k1", stamp());
  await store.addTank({ id: "t1", keeperId: "k1", demonstration: false, facts: {} }, stamp());
  await store.close();
});
afterAll(() => {
  files?.end();
  server?.end();
});

function run(words: readonly string[], ends: number): { out: string; said: string } {
  const { status, stdout, stderr } = grazewell(words);
  expect([stderr, status]).toEqual([stderr, ends]);
  expect(stderr).not.toMatch(/ at .*\.(ts|js):\d/);
  return { out: stdout, said: stderr };
}

test("backup, restore, check-store: a round, and each refusal with its code and what to do", async () => {
  const store = ["--store", at("tanks.db")];
  expect(run(["check-store", ...store], EXIT.done).out).toMatch(/last backup that was tried: none/);
  expect(run(["backup", at("copy"), ...store], EXIT.done).out).toBe(`${at("copy")}\n`);
  expect(run(["check-store", ...store], EXIT.done).out).toMatch(/last backup that was tried: today, .*copy/);
  expect(run(["backup", at("copy"), ...store], EXIT.cannotWrite).said).toMatch(/there already/);
  expect(run(["restore", at("copy"), ...store], EXIT.cannotWrite).said).toMatch(/--replace/);
  expect(run(["restore", at("copy"), ...store, "--replace"], EXIT.done).said).toMatch(
    /kept: .*before-restore/,
  );
  expect(run(["restore", at("copy"), "--store", at("new.db")], EXIT.done).said).toMatch(/3 rows restored/);
  expect((await spotAt(at("new.db"), {}).rows())["tank"]).toHaveLength(1);
  writeFileSync(at("copy/tank.jsonl"), readFileSync(at("copy/tank.jsonl"), "utf8").replace("t1", "t2"));
  expect(run(["restore", at("copy"), "--store", at("other.db")], EXIT.badData).said).toMatch(
    /differs at table tank\b/,
  );
  expect(existsSync(at("other.db"))).toBe(false);
  expect(run(["check-store", "--store", at("none.db")], EXIT.unreachable).said).toMatch(/no store at/);
  expect(run(["check-store", "--store", at("copy/tank.jsonl")], EXIT.badData).said).toMatch(/is no store/);
  run(["backup", "--nonsense"], EXIT.usage);
});

test("one row is one row", async () => {
  const store = await spotAt(at("one.db"), {}).open();
  await store.keeperNamed("Ada", "k1", stamp());
  await store.close();
  expect(run(["backup", at("copy-of-one"), "--store", at("one.db")], EXIT.done).said).toMatch(/^1 row of/m);
});

test("restore waits for nobody: a store that is open ends it with 75", async () => {
  run(["backup", at("copy-2"), "--store", at("tanks.db")], EXIT.done);
  const open = await spotAt(at("tanks.db"), {}).open();
  const said = run(["restore", at("copy-2"), "--store", at("tanks.db"), "--replace"], EXIT.tryAgain).said;
  expect(said).toMatch(/open in another program/);
  await open.close();
});

test("move-store to PostgreSQL and back", async () => {
  const url = server?.spot().where ?? "";
  run(["move-store", at("tanks.db"), url], EXIT.done);
  expect(run(["move-store", at("tanks.db"), url], EXIT.cannotWrite).said).toMatch(/holds something already/);
  expect(run(["move-store", url, at("back.db")], EXIT.done).out).toBe(`${at("back.db")}\n`);
  expect(await spotAt(at("back.db"), {}).rows()).toEqual(await spotAt(at("tanks.db"), {}).rows());
  expect(run(["check-store", "--store", url], EXIT.done).out).toMatch(/setting fsync: on/);
});
