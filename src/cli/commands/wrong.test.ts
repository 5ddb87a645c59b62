/** `grazewell wrong`: the pages' own lists, before anything of a tank is read, and its numbers where one is named. */
import { expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { CRISIS_IDS } from "../../answers/wrong/list-ids.ts";
import { CRISIS_LISTS } from "../../answers/wrong/lists.ts";
import { command } from "./wrong.ts";

async function run(...words: string[]): Promise<{ readonly text: string; readonly failed: unknown }> {
  const { io, printed } = keptIo();
  const failed = await command(io)
    .exitOverride()
    .parseAsync(words, { from: "user" })
    .then(() => null)
    .catch((error: unknown) => error);
  return { text: printed.join("\n"), failed };
}

test("without a name: every trouble, people first", async () => {
  const { text } = await run();
  for (const id of CRISIS_IDS) expect(text).toContain(`  ${id} `);
  expect(text.indexOf("Electric shock")).toBeLessThan(text.indexOf("Animals gasp"));
});

test("a list is that of its page, line by line", async () => {
  for (const id of CRISIS_IDS) {
    const { text } = await run(id);
    for (const [i, line] of CRISIS_LISTS[id].lines.entries()) expect(text).toContain(`  ${i + 1}. ${line}`);
  }
});

test("the list comes even where the tank can't be read", async () => {
  const { text, failed } = await run("ammonia", "no-such-file.yaml");
  expect(text).toContain("7. Call an aquatic vet");
  expect(String(failed)).toMatch(/there is no such file/);
});

test("with a tank file: its numbers, those of the engine too", async () => {
  const ammonia = await run("ammonia", "examples/first-reef.yaml");
  expect(ammonia.text).toMatch(/Total ammonia that harms over days: [\d.]+ mg N\/L \([\d.]+ to [\d.]+\)/);
  const pumps = await run("pumps", "examples/first-reef.yaml");
  expect(pumps.text).toMatch(/within 4 hours .*\d+ of 20/);
});

test("an unknown name: the likely one, and all there are", async () => {
  expect(String((await run("amonia")).failed)).toMatch(/Did you mean ammonia\?/);
});
