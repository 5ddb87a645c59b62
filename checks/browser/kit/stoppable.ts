/**
 * The built program on one address and one store, stopped as a power cut stops it and started again: for checks in
 * which the server is gone for a while.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ENVIRONMENT, ROOT } from "../../journeys/command.ts";

export interface Stoppable<T> {
  readonly address: string;
  readonly place: string;
  readonly prepared: T;
  /** At once, without a word. */
  readonly stop: () => Promise<void>;
  /** Resolves when it answers. */
  readonly start: () => Promise<void>;
  readonly end: () => Promise<void>;
}

/** Built by the time that checks run; its launcher would look at all sources at every start. */
const PROGRAM = join(ROOT, "dist/cli/main.js");
const ANSWERS_IN_MS = 200_000;

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (address === null || typeof address === "string") throw new Error("no free port");
  return address.port;
}

/** @param environment of the program: its day is the examples' where nothing else is said */
export async function startStoppable<T>(
  prepare: (place: string) => Promise<T>,
  environment: NodeJS.ProcessEnv = ENVIRONMENT,
): Promise<Stoppable<T>> {
  const folder = mkdtempSync(join(tmpdir(), "grazewell-stoppable-"));
  const place = join(folder, "store.db");
  const prepared = await prepare(place);
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  let child: ChildProcess | null = null;
  const stop = async () => {
    const running = child;
    child = null;
    if (running === null) return;
    const ended = new Promise<void>((resolve) => running.once("exit", () => resolve()));
    running.kill("SIGKILL");
    await ended;
  };
  const start = async () => {
    child ??= spawn(process.execPath, [PROGRAM, "serve", "--port", String(port), "--store", place], {
      cwd: ROOT,
      env: environment,
      stdio: "ignore",
    });
    const late = Date.now() + ANSWERS_IN_MS;
    while (!(await answers(address))) {
      if (Date.now() > late) throw new Error(`no answer at ${address} in ${ANSWERS_IN_MS / 1000} s`);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  await start();
  const end = async () => {
    await stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { address, place, prepared, stop, start, end };
}

async function answers(address: string): Promise<boolean> {
  try {
    return (await fetch(`${address}/something-is-wrong`)).ok;
  } catch {
    return false;
  }
}
