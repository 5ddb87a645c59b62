import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { z } from "zod";
import { keptIo } from "../../../checks/kit/io.ts";
import { animals } from "../../catalogue/index.ts";
import { type AnimalsOutput, animalsOutput } from "../../contract/output/animals.ts";
import { CliError, EXIT } from "../io.ts";
import { command } from "./animals.ts";

const root = join(import.meta.dirname, "../../..");
const example = (name: string) => join(root, "examples", `${name}.yaml`);

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
async function data(...argv: string[]): Promise<AnimalsOutput> {
  return animalsOutput.parse(JSON.parse((await run(...argv, "--json")).out));
}
const flat = (text: string) => text.replace(/\s+/g, " ");
const HURRIED = /\b(safe|perfect|guaranteed|oops|please|invalid|sorry)\b/i;

describe("the list", () => {
  test("names every animal once, by kind, in 80 columns", async () => {
    const { out } = await run();
    for (const { id } of animals) expect(out.split(`(${id})`)).toHaveLength(2);
    expect(out.indexOf("Snails")).toBeLessThan(out.indexOf("Hermit crabs"));
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });
});

describe("an entry", () => {
  test.each(animals.map(({ id }) => [id]))("of %s is whole sentences without promises", async (id) => {
    const { out, error } = await run(id);
    expect(error).toBeNull();
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(out).not.toMatch(/undefined|NaN|\[object/);
    expect(out).not.toMatch(HURRIED);
    for (const title of ["What it eats", "What it needs", "Company", "Room and age", "Mind"]) {
      expect(out).toContain(`\n${title}\n`);
    }
  });

  test("says what it eats in words and per cent, and who eats it", async () => {
    const text = flat((await run("trochus-snail")).out);
    expect(text).toContain("about two fifths is film on rock (40 %)");
    expect(text).toContain("One eats about 0.96 rations a day (0.58 to 1.3)");
    expect(text).toMatch(/It is eaten by .*puffer/);
    expect(text).toContain("Only if the tank is at least 35 days old");
    expect(text).toContain("ask an aquatic vet");
    expect(text).toContain("Never let it go into the wild");
  });

  test("dangers to people name a doctor", async () => {
    expect(flat((await run("long-spine-urchin")).out)).toContain("doctor");
  });
});

describe("in a tank", () => {
  let puffer: AnimalsOutput;
  let young: AnimalsOutput;
  let crowded: AnimalsOutput;
  beforeAll(async () => {
    [puffer, young, crowded] = await Promise.all([
      data(example("puffer-300")),
      data(example("brand-new")),
      data(example("overstocked-75")),
    ]);
  });
  const fitOf = (output: AnimalsOutput, id: string) => output.animals.find((one) => one.id === id)!.fit!;

  test("with a puffer no snail fits, and none that it surely eats ever will", () => {
    const snails = puffer.animals.filter(({ group }) => group === "snail");
    expect(snails.filter(({ fit }) => fit!.status === "fits")).toEqual([]);
    expect(snails.filter(({ fit }) => fit!.status === "never").length).toBeGreaterThan(snails.length - 2);
    expect(fitOf(puffer, "trochus-snail").reasons[0]?.text).toBe("The puffer that lives here would eat it.");
    expect(fitOf(puffer, "pufferfish")).toMatchObject({ status: "lives_here", heads_here: 1 });
  });

  test("that is new, a trochus waits for a date", async () => {
    const fit = fitOf(young, "trochus-snail");
    expect(fit.status).toBe("not_yet");
    expect(fit.reasons.find(({ code }) => code === "age")?.until).toBe(
      "from 2026-07-14, when the tank is 35 days old",
    );
    const { out } = await run("trochus-snail", example("brand-new"));
    expect(flat(out)).toContain("Not yet: at the earliest from 14 Jul 2026");
  });

  test("that is crowded, those that live there go short", () => {
    const fit = fitOf(crowded, "astraea-snail");
    expect(fit).toMatchObject({ status: "lives_here", heads_here: 15 });
    expect(fit.alive_of_20).toBeLessThan(8);
    expect(fit.short_by_mg_c_per_day).toBeGreaterThan(0);
  });

  test("whoever does not fit has a reason, and never means that one has no remedy", () => {
    for (const { animals: rows } of [puffer, young, crowded]) {
      for (const { id, fit } of rows) {
        const { status, reasons } = fit!;
        if (status === "not_yet" || status === "never") expect(reasons.length, id).toBeGreaterThan(0);
        if (status === "never")
          expect(
            reasons.some(({ until }) => until === null),
            id,
          ).toBe(true);
      }
    }
  });

  test("the list groups by what becomes of each", async () => {
    const { out } = await run(example("puffer-300"));
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(flat(out)).toMatch(
      /Never in this tank.*The puffer that lives here would eat it\..*banded trochus snail/,
    );
    expect(out).not.toMatch(HURRIED);
  });

  test("keeps to the published schema", () => {
    const published = z.fromJSONSchema(
      JSON.parse(readFileSync(join(root, "docs/schemas/animals.schema.json"), "utf8")),
    );
    for (const output of [puffer, young, crowded]) expect(() => published.parse(output)).not.toThrow();
  });
});

describe("a name", () => {
  test("typed loosely is found", async () => {
    expect((await data("Blue leg hermits")).animals.map(({ id }) => id)).toEqual(["blue-leg-hermit"]);
  });

  test.each([
    ["trochus", /could be several/, "trochus-snail"],
    ["trocus snail", /Did you mean/, "trochus-snail"],
    ["hermit", /Did you mean/, "scarlet-hermit"],
  ])("%s is asked about, with what to write", async (name, words, offered) => {
    const { error } = await run(name);
    expect(error?.exitCode).toBe(EXIT.badData);
    expect(error?.lines[0]).toMatch(words);
    expect(error?.lines.join("\n")).toContain(`grazewell animals ${offered}`);
  });

  test("that nobody knows ends with the way to the list", async () => {
    const { error } = await run("unicorn");
    expect(error).toMatchObject({ exitCode: EXIT.badData });
    expect(error?.lines[0]).toContain("grazewell animals names every kind");
  });
});
