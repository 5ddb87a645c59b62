import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { z } from "zod";
import { keptIo } from "../../../checks/kit/io.ts";
import { type CheckOutput, checkOutput } from "../../contract/output/check.ts";
import { CliError, EXIT } from "../io.ts";
import { command } from "./check.ts";

const root = join(import.meta.dirname, "../../..");
const folder = mkdtempSync(join(tmpdir(), "check-"));
afterAll(() => rmSync(folder, { recursive: true }));

async function run(...argv: string[]): Promise<{ out: string; error: CliError | null }> {
  const { io, printed: lines } = keptIo();
  try {
    await command(io).exitOverride().parseAsync(argv, { from: "user" });
  } catch (error) {
    if (!(error instanceof CliError)) throw error;
    return { out: lines.join("\n"), error };
  }
  return { out: lines.join("\n"), error: null };
}

function file(name: string, text: string): string {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
}
const BAD = "grazewell_tank: 1\nwatr_l: 5\nwater_l: 55 gal\nph: 81\n";

describe("--json", () => {
  const schema = JSON.parse(readFileSync(join(root, "docs/schemas/check.schema.json"), "utf8"));
  const published = z.fromJSONSchema(schema);

  test.each(readdirSync(join(root, "examples")))("of %s keeps to the published schema", async (name) => {
    const { out, error } = await run(join(root, "examples", name), "--json");
    expect(error).toBeNull();
    const report = checkOutput.parse(JSON.parse(out));
    expect(() => published.parse(report)).not.toThrow();
    expect(report.ok).toBe(true);
  });

  test("of a bad file lists every finding, and ends with 65", async () => {
    const { out, error } = await run(file("bad.yaml", BAD), "--json");
    const report: CheckOutput = checkOutput.parse(JSON.parse(out));
    expect(report.ok ? [] : report.findings.map(({ line, kind }) => [line, kind])).toEqual([
      [2, "FORMAT"],
      [3, "AMBIG"],
      [4, "FORMAT"],
    ]);
    expect(error?.exitCode).toBe(EXIT.badData);
    expect(error?.lines).toEqual([]);
  });
});

describe("for a person", () => {
  test("says what was read, how, and what was assumed, the most telling first", async () => {
    const { out } = await run(join(root, "examples/first-reef.yaml"));
    expect(out).toContain("First reef: nothing to mend");
    expect(out).toContain('"30 US gal": read as 30 US gal, 113.6 L');
    expect(out).toMatch(/Assumed[\s\S]*matters much[\s\S]*compartments\.display/);
  });

  test("fits the width", async () => {
    const { out } = await run(join(root, "examples/volume-only.yaml"));
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("lists what is to mend on standard error, with nothing on standard output", async () => {
    const { out, error } = await run(file("bad.yaml", BAD));
    expect(out).toBe("");
    expect(error?.exitCode).toBe(EXIT.badData);
    expect(error?.lines.at(-1)).toBe("3 things to mend. Nothing was computed.");
  });

  test("names dangers first, and animals it does not know", async () => {
    const text = "grazewell_tank: 1\nwater_l: 100\ntemperature_c: 32\nanimals_present: [{ animal: zzyzx }]\n";
    const { out } = await run(file("warm.yaml", text));
    expect(out.indexOf("too warm")).toBeLessThan(out.indexOf("What is known"));
    expect(out).toMatch(/count for nothing\n {2}zzyzx/);
  });
});

test("a missing file ends with 66", async () => {
  expect((await run(join(folder, "none.yaml"))).error?.exitCode).toBe(EXIT.inputMissing);
});
