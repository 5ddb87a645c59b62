import { readFileSync } from "node:fs";
import { join } from "node:path";
import { CommanderError } from "commander";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { keptIo } from "../../../checks/kit/io.ts";
import { Refusal } from "../../answers/refusal.ts";
import { chanceWord } from "../../answers/words.ts";
import { type AheadOutput, aheadOutput } from "../../contract/output/ahead.ts";
import { type CliError, EXIT } from "../io.ts";
import { command } from "./ahead.ts";

const root = join(import.meta.dirname, "../../..");
const example = (name: string) => join(root, "examples", `${name}.yaml`);
const FEW = ["--members", "20", "--days", "105"];

async function run(...argv: string[]): Promise<{ out: string; talk: string; error: unknown }> {
  const { io, printed: lines, said: talk } = keptIo();
  let error: unknown = null;
  try {
    const quiet = { writeErr: () => {} };
    await command(io).exitOverride().configureOutput(quiet).parseAsync(argv, { from: "user" });
  } catch (thrown) {
    error = thrown;
  }
  return { out: lines.join("\n"), talk: talk.join("\n"), error };
}
async function data(...argv: string[]): Promise<AheadOutput> {
  const { out, error } = await run(...argv, ...FEW, "--json");
  expect(error).toBeNull();
  return aheadOutput.parse(JSON.parse(out));
}
const chanceOf = (outlook: AheadOutput["as_it_is"], id: string) =>
  outlook.chances.find((chance) => chance.id === id)!;
const last = (values: readonly number[]) => values.at(-1)!;

describe("--json", () => {
  const published = z.fromJSONSchema(
    JSON.parse(readFileSync(join(root, "docs/schemas/ahead.schema.json"), "utf8")),
  );

  test.each(["first-reef", "overstocked-75", "puffer-300", "volume-only", "brand-new", "bare-floor-200"])(
    "of %s keeps to the published schema, band within band, twenty runs",
    async (name) => {
      const output = await data(example(name));
      expect(() => published.parse(output)).not.toThrow();
      expect(output.weeks).toHaveLength(16);
      for (const value of output.as_it_is.dawn_oxygen_mg_per_l.q50) {
        expect(value).toBeGreaterThan(3);
        expect(value).toBeLessThan(9);
      }
      for (const { q05, q25, q50, q75, q95, runs } of output.as_it_is.quantities) {
        expect(runs).toHaveLength(20);
        q05.forEach((low, week) => {
          expect([low, q25[week]!, q50[week]!, q75[week]!, q95[week]!]).toEqual(
            [low, q25[week]!, q50[week]!, q75[week]!, q95[week]!].toSorted((a, b) => a - b),
          );
        });
      }
    },
  );

  test("the same seed gives the same answer", async () => {
    expect(await data(example("first-reef"), "--seed", "7")).toEqual(
      await data(example("first-reef"), "--seed", "7"),
    );
  });

  test("a what-if that changes nothing changes nothing", async () => {
    const { as_it_is, what_if } = await data(example("first-reef"), "--feed", "x1");
    // The other course's numbers have workings of their own.
    const asToday = JSON.stringify(what_if!.outlook).replaceAll('"what_if.', '"');
    expect(JSON.parse(asToday)).toEqual(as_it_is);
  });
});

describe("overstocked", () => {
  test("most of its crew starves, and fewer mouths starve less", async () => {
    const flags = ["--crew", "2 blue-leg-hermit", "--crew", "0 astraea-snail", "--feed", "x3"];
    const { as_it_is, what_if } = await data(example("overstocked-75"), ...flags);
    const starves = (outlook: AheadOutput["as_it_is"], id: string) =>
      outlook.kinds.find((kind) => kind.id === id)?.starves_of_20;
    expect(starves(as_it_is, "astraea-snail")).toBeGreaterThanOrEqual(18);
    expect(starves(as_it_is, "mexican-turbo-snail")).toBeGreaterThanOrEqual(18);
    expect(starves(what_if!.outlook, "astraea-snail")).toBeUndefined();
    expect(starves(what_if!.outlook, "blue-leg-hermit")!).toBeLessThan(starves(as_it_is, "blue-leg-hermit")!);
    expect(what_if!.outlook.kinds.find(({ id }) => id === "blue-leg-hermit")?.heads).toBe(2);
  });
});

