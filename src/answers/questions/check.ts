/** Answers so far, read as the tank file they will be: the same reader, the same words. */
import { findAnimal } from "../../catalogue/index.ts";
import type { Finding, Notice } from "../../contract/tank-file/finding.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { AnswerContext, Entries } from "./answer.ts";

/** Stands for the water while it is not known, so that the other answers can be read. */
const SOME_WATER = { water_l: 113 };

export interface Checked {
  readonly findings: readonly Finding[];
  readonly notices: readonly Notice[];
}

/** Reads `before` and `entries` together; reports on `entries` alone. */
export function check(before: Entries, entries: Entries, { today, preferences }: AnswerContext): Checked {
  const all = { grazewell_tank: 1, ...before, ...entries };
  const watered = "water_l" in all || "display_sides_cm" in all ? all : { ...SOME_WATER, ...all };
  const result = readTankFile(JSON.stringify(watered), { today, findAnimal, preferences });
  const mine = ({ path }: { path: string }) => Object.keys(entries).some((key) => path.startsWith(key));
  return result.ok
    ? { findings: [], notices: result.notices.filter(mine) }
    : { findings: result.findings.filter(mine), notices: [] };
}
