/** A kept document read as data says what it says as text, lines apart: the round reads it the short way. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { findAnimal } from "../../src/catalogue/index.ts";
import { readTankData, readTankFile, type TankFileResult } from "../../src/contract/tank-file/read.ts";
import { fleet } from "./fleet.ts";

const options = { today: "2026-06-15", findAnimal };
const lineless = (result: TankFileResult) =>
  result.ok
    ? { ...result, notices: result.notices.map((notice) => ({ ...notice, line: null })) }
    : { ...result, findings: result.findings.map((finding) => ({ ...finding, line: null })) };
function expectAlike(document: object): void {
  // As a store gives it back.
  const kept = JSON.parse(JSON.stringify(document)) as object;
  expect(readTankData(kept, options)).toEqual(lineless(readTankFile(JSON.stringify(kept), options)));
}

test("an invented fleet", () => {
  for (const { document } of fleet(7, "2026-06-15", 40)) expectAlike(document);
});

const folder = join(import.meta.dirname, "../../examples");
test.each(readdirSync(folder).filter((name) => /\.(yaml|json)$/.test(name)))("%s", (name) => {
  expectAlike(parse(readFileSync(join(folder, name), "utf8")) as object);
});

test.each([
  ["blanks", { grazewell_tank: 1, name: null, water_l: "200 L", fish: [{ fish: "clownfish", count: null }] }],
  ["faults", { grazewell_tank: 1, water_l: "no amount", ph: "99", what: [1, null] }],
  ["nothing", {}],
])("%s", (_, document) => {
  expectAlike(document);
});