describe("puffer", () => {
  test("is above its phosphate limit today and stays so", async () => {
    const { as_it_is } = await data(example("puffer-300"));
    expect(chanceOf(as_it_is, "po4_above")).toMatchObject({ of_20: 20, already_of_20: 20, missing: null });
  });

  test("a snail that a what-if adds comes with what the runs do not know", async () => {
    const { warnings, what_if } = await data(example("puffer-300"), "--crew", "+2 trochus-snail");
    expect(warnings.join(" ")).toMatch(/banded trochus snail: .*puffer that lives here would eat it/);
    expect(what_if!.changes).toEqual(["2 banded trochus snails added"]);
  });
});

describe("what-if", () => {
  test("a fish that rots raises ammonia, and today's course beside it stays", async () => {
    const { as_it_is, what_if } = await data(example("nano-10"), "--dead", "4 g fish on day 3");
    const peak = (outlook: AheadOutput["as_it_is"]) => chanceOf(outlook, "tan_above").of_20;
    expect(peak(what_if!.outlook)).toBeGreaterThan(peak(as_it_is));
    expect(as_it_is).toEqual((await data(example("nano-10"))).as_it_is);
  });

  test("less light, less hair algae; less feed, less phosphate", async () => {
    const end = (outlook: AheadOutput["as_it_is"], id: string) =>
      last(outlook.quantities.find((one) => one.id === id)!.q50);
    const dark = await data(example("first-reef"), "--light", "30 %");
    expect(end(dark.what_if!.outlook, "hair_algae")).toBeLessThan(end(dark.as_it_is, "hair_algae"));
    const lean = await data(example("first-reef"), "--feed", "-60 %");
    expect(end(lean.what_if!.outlook, "po4")).toBeLessThan(end(lean.as_it_is, "po4"));
  });
});

describe("the text", () => {
  const LIKELY = /(rarely|seldom|about even|usually|nearly always)/g;

  test.each([
    [example("first-reef")],
    [example("overstocked-75"), "--crew", "-10 blue-leg-hermit"],
    [example("volume-only")],
  ])("of %s fits 80 columns, and each word of chance has its number", async (...argv) => {
    const { out } = await run(...argv, ...FEW);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    const flat = out.replace(/\s+/g, " ");
    for (const [word] of flat.matchAll(LIKELY)) expect(flat).toMatch(new RegExp(`${word}, \\d+ of 20`));
    for (const [, word, n] of flat.matchAll(
      /(rarely|seldom|about even|usually|nearly always), (\d+) of 20/g,
    )) {
      expect(word).toBe(chanceWord(Number(n)));
    }
    expect(flat).not.toMatch(/\b(safe|perfect|guaranteed|oops|please|invalid|sorry)\b/i);
  });

  test("begins with the finding, after the heading", async () => {
    const { out } = await run(example("overstocked-75"), ...FEW);
    expect(out.split("\n\n")[1]!.replace(/\s+/g, " ")).toMatch(
      /^Half or more of .*astraea.* starve within 90 days: /,
    );
  });

  test("a tank of which only the water is known: not enough data, and what it takes", async () => {
    const { out } = await run(example("volume-only"), ...FEW);
    expect(out.split("\n\n")[1]).toMatch(/^Not enough data/);
    expect(out.replace(/\s+/g, " ")).toContain(
      "* not enough data: a typical tank's chance, not yet yours. It takes the tank's age or an ammonia test",
    );
  });

  test("every row of grains has twenty, as many solid as it says", async () => {
    const { out } = await run(example("first-reef"), ...FEW);
    const rows = [...out.matchAll(/((?:[●○]{5} ){4}) ?(\d+)/gu)];
    expect(rows.length).toBeGreaterThan(3);
    for (const [, grains = "", n] of rows) {
      expect(grains.replace(/ /g, "")).toHaveLength(20);
      expect(grains.split("●").length - 1).toBe(Number(n));
    }
  });
});

describe("--plan", () => {
  test("brings the waves' animals", async () => {
    const { with_plan, as_it_is } = await data(example("first-reef"), "--plan");
    expect(with_plan).toBe(true);
    expect(as_it_is.kinds.length).toBeGreaterThan(1);
  });
});

describe("ends", () => {
  test("usage with 2, what can't be read with 65, no file with 66", async () => {
    const days = await run(example("first-reef"), "--days", "3");
    expect(days.error).toBeInstanceOf(CommanderError);
    const feed = await run(example("first-reef"), "--feed", "lots");
    expect(feed.error).toBeInstanceOf(Refusal); // its exit code: checks/journeys/cli.test.ts
    expect(feed.out).toBe("");
    const none = await run("no-such-file.yaml");
    expect((none.error as CliError).exitCode).toBe(EXIT.inputMissing);
  });
});
