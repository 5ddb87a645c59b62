/** Lines from a person at a terminal, or from a pipe. */
import { createInterface } from "node:readline/promises";
import { isatty } from "node:tty";
import { readStandardInput } from "../stdin.ts";
import type { Ask } from "./interview.ts";

/** Asks on standard error and reads standard input; Ctrl-C ends at once, Ctrl-D ends the questions. */
export async function withTerminal<T>(work: (ask: Ask) => Promise<T>): Promise<T> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  const ended = new Promise<null>((resolve) => terminal.once("close", () => resolve(null)));
  terminal.on("SIGINT", () => {
    process.stderr.write("\nNothing was written.\n");
    process.exit(130);
  });
  try {
    return await work((prompt) => Promise.race([terminal.question(prompt), ended]));
  } finally {
    terminal.close();
  }
}

/** Eight answers are shorter by far. */
const MOST_BYTES = 65_536;

/** Lines waiting on standard input; none where it is a terminal or nothing was piped. */
export function pipedLines(): string[] {
  if (isatty(0)) return [];
  try {
    return readStandardInput(MOST_BYTES)
      .toString("utf8")
      .replace(/\n$/, "")
      .split("\n")
      .map((line) => line.trim())
      .filter((_, i, all) => all.length > 1 || all[i] !== "");
  } catch {
    // A closed or absent standard input holds no answers.
    return [];
  }
}
