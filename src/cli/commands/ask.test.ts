import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { keptIo } from "../../../checks/kit/io.ts";
import type { Entries } from "../../answers/questions/answer.ts";
import { QUESTIONS } from "../../answers/questions/questions.ts";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { tankFileSchema } from "../../contract/tank-file/schema.ts";
import { interview } from "../ask/interview.ts";
import { tankFileText } from "../ask/write.ts";
import { CliError, EXIT } from "../io.ts";
import { readTank } from "../read-tank.ts";
import { command } from "./ask.ts";

const { io, printed, said } = keptIo();
const context = { preferences: { ...NO_PREFERENCES, locale: "en-GB" }, today: io.today };

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "ask-"));
  said.length = 0;
  printed.length = 0;
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Answers the questions from a script; what is left over at the end is a fault of the test. */
async function scripted(replies: readonly string[]): Promise<Entries> {
  const left = [...replies];
  const entries = await interview(async () => left.shift() ?? null, io, {}, context);
  expect(left).toEqual([]);
  return entries;
}

function factsFrom(entries: Entries) {
  const file = join(folder, "t.yaml");
  writeFileSync(file, tankFileText(entries, context));
  return readTank(file, io);
}

const run = (...argv: string[]) =>
  command(io)
    .exitOverride()
    .parseAsync(["--no-input", ...argv], { from: "user" });

async function refusal(...argv: string[]): Promise<CliError> {
  try {
    await run(...argv);
  } catch (error) {
    if (error instanceof CliError) return error;
    throw error;
  }
  throw new Error("was not refused");
}

describe("the interview", () => {
  test("eight Enters make a file that can be used", async () => {
    const facts = factsFrom(await scripted(Array.from({ length: QUESTIONS.length }, () => "")));
    expect(facts.waterL).toMatchObject({ low: 40, high: 300 });
    expect(said.join("\n").match(/Not sure: /g)).toHaveLength(8);
  });

  test("every question says why, gives an example that reads without a doubt, and takes 'not sure'", async () => {
    await scripted(QUESTIONS.map(() => "not sure"));
    for (const { why, example } of QUESTIONS)
      expect(said.join(" ").replace(/\s+/g, " ")).toContain(why.slice(0, 40).trim() || example);
    // The first example of each: "113, or 30 US gal" offers several.
    const examples = QUESTIONS.map(({ example }) => example.split(", or ")[0] ?? "");
    factsFrom(await scripted(examples));
  });

  test("a doubtful answer is asked again with readings; a number picks one, the rest is not typed again", async () => {
    const facts = factsFrom(
      await scripted([
        "55 gal",
        "2",
        "",
        "",
        "2 clownfish, 3 turbo",
        "2",
        "sand 4 fine",
        "1",
        "",
        "temperature 77, nitrate 5",
        "1",
        "1",
        "no",
      ]),
    );
    expect(facts.waterL.central).toBeCloseTo(250.035, 3);
    expect(facts.present).toContainEqual({ id: "smooth-turbo-snail", count: 3, on: null });
    expect(facts.present).toContainEqual({ id: "clownfish", count: 2, on: null });
    expect(facts.sandDepthMm.central).toBe(40);
    expect(facts.temperatureC.central).toBe(25);
    expect(facts.readings[0]?.value.central).toBeCloseTo(5 / 4.4266, 3);
  });

  test("a refused answer is asked again, and says what is allowed", async () => {
    const facts = factsFrom(await scripted(["-200", "200", "", "", "", "", "", "", ""]));
    expect(facts.waterL.central).toBe(200);
    expect(said.join("\n")).toContain("must be more than 0 L");
  });

  test("the end of input keeps what was answered", async () => {
    expect(await scripted(["113", "1 May 2026, dry"])).toEqual({
      water_l: "113",
      first_seawater_on: "2026-05-01",
      rock: { start: "dry" },
    });
  });

  test.each([
    [
      "a patches, hair algae a trace, leftovers 20 %",
      { film_glass: "patches", hair_algae: "trace", leftovers: "patches" },
    ],
    ["nothing", { film_glass: "none", film_rock: "none", hair_algae: "none", detritus_sand: "none" }],
  ])("growths as %s", async (text, sightings) => {
    expect(factsFrom(await scripted(["113", "", text, "", "", "", "", ""])).sightings).toEqual(sightings);
  });

  test("trouble and medicine are told apart", async () => {
    const rest = ["113", "", "", "", "", "", ""];
    expect(factsFrom(await scripted([...rest, "a dead fish"])).trouble).toBe("a dead fish");
    expect(factsFrom(await scripted([...rest, "copper since Monday"])).medicines).toEqual([
      "copper since Monday",
    ]);
    expect(factsFrom(await scripted([...rest, "no"])).trouble).toBeNull();
  });
});

describe("without a terminal", () => {
  test("flags are enough, and the file goes to standard output", async () => {
    await run("--water", "30 US gal", "--floor", "bare");
    expect(printed.join("\n")).toContain("water_l: 30 US gal");
  });

  test("--json prints a tank file that keeps to the schema", async () => {
    await run("--water", "30 US gal", "--animals", "2 clownfish", "--json");
    expect(tankFileSchema.parse(JSON.parse(printed.join("\n"))).water_l).toBe("30 US gal");
  });

  test("no answer at all is a matter of usage", async () => {
    expect((await refusal()).exitCode).toBe(EXIT.usage);
  });

  test("a doubtful flag is refused with its readings, all of them at once", async () => {
    const { exitCode, lines } = await refusal("--water", "55 gal", "--floor", "sand 4");
    expect(exitCode).toBe(EXIT.badData);
    expect(lines.filter((line) => line.startsWith("--"))).toHaveLength(2);
    expect(lines).toContain("    say: 55 US gal");
  });

  test("a file is not written over unless forced", async () => {
    const file = join(folder, "mine.yaml");
    writeFileSync(file, "precious");
    expect((await refusal("--water", "113", "-o", file)).exitCode).toBe(EXIT.cannotWrite);
    expect(readFileSync(file, "utf8")).toBe("precious");
    await run("--water", "113", "-o", file, "--force");
    expect(readTank(file, io).waterL.central).toBe(113);
  });

  test("a folder that is not there is said", async () => {
    expect((await refusal("--water", "113", "-o", join(folder, "no/such.yaml"))).exitCode).toBe(
      EXIT.cannotWrite,
    );
  });
});
