/** Runs the built `grazewell` as its users do: a process, with pipes for a terminal. */
import { type SpawnSyncReturns, spawnSync } from "node:child_process";
import { join } from "node:path";

export const ROOT = join(import.meta.dirname, "../..");
/** Ends what hangs. */
const PATIENCE_MS = 280_000;
export const LAUNCHER = join(ROOT, "grazewell");

/** The day the examples speak of, no colour asked for or against. */
export const ENVIRONMENT: NodeJS.ProcessEnv = {
  ...process.env,
  GRAZEWELL_TODAY: "2026-06-15",
  NO_COLOR: undefined,
};

export function grazewell(
  words: readonly string[],
  given: { input?: string } = {},
): SpawnSyncReturns<string> {
  return spawnSync(LAUNCHER, words, {
    cwd: ROOT,
    env: ENVIRONMENT,
    encoding: "utf8",
    input: given.input ?? "",
    timeout: PATIENCE_MS,
  });
}

/** A line of shell with `grazewell` in its path: for redirections and pipes. */
export function shell(line: string): SpawnSyncReturns<string> {
  const env = { ...ENVIRONMENT, PATH: `${ROOT}:${ENVIRONMENT["PATH"]}` };
  return spawnSync("bash", ["-c", line], {
    cwd: ROOT,
    env,
    encoding: "utf8",
    input: "",
    timeout: PATIENCE_MS,
  });
}
