import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";

const COMMAND = fileURLToPath(new URL("./trace.ts", import.meta.url));
const RECORDED = fileURLToPath(new URL("../../checks/recorded/model-traces.json", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "grazewell-trace-"));
afterAll(() => rmSync(folder, { recursive: true }));

interface Json {
  [key: string]: Json;
}
const { scenarios } = JSON.parse(readFileSync(RECORDED, "utf8")) as { scenarios: Json[] };
/** The short carcass scenario, cut to five days, changed and written out. */
function fileWith(change: (scenario: Json) => unknown): string {
  const scenario = structuredClone(scenarios.find(({ id }) => (id as unknown) === "carcass-200")!);
  const file = join(folder, "scenario.json");
  writeFileSync(file, JSON.stringify(change(Object.assign(scenario, { days: 5 })) ?? scenario));
  return file;
}
const trace = (...words: string[]) =>
  spawnSync(process.execPath, [COMMAND, ...words], { encoding: "utf8", timeout: 280_000 });
const setAt = (path: readonly string[], value: unknown) => (scenario: Json) => {
  const parent = path.slice(0, -1).reduce((at, key) => at[key]!, scenario);
  parent[path.at(-1)!] = value as Json;
};

describe("one scenario", () => {
  const { status, stdout, stderr } = trace(fileWith(() => undefined));
  const answer = JSON.parse(stdout) as Record<string, unknown> & { daily: Record<string, number[]> };

  test("its trace alone on standard output, one value a day from day 0", () => {
    expect([status, stderr]).toEqual([0, ""]);
    expect(Object.keys(answer)).toEqual([
      ...["id", "daily", "outsideAtEnd", "step_days", "last_halving_changed", "guarded"],
    ]);
    expect(answer["id"]).toBe("carcass-200");
    for (const values of Object.values(answer.daily)) expect(values).toHaveLength(6);
  });

  test("what it says of its own step", () => {
    expect(answer["last_halving_changed"]).toBeLessThan(1e-6);
    expect(answer["step_days"]).toBeLessThanOrEqual(1 / 64);
    expect(answer["guarded"]).toBe(0);
  });
});

describe("a file of scenarios", () => {
  const list = () => fileWith((scenario) => ({ scenarios: [scenario, { ...scenario, id: "second" }] }));

  test("an array under scenarios, in order", () => {
    const { scenarios: traces } = JSON.parse(trace(list()).stdout) as { scenarios: { id: string }[] };
    expect(traces.map(({ id }) => id)).toEqual(["carcass-200", "second"]);
  });

  test("--id picks one and prints it alone", () => {
    expect((JSON.parse(trace(list(), "--id", "second").stdout) as { id: string }).id).toBe("second");
  });

  test("--id of none is bad data", () => {
    const { status, stderr } = trace(list(), "--id", "third");
    expect(status).toBe(65);
    expect(stderr).toContain("third");
  });
});

describe("what it refuses, naming the key", () => {
  test.each([
    ["scenario.tank.V: must be a finite number; it is missing", setAt(["tank", "V"], undefined)],
    ["scenario.tank.Ag: must be above 0; received 0", setAt(["tank", "Ag"], 0)],
    ["scenario.parameters.kS: must be a finite number", setAt(["parameters", "kS"], "0.2")],
    ["scenario.initial.NO9: must be a pool", setAt(["initial", "NO9"], 1)],
    ["scenario.initial.TAN: must be a finite number; received null", setAt(["initial", "TAN"], null)],
    ["scenario.events[0].kind: must be one of", setAt(["events"], [{ t: 1, kind: "sing" }])],
    ["scenario.events[0].t: must be a finite number", setAt(["events"], [{ kind: "changeFilter" }])],
    [
      "scenario.events[0].pool: must be a pool; received",
      setAt(["events"], [{ t: 1, kind: "dose", pool: "X", mg: 1 }]),
    ],
    ["scenario.events[0].colour: must be an input", setAt(["events"], [{ t: 1, kind: "set", colour: 1 }])],
    [
      "scenario.events[0].species: must be one of the scenario's species",
      setAt(["events"], [{ t: 1, kind: "crewDeath", species: "x", count: 1, found: true }]),
    ],
    ["scenario.days: must be whole days; received 1.5", setAt(["days"], 1.5)],
    ["scenario.species: must be a list", setAt(["species"], {})],
  ])("%s", (message, change) => {
    const { status, stdout, stderr } = trace(fileWith(change));
    expect(stderr).toContain(message);
    expect([status, stdout]).toEqual([65, ""]);
  });

  test("a file that is not there, one that is no JSON, and words that make no sense", () => {
    expect(trace(join(folder, "none.json")).status).toBe(66);
    const file = join(folder, "broken.json");
    writeFileSync(file, "{");
    expect(trace(file).status).toBe(65);
    expect(trace().status).toBe(2);
    expect(trace(file, "--loudly").status).toBe(2);
    expect(trace(file, file).stderr).toContain("Usage: npm run trace -- FILE");
  });
});
