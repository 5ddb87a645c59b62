import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { type WaterOutput, waterOutput } from "../../contract/output/water.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { command } from "./water.ts";

const same = (text: string) => text;
const quiet = {
  talk: () => {},
  progress: () => {},
  bold: same,
  dim: same,
  canAsk: false,
  today: "2026-06-15",
};

async function run(...argv: string[]): Promise<string> {
  const lines: string[] = [];
  const io: Io = { ...quiet, out: (text) => lines.push(text), width: 80 };
  await command(io).exitOverride().parseAsync(argv, { from: "user" });
  return lines.join("\n");
}

const json = async (...argv: string[]): Promise<WaterOutput> => JSON.parse(await run(...argv, "--json"));
const DENSITY = "density_kg_per_m3";
const reef = ["--salinity", "35", "--temperature", "25"];

async function refusal(...argv: string[]): Promise<CliError> {
  try {
    await run(...argv);
  } catch (error) {
    if (error instanceof CliError) return error;
    throw error;
  }
  throw new Error("was not refused");
}

describe("the data", () => {
  const schemaFile = join(import.meta.dirname, "../../../docs/schemas/water.schema.json");
  const published = z.fromJSONSchema(JSON.parse(readFileSync(schemaFile, "utf8")));

  test.each([
    [reef],
    [[...reef, "--ph", "8.2"]],
    [[...reef, "--ph", "8.2", "--ph-scale", "total", "--tan", "0.5 NH3", "--altitude", "1500"]],
    [["--specific-gravity", "1.025", "--sg-reference", "20/20", "--temperature", "24-26", "--ph", "8-8.2"]],
    [["--salinity", "12 psu", "--temperature", "41", "--tan", "<0.25 mg/L as N", "--ph", "7.9"]],
  ])("%j keeps to the published schema", async (argv) => {
    const output = await json(...argv);
    expect(() => waterOutput.parse(output)).not.toThrow();
    expect(() => published.parse(output)).not.toThrow();
    expect(published.safeParse({ ...output, density_kg_per_m3: "1023" }).success).toBe(false);
  });

  test("figures are those of the engine, each with a band around it, confidence and sources", async () => {
    const output = await json(...reef, "--ph", "8.2", "--ph-scale", "nbs", "--tan", "0.5 mg/L as N");
    expect(output.density_kg_per_m3).toBeCloseTo(1023.3412, 4);
    expect(output.specific_gravity_25_25).toBeCloseTo(1.02637, 5);
    expect(output.conductivity_mS_per_cm).toBeCloseTo(53.071, 3);
    expect(output.oxygen_saturation_mg_per_l).toBeCloseTo(6.771, 3);
    expect(output.unionised_ammonia_fraction).toBeCloseTo(0.0616, 4);
    expect(output.ph_total).toBeCloseTo(8.063, 3);
    expect(output.unionised_ammonia_mg_n_per_l).toBeCloseTo(0.0308, 4);
    expect(output.ammonia_limits).toMatchObject({ against_chronic: "either", against_acute: "below" });
    for (const [key, { low, high }] of Object.entries(output.bands)) {
      const value = output[key as keyof WaterOutput] as number;
      expect(low, key).toBeLessThan(value);
      expect(high, key).toBeGreaterThan(value);
      expect(output.confidence[key]).toBe("fitted");
      expect(output.sources[key]?.length).toBeGreaterThan(0);
    }
  });

  test("without a pH the ammonia figures are null, and a note says why", async () => {
    const output = await json(...reef, "--tan", "0.5 mg/L as N");
    expect(output).toMatchObject({ ph: null, ph_total: null, unionised_ammonia_fraction: null });
    expect(output).toMatchObject({ unionised_ammonia_mg_n_per_l: null, ammonia_limits: null });
    expect(output.notes.join(" ")).toContain("Without --ph");
  });

  test("not saying the pH scale widens the band; a range typed goes through", async () => {
    const key = "unionised_ammonia_fraction";
    const stated = await json(...reef, "--ph", "8.2", "--ph-scale", "nbs");
    const unstated = await json(...reef, "--ph", "8.2");
    expect(unstated[key]).toBe(stated[key]);
    expect(unstated.bands[key]?.high).toBeGreaterThan(stated.bands[key]?.high ?? 1);
    const { bands } = await json("--salinity", "34-36", "--temperature", "25");
    expect(bands[DENSITY]?.low).toBeLessThan(1022.6);
    expect(bands[DENSITY]?.high).toBeGreaterThan(1024.09);
  });

  test("beyond the equations' own range the figures are marked low in confidence", async () => {
    const { confidence, notes } = await json("--salinity", "43 psu (checked)", "--temperature", "25");
    expect(confidence[DENSITY]).toBe("low");
    expect(notes.join(" ")).toContain("Rough");
  });
});

