/**
 * Everything that must hold before a change counts: `npm run check`. Runs every step even when an earlier one
 * failed, shows the words of those that failed, and ends with one plain line: how many passed, how many failed.
 * A step counts as one; the tests count one each.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { type Count, countTests, NOTHING } from "./count-tests.ts";

const root = join(import.meta.dirname, "..");
const report = join(root, "node_modules/.cache/tests.json");

const STEPS: readonly (readonly [name: string, command: string, ...words: string[]])[] = [
  ["build", "sh", "tools/setup.sh", "--build"],
  ["types", "tsc", "-p", "tsconfig.json", "--noEmit"],
  ["types of the engine, without a browser or Node", "tsc", "-p", "src/engine/tsconfig.json"],
  ["lint", "biome", "check", ".", "--colors=off"],
  ["layers", "node", "tools/layers.ts"],
  ["dead code", "knip", "--no-progress"],
  ["licences", "node", "tools/licences.ts"],
];

function step(name: string, command: string, words: readonly string[]): Count {
  const began = performance.now();
  const { status, stdout, stderr } = spawnSync(command, words, {
    cwd: root,
    encoding: "utf8",
    maxBuffer: 2 ** 28,
  });
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  console.log(`${status === 0 ? "passed" : "FAILED"}  ${name}, ${seconds} s`);
  if (status === 0) return { passed: 1, failed: 0 };
  console.log(`${stdout}${stderr}`);
  return { passed: 0, failed: 1 };
}

/** The tests, their words as they come; the count is read from the runner's own report. */
function tests(): Count {
  mkdirSync(join(report, ".."), { recursive: true });
  rmSync(report, { force: true });
  const words = ["run", "--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const { status } = spawnSync("vitest", words, { cwd: root, stdio: ["ignore", "inherit", "inherit"] });
  let count: Count;
  try {
    count = countTests(JSON.parse(readFileSync(report, "utf8")));
  } catch {
    count = NOTHING;
  }
  // A runner that fails without naming a test, or that ran none, has failed.
  const silent = count.failed === 0 && (status !== 0 || count.passed === 0);
  return silent ? { ...count, failed: 1 } : count;
}

process.env["PATH"] = `${join(root, "node_modules/.bin")}:${process.env["PATH"] ?? ""}`;
const counts = [...STEPS.map(([name, command, ...words]) => step(name, command, words)), tests()];
const sum = (of: keyof Count) => counts.reduce((total, count) => total + count[of], 0);
console.log(`${sum("passed")} passed, ${sum("failed")} failed`);
process.exitCode = sum("failed") === 0 ? 0 : 1;
