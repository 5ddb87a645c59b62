/**
 * The balance against reference traces: eight invented scenarios integrated by two other implementations
 * (explicit Dormand-Prince at 1e-11; Radau at 1e-10) of the same equations. Recorded in model-traces.json;
 * how they were made stands in that file. Pass rule: its own `compare` line.
 *
 * Run as a keeper of another implementation would run it, by the command: in a process of its own the kernel is
 * ten times as fast as under the test runner, which rewrites every import.
 */
import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { beforeAll, describe, expect, test } from "vitest";
import type { Scenario } from "../../src/engine/balance/trace.ts";

interface Recorded extends Scenario {
  readonly daily: Record<string, number[]>;
  readonly outsideAtEnd: Record<string, number>;
}
interface Answer {
  readonly id: string;
  readonly daily: Record<string, number[]>;
  readonly outsideAtEnd: Record<string, number>;
  readonly last_halving_changed: number;
  readonly guarded: number;
}
const FILE = fileURLToPath(new URL("./model-traces.json", import.meta.url));
const COMMAND = fileURLToPath(new URL("../../src/cli/trace.ts", import.meta.url));
const { scenarios } = JSON.parse(readFileSync(FILE, "utf8")) as { scenarios: Recorded[] };

const answers = new Map<string, Answer>();
beforeAll(async () => {
  const options = { maxBuffer: 64 << 20, timeout: 280_000 };
  const { stdout } = await promisify(execFile)(process.execPath, [COMMAND, FILE], options);
  for (const answer of (JSON.parse(stdout) as { scenarios: Answer[] }).scenarios)
    answers.set(answer.id, answer);
});

describe.each(scenarios)("$id", ({ id, daily, outsideAtEnd }) => {
  test("every pool on every day agrees to 1e-6", () => {
    let worst = 0;
    for (const [name, reference] of Object.entries(daily)) {
      const most = reference.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
      expect(answers.get(id)!.daily[name]).toHaveLength(reference.length);
      reference.forEach((value, day) => {
        const allowed = 1e-6 * Math.abs(value) + 1e-6 * most;
        const off = Math.abs(answers.get(id)!.daily[name]![day]! - value);
        if (off > 0) worst = Math.max(worst, off / allowed);
      });
    }
    expect(worst).toBeLessThan(1);
  });

  test("the ledger's exchanges with outside places agree", () => {
    for (const [place, value] of Object.entries(outsideAtEnd)) {
      const digits = value === 0 ? 6 : 5 - Math.floor(Math.log10(Math.abs(value))) - 1;
      expect(answers.get(id)!.outsideAtEnd[place] ?? 0, place).toBeCloseTo(value, digits);
    }
  });

  test("the step was fine enough, and the guard never had to act", () => {
    expect(answers.get(id)!.last_halving_changed).toBeLessThan(1e-6);
    expect(answers.get(id)!.guarded).toBe(0);
  });
});
