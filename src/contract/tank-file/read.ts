/**
 * The tank file's one reader: text in, facts about a tank or every finding at once out.
 * Animals are known through `findAnimal`, so that the contract needs no catalogue.
 */
import type { TankFacts } from "../../engine/types/tank.ts";
import type { FindAnimal } from "../quantity/find-animal.ts";
import type { Preferences } from "../quantity/preferences.ts";
import { completeFacts } from "./complete.ts";
import { type Parsed, parseText, plainData } from "./document.ts";
import { type Finding, labelOf, type Notice, pathText } from "./finding.ts";
import { interpret } from "./interpret.ts";
import { preferencesOf } from "./preferences-of.ts";
import { shapeOf } from "./shape.ts";

export interface ReadOptions {
  /** Today where the tank stands, ISO date. */
  readonly today: string;
  readonly findAnimal: FindAnimal;
  /** The reader's own habits; the file's `preferences` overrule them. */
  readonly preferences?: Partial<Preferences>;
}

export type TankFileResult =
  | { readonly ok: true; readonly facts: TankFacts; readonly notices: readonly Notice[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Nobody mends more in one go, and nothing hangs on listing them: the next reading finds the rest. */
const MOST_FINDINGS = 500;

export const readTankFile = (text: string, options: ReadOptions): TankFileResult =>
  readParsed(parseText(text), options);

/** The same of a file that was read and kept as data: nothing has a line, and no text is taken apart. */
export const readTankData = (data: object, options: ReadOptions): TankFileResult =>
  readParsed(plainData(data), options);

function readParsed({ data, faults, lineOf }: Parsed, options: ReadOptions): TankFileResult {
  const early = faults.map(
    ({ path, line, typed, message }): Finding => ({
      path: pathText(path),
      label: labelOf(path),
      line,
      typed,
      message,
      choices: [],
    }),
  );
  if (data === undefined) return { ok: false, findings: early };
  const shape = shapeOf(data, lineOf);
  const preferences = preferencesOf(shape.file.preferences, options.preferences);
  const { stated, findings, notices } = interpret(shape.file, { ...options, preferences, lineOf });
  const shaped = shape.faults.map(
    ({ path, line, typed, message, choices }): Finding => ({
      path: pathText(path),
      label: labelOf(path),
      line,
      typed,
      message,
      choices,
    }),
  );
  const all = [...early, ...shaped, ...findings];
  if (all.length > 0) return { ok: false, findings: byLine(all).slice(0, MOST_FINDINGS) };
  return { ok: true, facts: completeFacts(stated), notices: byLine(notices) };
}

/** In the order of the file; what has no line comes first. */
function byLine<T extends { readonly line: number | null }>(places: readonly T[]): T[] {
  return places.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0));
}
