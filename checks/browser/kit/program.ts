/**
 * The built program, serving from a store of its own: started as a keeper starts it, found by the address it prints,
 * ended as Ctrl-C ends it. The day is that of the examples, so that every run sees the same pages.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ENVIRONMENT, LAUNCHER, ROOT } from "../../journeys/command.ts";

export interface Program {
  /** Without a slash at the end. */
  readonly address: string;
  readonly stop: () => Promise<void>;
}

const START_SECONDS = 200;

/** The first address in what it says, or how it ended. */
function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    const late = setTimeout(
      () => reject(new Error(`no address in ${START_SECONDS} s: ${said}`)),
      START_SECONDS * 1000,
    );
    const hear = (chunk: Buffer) => {
      said += chunk.toString("utf8");
      const address = /http:\/\/[\w.[\]:]+\d/.exec(said)?.[0];
      if (address === undefined) return;
      clearTimeout(late);
      resolve(address);
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", hear);
    child.once("exit", (code) => {
      clearTimeout(late);
      reject(new Error(`ended with ${code} before it served: ${said}`));
    });
  });
}

/** Serves from a new folder's store; `prepare` may put something in it first. */
export async function startProgram<T>(
  prepare: (place: string) => Promise<T>,
  words: readonly string[] = [],
): Promise<Program & { readonly prepared: T }> {
  const folder = mkdtempSync(join(tmpdir(), "grazewell-browser-"));
  const place = join(folder, "store.db");
  const prepared = await prepare(place);
  const child = spawn(LAUNCHER, ["serve", "--port", "0", "--store", place, ...words], {
    cwd: ROOT,
    env: ENVIRONMENT,
    stdio: ["ignore", "pipe", "pipe"],
  });
  const ended = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  const address = await addressOf(child);
  return {
    address,
    prepared,
    stop: async () => {
      child.kill("SIGINT");
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
