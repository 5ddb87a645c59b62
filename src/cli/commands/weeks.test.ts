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
