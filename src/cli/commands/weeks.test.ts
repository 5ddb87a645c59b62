import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { command } from "./weeks.ts";

const example = (name: string) => join(import.meta.dirname, "../../../examples", name);

test("weeks of a file: this week first, each list by its name, the 26th last", async () => {
  const { io, printed } = keptIo();
  await command(io)
    .exitOverride()
    .parseAsync([example("first-reef.yaml")], { from: "user" });
  const out = printed.join("\n");
  expect(out).toContain("This tank is in week 7.");
  expect(out.indexOf("Week 7,")).toBeGreaterThan(0);
  expect(out).toMatch(/ to 26, \d+ \w+ 2026 to \d+ \w+ 2026/);
  for (const list of ["Expect:", "Test:", "Do:", "Don't:", "Buy:"]) expect(out).toContain(`  ${list} `);
});

test("a reading in the file is a test that was made: nobody is told to measure it for the first time", async () => {
  const folder = mkdtempSync(join(tmpdir(), "weeks-"));
  const file = join(folder, "odd.yaml");
  const lines = [
    "grazewell_tank: 1",
    "as_of: 2026-06-15",
    "water_l: 37.5 imperial gallons",
    "first_seawater_on: 2026-06-01",
    "readings: [{ on: 2026-06-13, no3_mg_per_l: 2 }]",
  ];
  writeFileSync(file, lines.join("\n"));
  const { io, printed } = keptIo();
  await command(io).exitOverride().parseAsync([file], { from: "user" });
  rmSync(folder, { recursive: true });
  expect(printed.join("\n")).toContain("Test phosphate for the first time.");
  expect(printed.join("\n")).not.toContain("Test nitrate for the first time");
});
