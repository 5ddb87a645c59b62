/** The command of sums: what it lists, answers, refuses and explains; its data keep to the published schemas. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { SUMS } from "../../answers/sums/table.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { command, flagOf } from "./sum.ts";

const same = (text: string) => text;
const quiet = {
  talk: () => {},
  progress: () => {},
  bold: same,
  dim: same,
  canAsk: false,
  today: "2026-11-27",
};

async function run(...argv: string[]): Promise<string> {
  const lines: string[] = [];
  const io: Io = { ...quiet, out: (text) => lines.push(text), width: 80 };
  await command(io).exitOverride().parseAsync(argv, { from: "user" });
  return lines.join("\n");
}

async function refusal(...argv: string[]): Promise<CliError> {
  try {
    await run(...argv);
  } catch (error) {
    if (error instanceof CliError) return error;
    throw error;
  }
  throw new Error("was not refused");
}

const schemaOf = (file: string) =>
  z.fromJSONSchema(
    JSON.parse(readFileSync(join(import.meta.dirname, "../../../docs/schemas", file), "utf8")),
  );

const flags = (example: Readonly<Record<string, string>>): string[] =>
  Object.entries(example).map(([name, text]) => `${flagOf({ name })}=${text}`);

test("lists every sum with its question", async () => {
  const list = (await run()).replaceAll(/\s+/g, " ");
  for (const { id, question } of SUMS) expect(list).toContain(`${id} ${question}`);
  expect(schemaOf("sums.schema.json").safeParse(JSON.parse(await run("--json"))).success).toBe(true);
});

describe.each(SUMS.map((sum) => [sum.id, sum] as const))("%s", (id, sum) => {
  test("answers its examples, as text and as data of the published schema", async () => {
    const schema = schemaOf("sum.schema.json");
    for (const example of sum.examples) {
      expect(await run(id, ...flags(example))).toMatch(/overrule them\.$/);
      const data = JSON.parse(await run(id, ...flags(example), "--json"));
      expect(schema.safeParse(data).error?.issues ?? []).toEqual([]);
    }
  });

  test("has a flag for each field that no other option has", () => {
    const taken = ["tank", "store", "why", "json", "help"];
    expect(sum.fields.map(({ name }) => name).filter((name) => taken.includes(name))).toEqual([]);
  });
});

test("a number's working, by its short name; one that is not there names those that are", async () => {
  const oxygen = ["oxygen", "--salinity", "35 psu", "--temperature", "25C"];
  expect(await run(...oxygen, "--why", "saturation")).toContain("Published works");
  const unknown = await refusal(...oxygen, "--why", "satiety");
  expect(unknown.exitCode).toBe(EXIT.badData);
  expect(unknown.lines.join(" ")).toContain("It has saturation.");
});

test("what can't be read ends with all of it, and the readings on offer as they would be typed", async () => {
  const error = await refusal("oxygen", "--salinity", "35", "--temperature", "warm");
  expect(error.exitCode).toBe(EXIT.badData);
  expect(error.lines.join("\n")).toContain('--salinity "35 psu"');
  expect(error.lines.join("\n")).toMatch(/Temperature of the water "warm"/);
});

test("a name that is no sum's suggests the likely one", async () => {
  const error = await refusal("oxygn");
  expect(error.exitCode).toBe(EXIT.usage);
  expect(error.lines[0]).toContain("Did you mean oxygen?");
});
