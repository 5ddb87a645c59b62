import { expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { keyOutput } from "../../contract/output/growths.ts";
import { command } from "./what-is-this.ts";

async function said(...words: string[]): Promise<string> {
  const { io, printed } = keptIo();
  await command(io).exitOverride().parseAsync(words, { from: "user" });
  return printed.join("\n");
}

test("a growth by its traits: named with n of 20, what to do, what not, the wild", async () => {
  const text = await said("growth", "--yes", "colour_red,texture_slime,sheets");
  expect(text).toContain("Cyanobacteria: nearly always, 19 of 20.");
  expect(text).toMatch(/Do: Siphon the sheets off/);
  expect(text).toMatch(/Do not: Add snails for it/);
  expect(text).toMatch(/Never release animals/);
});

test("few traits: can't tell yet, and the next question with its options", async () => {
  const text = await said("growth", "--yes", "colour_brown");
  expect(text).toContain("Can't tell yet.");
  expect(text).toMatch(/Next: What is it like to look at\? \(texture_dust, /);
});

test("data fit the schema", async () => {
  const data = keyOutput.parse(JSON.parse(await said("animal", "--yes", "shape_polyp,flat_disc", "--json")));
  expect(data).toMatchObject({ key: "animal", seen: ["shape_polyp", "flat_disc"], named: "button-polyps" });
});

test("every trait is listed with its words", async () => {
  const text = await said("animal", "--traits");
  expect(text).toMatch(/^ {2}eyes_turn: eyes on stalks that turn$/m);
});

test.each([
  [["growth", "--yes", "colour_bron"], /no trait of that id/],
  [["growth", "--yes", "sheets", "--no", "sheets"], /behind --yes and behind --no/],
  [["weed"], /ask for growth, animal or record/],
  [["record"], /name a tank of the store with --tank/],
])("%j says what is allowed", async (words, message) => {
  await expect(said(...words)).rejects.toThrow(message);
});
