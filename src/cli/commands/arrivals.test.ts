/** `grazewell arrivals`: a plan with its dates, what a file says of medicine, days that can't be read. */
import { expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { command } from "./arrivals.ts";

async function said(...words: string[]): Promise<string> {
  const { io, printed } = keptIo();
  await command(io)
    .exitOverride()
    .parseAsync(["examples/first-reef.yaml", ...words], { from: "user" });
  return printed.join("\n");
}

test("what to look at, the plan of fish from today, day three", async () => {
  const text = await said();
  expect(text).toContain("Before you pay: Hermit crabs");
  expect(text).toMatch(/^Quarantine of fish, from \d+ \w+ \d{4}$/m);
  expect(text).toContain("Day three, and it refuses food");
  expect(text).not.toContain("A fallow time");
});

test("the plan of a group, its days counted from the first", async () => {
  const text = await said("--group", "invertebrates", "--from", "2026-07-01");
  expect(text).toContain("29 Jul 2026, day 28:");
  expect(text.replaceAll(/\s+/g, " ")).toContain("1 Jul 2026, day 0: Into a tank without copper");
});

test("a day that can't be read is asked about", async () => {
  await expect(said("--from", "soon")).rejects.toThrow(/--from/);
});
