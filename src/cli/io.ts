/**
 * How the command line talks: data on standard output, words to the person on standard error, one table of
 * exit codes. Colour only for people who can see it and have not said no.
 */
import { isatty } from "node:tty";

/** Exit codes, the numbers of BSD sysexits where one fits. */
export const EXIT = {
  done: 0,
  usage: 2,
  badData: 65,
  inputMissing: 66,
  unreachable: 69,
  ourBug: 70,
  cannotWrite: 73,
  tryAgain: 75,
} as const;

/** A failure that the person can mend: ends the program with its code, its lines on standard error. */
export class CliError extends Error {
  readonly exitCode: number;
  readonly lines: readonly string[];
  constructor(exitCode: number, lines: readonly string[]) {
    super(lines.join("\n"));
    this.exitCode = exitCode;
    this.lines = lines;
  }
}

export interface Io {
  /** Data, to standard output; adds the line break. */
  readonly out: (text: string) => void;
  /** Words to the person, to standard error; adds the line break. */
  readonly talk: (text: string) => void;
  /** One line that is written over: progress. Silent when standard error is no terminal. */
  readonly progress: (text: string | null) => void;
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  /** Columns to wrap at, 40 to 100. */
  readonly width: number;
  /** True when questions may be asked. */
  readonly canAsk: boolean;
  /** Today, ISO date in the local zone. `GRAZEWELL_TODAY` overrules it, for tests and repeatable sheets. */
  readonly today: string;
}

/** The real thing: the process's own streams. */
export function processIo(): Io {
  const { stdout, stderr, env } = process;
  const colour =
    stdout.isTTY === true &&
    (env["NO_COLOR"] === undefined || env["NO_COLOR"] === "") &&
    env["TERM"] !== "dumb";
  const sgr = (on: number, off: number) => (text: string) =>
    colour ? `\u001b[${on}m${text}\u001b[${off}m` : text;
  let shown = false;
  return {
    out: (text) => void stdout.write(`${text}\n`),
    talk: (text) => {
      if (shown) stderr.write("\r\u001b[K");
      shown = false;
      stderr.write(`${text}\n`);
    },
    progress: (text) => {
      if (stderr.isTTY !== true) return;
      if (text !== null) stderr.write(`\r\u001b[K${text}`);
      else if (shown) stderr.write("\r\u001b[K");
      shown = text !== null;
    },
    bold: sgr(1, 22),
    dim: sgr(2, 22),
    width: Math.max(40, Math.min(100, stdout.columns ?? 80)),
    canAsk: isatty(0) && stderr.isTTY === true,
    today: today(env["GRAZEWELL_TODAY"]),
  };
}

function today(told: string | undefined): string {
  if (told === undefined || told === "") return localDate(new Date());
  const time = Date.parse(told);
  if (/^\d{4}-\d\d-\d\d$/.test(told) && new Date(time).toJSON()?.startsWith(told)) return told;
  throw new CliError(EXIT.usage, [`GRAZEWELL_TODAY "${told}": must be a date such as 2026-06-15`]);
}

/** The day where this machine stands, ISO. */
export function localDate(now: Date): string {
  const two = (n: number) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
