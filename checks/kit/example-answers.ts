/** Answers of example tanks for tests of pages: read, planned and forecast once, with twenty members. */
import { readFileSync } from "node:fs";
import { answersOf, type TankAnswers } from "../../src/answers/tank-answers.ts";
import { findAnimal } from "../../src/catalogue/index.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { loadSolver } from "../../src/solver/highs.ts";
import type { TankHead } from "../../src/web/page.ts";

export interface Example {
  readonly head: TankHead;
  readonly facts: TankFacts;
  readonly answers: TankAnswers;
}

export const TODAY = "2026-06-15";

export async function exampleTank(file: string): Promise<Example> {
  const text = readFileSync(new URL(`../../examples/${file}`, import.meta.url), "utf8");
  const read = readTankFile(text, { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(`Cannot read the example ${file}: ${read.findings[0]?.message.text}`);
  const solve = await loadSolver();
  const answers = answersOf(read.facts, { members: 20, seed: 1 }, { solve, progress: () => {} });
  const head = { id: "example", name: read.facts.name, keeper: "A. Invented", demonstration: true };
  return { head, facts: read.facts, answers };
}
