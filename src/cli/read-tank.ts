/**
 * The one way a command gets its tank: from a file or standard input, through the contract, with the catalogue's
 * animals. What was read and is worth saying goes to standard error; what is wrong ends the command, all of it at once.
 */
import { closeSync, fstatSync, openSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { findAnimal } from "../catalogue/index.ts";
import type { Preferences } from "../contract/quantity/preferences.ts";
import type { Finding, Notice } from "../contract/tank-file/finding.ts";
import { readTankFile, type TankFileResult } from "../contract/tank-file/read.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { CliError, EXIT, type Io } from "./io.ts";
import { readStandardInput } from "./stdin.ts";

export interface ReadTankOptions {
  /** Leave out how plain values were read; dangers, and animals that nobody reckons with, are told all the same. */
  readonly quiet?: boolean;
  readonly preferences?: Partial<Preferences>;
}

/** Kinds of message that no command keeps to itself. */
const ALWAYS_TOLD: ReadonlySet<string> = new Set(["DANGER", "NOTFOUND"]);

/** Nothing of a tank file's kind is longer; more is not even read. */
const MOST_BYTES = 16 * 1024 * 1024;

export function readTank(file: string, io: Io, options: ReadTankOptions = {}): TankFacts {
  return takenTank(file, readTankResult(file, io, options.preferences), io, options);
}

/** The facts of a result, what was read told; `label` begins each message. @throws CliError with every finding */
export function takenTank(
  file: string,
  result: TankFileResult,
  io: Io,
  options: ReadTankOptions = {},
): TankFacts {
  if (!result.ok) throw new CliError(EXIT.badData, findingLines(file, result.findings));
  for (const notice of result.notices) {
    if (options.quiet !== true || ALWAYS_TOLD.has(notice.kind)) io.talk(noticeLine(file, notice));
  }
  return result.facts;
}

/** The same without an opinion on findings: for `check`, which prints them as its answer. */
export function readTankResult(file: string, io: Io, preferences: Partial<Preferences> = {}): TankFileResult {
  return readTankFile(readText(file), { today: io.today, findAnimal, preferences });
}

export function findingLines(file: string, findings: readonly Finding[]): string[] {
  return findings.flatMap(({ line, message, choices }) => {
    const fixes = choices.flatMap(({ label, text }) =>
      text === null ? [] : [`${text}${aside(text, label)}`],
    );
    return [`${place(file, line)} ${message.text}`, ...fixes.map((fix) => `    write: ${fix}`)];
  });
}

/** What a fix's label adds to the text that is to be written. */
function aside(text: string, label: string): string {
  const more = label.startsWith(text) ? label.slice(text.length).trim() : `(${label})`;
  return more === "" ? "" : `  ${more}`;
}

const noticeLine = (file: string, { line, text }: Notice): string => `${place(file, line)} ${text}`;

function place(file: string, line: number | null): string {
  const name = file === "-" ? "standard input" : basename(file);
  return line === null ? `${name}:` : `${name}:${line}:`;
}

function readText(file: string): string {
  const bytes = readBytes(file);
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return bytes.toString("utf16le");
  return bytes.toString("utf8");
}

function readBytes(file: string): Buffer {
  try {
    if (file === "-") return readStandardInput(MOST_BYTES);
    const handle = openSync(file, "r");
    try {
      const { size } = fstatSync(handle);
      if (size > MOST_BYTES) {
        throw new CliError(EXIT.badData, [
          `${basename(file)}: Tank file: must be 1 MiB or less; this one has ${Math.round(size / 1024 / 1024)} MiB`,
        ]);
      }
      return readFileSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    if (error instanceof CliError) throw error;
    throw new CliError(EXIT.inputMissing, [`Tank file "${file}": ${whyUnread(error)}`]);
  }
}

function whyUnread(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === "ENOENT") return "there is no such file. `grazewell ask -o tank.yaml` makes one";
  if (code === "EISDIR") return "is a folder, not a file";
  if (code === "EACCES" || code === "EPERM") return "can't be read with your rights";
  return `can't be read (${code ?? String(error)})`;
}
