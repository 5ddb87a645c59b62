/** The main job as a command: text, data against its schema, what-ifs, and the two commands it leans on. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import { animals } from "../../catalogue/index.ts";
import { larderOutput } from "../../contract/output/larder.ts";
import { wavesOutput } from "../../contract/output/waves.ts";
import { workingOutput } from "../../contract/output/working.ts";
import { command as larder } from "./larder.ts";
import { command as waves } from "./waves.ts";
import { command as working } from "./working.ts";

const root = join(import.meta.dirname, "../../..");
const example = (name: string) => join(root, "examples", name);
const folder = mkdtempSync(join(tmpdir(), "waves-"));
afterAll(() => rmSync(folder, { recursive: true }));

const COMMANDS = { waves, larder, working };

async function said(name: keyof typeof COMMANDS, ...words: string[]): Promise<{ out: string; talk: string }> {
  const { io, printed: out, said: talk } = keptIo();
  await COMMANDS[name](io).exitOverride().parseAsync(words, { from: "user" });
  return { out: out.join("\n"), talk: talk.join("\n") };
}

/** Few runs: what is tested is the command, not the plan. */
const FEW = ["--members", "20"];

describe.each([
  "first-reef.yaml",
  "puffer-300.yaml",
  "overstocked-75.yaml",
  "copper-110.yaml",
  "volume-only.yaml",
])("waves %s", (name) => {
  test("its data fit the schema, and account for every animal of the catalogue once", async () => {
    const { out } = await said("waves", example(name), "--json", ...FEW);
    const plan = wavesOutput.parse(JSON.parse(out));
    const bought = new Set(plan.waves.flatMap(({ animals: some }) => some.map(({ id }) => id)));
    const refused = plan.refused.map(({ id }) => id);
    expect(refused.filter((id) => bought.has(id))).toEqual([]);
    expect(new Set(refused).size).toBe(refused.length);
    for (const { reasons, status, until } of plan.refused) {
      expect(reasons.length).toBeGreaterThan(0);
      if (status === "not_yet") expect(until.length).toBeGreaterThan(0);
    }
    const known = new Set([...bought, ...refused, ...plan.fits_but_not_needed.map(({ id }) => id)]);
    const resident = new Set(plan.check.filter(({ resident: there }) => there).map(({ id }) => id));
    const missing = animals.filter(
      ({ id, group }) => !known.has(id) && !resident.has(id) && group !== "fish",
    );
    expect(missing.map(({ id }) => id)).toEqual([]);
    for (const { from, to } of plan.waves) expect(from >= plan.tank.as_of && to > from).toBe(true);
  });

  test("its text is whole, within 80 columns, and says that figures are estimates", async () => {
    const { out } = await said("waves", example(name), ...FEW);
    expect(out).not.toMatch(/undefined|NaN|\[object|\b(perfect|guaranteed|oops|please|sorry)\b/);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(out).toContain("These are estimates");
    expect(out.split("\n").slice(0, 6).join(" ")).toMatch(/Add (\d+ animals?|nothing yet)/);
  });
});

test("an animal that the catalogue does not know is said to be left out, by every command, and in the data", async () => {
  const file = join(folder, "own.yaml");
  writeFileSync(file, "grazewell_tank: 1\nwater_l: 120\nanimals_present: [{ animal: Zzyzx, count: 2 }]\n");
  const { out, talk } = await said("waves", file, ...FEW);
  expect(talk).toContain("Zzyzx");
  expect(out).toMatch(/Not reckoned with: Zzyzx/);
  expect((await said("larder", file, ...FEW)).talk).toContain("Zzyzx");
  const data = wavesOutput.parse(JSON.parse((await said("waves", file, "--json", ...FEW)).out));
  expect(data.tank.unknown_animals).toEqual(["Zzyzx"]);
});

test("a what-if stands beside today's plan, in words and in data", async () => {
  const { out } = await said("waves", example("first-reef.yaml"), "--feed", "x2", ...FEW);
  expect(out).toMatch(/^What if: feed 0\.4 g a day instead of 0\.2 g/);
  const data = wavesOutput.parse(
    JSON.parse((await said("waves", example("first-reef.yaml"), "--feed", "x2", "--json", ...FEW)).out),
  );
  expect(data.what_if?.today.animals.length).toBeGreaterThan(0);
});

test("larder: data fit the schema, and the middle of the shelves is what the text shows", async () => {
  const data = larderOutput.parse(JSON.parse((await said("larder", example("cube-40.yaml"), "--json")).out));
  expect(data.shelves).toHaveLength(9);
  expect(data.mouths.map(({ id, heads }) => `${heads} ${id}`)).toEqual([
    "6 dwarf-cerith",
    "3 blue-leg-hermit",
  ]);
  expect((await said("larder", example("cube-40.yaml"))).out).toContain("film on rock");
});

test("working: every figure of a tank opens, its links lead to figures, its formula to a heading", async () => {
  const file = example("first-reef.yaml");
  const { figures } = workingOutput.parse(JSON.parse((await said("working", "list", file, "--json")).out));
  const ids = new Set(figures.map(({ id }) => id));
  expect(ids.size).toBeGreaterThan(25);
  // Each figure of each example is opened beside the answers; here one of each kind stands for its like.
  const kinds = ["larder.", "tank.", "plan.wave."].map(
    (kind) => figures.find(({ id }) => id.startsWith(kind))!.id,
  );
  for (const id of kinds) {
    const { figure } = workingOutput.parse(JSON.parse((await said("working", id, file, "--json")).out));
    expect(figure!.inputs.length, id).toBeGreaterThan(0);
    for (const { figure: link } of figure!.inputs)
      if (link !== null) expect(ids, `${id} links to ${link}`).toContain(link);
    for (const { sources } of figure!.parameters) expect(sources.length, id).toBeGreaterThan(0);
    const [path, heading] = figure!.formula_at.split("#") as [string, string];
    expect(existsSync(join(root, path)), path).toBe(true);
    const headings = [...readFileSync(join(root, path), "utf8").matchAll(/^#+ (.*)$/gm)].map(([, text]) =>
      text!
        .toLowerCase()
        .replaceAll(/[^a-z ]/g, "")
        .trim()
        .replaceAll(" ", "-"),
    );
    expect(headings, `${id}: ${figure!.formula_at}`).toContain(heading);
  }
});
