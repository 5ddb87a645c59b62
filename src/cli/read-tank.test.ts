import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { z } from "zod";
import { keptIo } from "../../checks/kit/io.ts";
import { findAnimal } from "../catalogue/index.ts";
import { readSpecies } from "../contract/quantity/species.ts";
import { CliError, EXIT } from "./io.ts";
import { readTank } from "./read-tank.ts";

const { io, said } = keptIo();
const root = join(import.meta.dirname, "../..");
const examples = readdirSync(join(root, "examples"));
const folder = mkdtempSync(join(tmpdir(), "tank-"));
afterAll(() => rmSync(folder, { recursive: true }));

function refusal(name: string, content?: string | Buffer): CliError {
  const file = join(folder, name);
  if (content !== undefined) writeFileSync(file, content);
  try {
    readTank(file, io);
  } catch (error) {
    if (error instanceof CliError) return error;
    throw error;
  }
  throw new Error("was not refused");
}

describe("examples", () => {
  test("there are at least fourteen, all marked as invented", () => {
    expect(examples.length).toBeGreaterThanOrEqual(14);
    for (const name of examples)
      expect(readFileSync(join(root, "examples", name), "utf8")).toMatch(/[Ii]nvented|an invented/);
  });

  test.each(examples)("%s is read without a finding, and knows all its animals", (name) => {
    const facts = readTank(join(root, "examples", name), io, { quiet: true });
    expect(facts.waterL.central).toBeGreaterThan(0);
    expect(facts.unknownAnimals).toEqual([]);
  });

  const published = z.fromJSONSchema(
    JSON.parse(readFileSync(join(root, "docs/schemas/tank-file.schema.json"), "utf8")),
  );
  test.each(examples.filter((name) => name.endsWith(".json")))("%s keeps to the published schema", (name) => {
    expect(() =>
      published.parse(JSON.parse(readFileSync(join(root, "examples", name), "utf8"))),
    ).not.toThrow();
  });
});

describe("animals by the catalogue's own names (rows I-084 to I-088)", () => {
  test.each([
    ["I-084", "turbo snail", ["ask", "accept"]],
    ["I-085", "Trochus sp.", ["accept"]],
    ["I-086", "trocus", ["ask"]],
    ["I-087", "Zzyzx", ["accept"]],
    ["I-088", "mantis shrimp", ["flag"]],
  ])("%s %s", (_, name, verdicts) => {
    expect(verdicts).toContain(readSpecies(name, findAnimal).verdict);
  });
});

test("a file that is not there, or a folder, is missing input", () => {
  expect(refusal("no-such.yaml").exitCode).toBe(EXIT.inputMissing);
  expect(refusal(".").exitCode).toBe(EXIT.inputMissing);
});

test("findings end the command with all of them, file and line in front, fixes below", () => {
  const { exitCode, lines } = refusal("bad.yaml", "grazewell_tank: 1\nwater_l: 55 gal\nph: 81\n");
  expect(exitCode).toBe(EXIT.badData);
  expect(lines[0]).toMatch(/^bad\.yaml:2: Water volume "55 gal": which gallon\?/);
  expect(lines).toContain("    write: 55 US gal  (208.2 L)");
  expect(lines.some((line) => line.startsWith("bad.yaml:3: pH"))).toBe(true);
});

test("a picture and a large file are refused for what they are", () => {
  const png = Buffer.from("89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c489", "hex");
  expect(refusal("picture.yaml", png).lines[0]).toContain("picture");
  expect(refusal("large.yaml", Buffer.alloc(17 * 1024 * 1024, 32)).lines[0]).toContain("1 MiB");
});

test("text of a spreadsheet's encoding is read", () => {
  const file = join(folder, "utf16.yaml");
  writeFileSync(file, Buffer.from("\ufeffgrazewell_tank: 1\nwater_l: 113\nname: Küche\n", "utf16le"));
  expect(readTank(file, io).name).toBe("Küche");
});

test("quiet keeps dangers and leaves out the rest", () => {
  const file = join(folder, "warm.yaml");
  writeFileSync(file, "grazewell_tank: 1\nwater_l: 30 US gal\ntemperature_c: 32\n");
  said.length = 0;
  readTank(file, io, { quiet: true });
  expect(said).toHaveLength(1);
  expect(said[0]).toContain("too warm");
});