describe("one water, read by different instruments", () => {
  test.each([
    [["--salinity", "1.02637 sg 25/25"], 35],
    [["--salinity", "53.071 mS/cm"], 35],
    [["--salinity", "3.5 %"], 35],
    [["--specific-gravity", "1.02660", "--sg-reference", "20/20"], 35],
    [["--specific-gravity", "1.02459 sg", "--sg-reference", "60F/60F", "--hydrometer"], 35],
    [["--specific-gravity", "1.02459", "--sg-reference", "60F/60F", "--hydrometer"], 35],
    [["--conductivity", "53.071"], 35],
    [["--conductivity", "53071 uS/cm"], 35],
  ])("%j is salinity %d", async (argv, salinity) => {
    expect((await json(...argv, "--temperature", "25")).salinity_psu).toBeCloseTo(salinity, 1);
  });

  test("a specific gravity without its scale has a wider band, and a note that asks for it", async () => {
    const argv = ["--specific-gravity", "1.025", "--temperature", "25"];
    const [bare, scaled] = [await json(...argv), await json(...argv, "--sg-reference", "25/25")];
    const width = ({ bands }: WaterOutput) => (bands[DENSITY]?.high ?? 0) - (bands[DENSITY]?.low ?? 0);
    expect(width(bare)).toBeGreaterThan(width(scaled));
    expect(bare.notes.join(" ")).toContain("--sg-reference");
    expect(scaled.notes.join(" ")).not.toContain("--sg-reference");
  });

  test("a meter that does not correct is read at the water's own temperature", async () => {
    const argv = ["--conductivity", "47.9 mS/cm", "--conductivity-at", "sample", "--temperature", "20"];
    expect((await json(...argv)).salinity_psu).toBeCloseTo(35, 1);
  });

  test("Fahrenheit, kelvin and feet", async () => {
    expect((await json("--salinity", "35", "--temperature", "77F")).temperature_c).toBe(25);
    expect((await json("--salinity", "35", "--temperature", "298.15 K")).temperature_c).toBeCloseTo(25, 9);
    expect((await json(...reef, "--altitude", "5000 ft")).altitude_m).toBeCloseTo(1524, 6);
  });
});

describe("what is refused", () => {
  test.each([
    [["--salinity", "35", "--temperature", "77"], /boil.*77 F \(25.0 C\)/],
    [["--salinity", "35", "--temperature", "-5"], /0 to 45/],
    [["--salinity", "1.025", "--temperature", "25"], /specific gravity 1.025/],
    [["--salinity", "53", "--temperature", "25"], /conductivity, 53 mS\/cm/],
    [["--salinity", "3.5", "--temperature", "25"], /per cent/],
    [["--salinity", "0", "--temperature", "25"], /[Ff]resh water/],
    [["--salinity", "53 psu (checked)", "--temperature", "25"], /salinity must be 0.* psu/],
    [["--specific-gravity", "1.06", "--temperature", "25"], /1.000 to 1.045/],
    [
      ["--specific-gravity", "35 psu", "--sg-reference", "60F/60F", "--hydrometer", "--temperature", "25"],
      /the instrument shows/,
    ],
    [
      ["--conductivity", "35 ppt", "--conductivity-at", "sample", "--temperature", "25"],
      /the instrument shows/,
    ],
    [
      ["--conductivity", "60", "--conductivity-at", "sample", "--temperature", "20"],
      /--salinity "\d\d\.\d\d psu \(checked\)"/,
    ],
    [[...reef, "--ph", "81"], /Did you mean 8.1/],
    [[...reef, "--tan", "0.5"], /as NH3/],
    [[...reef, "--altitude", "9000"], /5,500/],
  ])("%j: exit 65, saying what is allowed", async (argv, why) => {
    const { exitCode, lines } = await refusal(...argv);
    expect(exitCode).toBe(EXIT.badData);
    expect(lines.join("\n")).toMatch(why);
  });

  test("a choice on offer can be typed as it stands", async () => {
    const { lines } = await refusal("--salinity", "1.025", "--temperature", "25");
    const typed = /--salinity "([^"]+)"/.exec(lines[2] ?? "")?.[1] ?? "";
    expect((await json("--salinity", typed, "--temperature", "25")).salinity_psu).toBeCloseTo(33.19, 2);
  });

  test.each([
    [["--temperature", "25"], /how salty/],
    [["--salinity", "35"], /how warm/],
    [["--salinity", "35", "--conductivity", "53", "--temperature", "25"], /same thing/],
    [["--specific-gravity", "1.025", "--hydrometer", "--temperature", "25"], /printed on the stem/],
    [[...reef, "--hydrometer"], /--specific-gravity/],
    [[...reef, "--conductivity-at", "sample"], /--conductivity was read/],
    [
      ["--conductivity", "53", "--temperature", "25", "--sg-reference", "20/20"],
      /--specific-gravity was read/,
    ],
  ])("%j: exit 2, a flag is missing or one too many", async (argv, why) => {
    const { exitCode, lines } = await refusal(...argv);
    expect(exitCode).toBe(EXIT.usage);
    expect(lines.join("\n")).toMatch(why);
  });
});

describe("for people", () => {
  test("value, range, how and by whose work, within the width", async () => {
    const text = await run(...reef, "--ph", "8.2", "--tan", "0.5 mg/L as N");
    expect(text).toMatch(/^Water of salinity 35 psu, 25 C, pH 8.2 \(NBS scale\)/);
    expect(text).toMatch(/density +1023.34 +1023.33 to 1023.35 kg\/m3/);
    expect(text).toMatch(/un-ionised share of ammonia +6.2 +3.8 to 9.8 %/);
    expect(text).toContain("estimates");
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("ammonia that could kill comes with what to do, before anything else is noted", async () => {
    const { notes } = await json(...reef, "--ph", "8.2", "--tan", "3 mg/L as N");
    expect(notes[0]).toMatch(/^Danger.*act today/);
  });

  test("help opens with examples", async () => {
    let help = "";
    const shown = command({ ...quiet, out: () => {}, width: 80 })
      .exitOverride()
      .configureOutput({ writeOut: (text) => (help += text) });
    await expect(shown.parseAsync(["--help"], { from: "user" })).rejects.toMatchObject({ exitCode: 0 });
    expect(help).toMatch(/^Examples:\n {2}grazewell water/);
  });
});
