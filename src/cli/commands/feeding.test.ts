/** `grazewell feeding`: the page's numbers in lines; leaving home with dates as they are written. */
import { expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { command } from "./feeding.ts";

async function said(...words: string[]): Promise<string> {
  const { io, printed } = keptIo();
  await command(io)
    .exitOverride()
    .parseAsync(["examples/first-reef.yaml", ...words], { from: "user" });
  return printed.join("\n");
}

test("what goes in, what fish need, portions and fasting days", async () => {
  const text = await said();
  expect(text).toMatch(/^A day's feed brings [\d.]+ mg of nitrogen and [\d.]+ mg of phosphorus\.$/m);
  for (const title of ["What the fish need", "What a portion holds", "Fasting days"])
    expect(text).toContain(title);
});

test("leaving home: three ways, what to pack, what to do before", async () => {
  const text = await said("--from", "18 Jun 2026", "--to", "2026-06-28");
  for (const way of ["nobody feeds", "a sitter, packed portions", "an automatic feeder"])
    expect(text).toMatch(new RegExp(`^ {2}${way}: nitrate `, "m"));
  expect(text).toMatch(/^Pack 4 portions of /m);
  expect(text).toMatch(/^28 Jun 2026: Count heads/m);
});

test("days that can't be are refused with what is allowed", async () => {
  await expect(said("--from", "2026-06-20", "--to", "2026-06-19")).rejects.toThrow(
    /1 to 42 days after leaving/,
  );
});
