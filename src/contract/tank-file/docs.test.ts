/** docs/tank-file.md says what the code does: its table of assumptions, its names, its examples. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { ASSUMPTIONS, type Assumption } from "./assumptions.ts";
import { readTankFile } from "./read.ts";
import { tankFileSchema } from "./schema.ts";

const doc = readFileSync(join(import.meta.dirname, "../../../docs/tank-file.md"), "utf8");
const GROWS = { volume: "with the volume", surface: "with volume^(2/3)", not: "-" };

test.each(Object.values<Assumption>(ASSUMPTIONS))(
  "the table holds: $label",
  ({ label, at113L, unit, grows, why }) => {
    const { low, central, high } = at113L;
    expect(doc).toContain(`| ${label} | ${central} (${low} to ${high}) ${unit} | ${GROWS[grows]} | ${why} |`);
  },
);

test("every name and word of the form is explained", () => {
  const names = new Set<string>();
  const gather = (node: unknown): void => {
    if (typeof node !== "object" || node === null) return;
    if ("properties" in node) for (const name of Object.keys(node.properties ?? {})) names.add(name);
    if ("enum" in node && Array.isArray(node.enum)) for (const word of node.enum) names.add(String(word));
    for (const part of Object.values(node)) gather(part);
  };
  gather(z.toJSONSchema(tankFileSchema));
  names.delete("yes");
  names.delete("no");
  expect(names.size).toBeGreaterThan(80);
  for (const name of names) expect(doc, name).toMatch(new RegExp(`[\`.]${name.replaceAll("-", "\\-")}\``));
});

describe("examples in the text", () => {
  const examples = [...doc.matchAll(/```(?:yaml|json)\n([\s\S]*?)```/g)].map(([, text = ""]) => text);
  test.each(examples)("%s", (text) => {
    const result = readTankFile(text, { today: "2026-06-15", findAnimal: () => ({ kind: "none" }) });
    expect(result.ok ? [] : result.findings).toEqual([]);
  });
  test("there are three", () => expect(examples).toHaveLength(3));
});
