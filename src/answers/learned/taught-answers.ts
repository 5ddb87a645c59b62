/** Everything the engine says of a tank that its daybook has taught: calibrated first, then answered. */
import type { TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { EnsembleChoice, Means } from "../plan/plan-tank.ts";
import { answersOf, type TankAnswers } from "../tank-answers.ts";
import { type WhatIfFlags, whatIf } from "../what-if.ts";
import { workingOutputOf } from "../working.ts";
import { type Learning, learnedOf } from "./learned.ts";

/** @param known what was learned of these facts and this record before, where it was */
export function taughtAnswers(
  {
    facts,
    record,
    choice,
    change,
  }: {
    readonly facts: TankFacts;
    readonly record: TankRecord;
    readonly choice: EnsembleChoice;
    readonly change: WhatIfFlags | null;
  },
  means: Means,
  known: (learn: () => Learning) => Learning,
): TankAnswers {
  const { facts: taught, output, figures } = known(() => learnedOf(facts, record, means.progress));
  const answers = answersOf(taught, choice, means, change === null ? null : whatIf(change, taught));
  const own = Object.fromEntries(figures.map((figure) => [figure.id, workingOutputOf(figure, []).figure!]));
  return {
    ...answers,
    workings: { ...answers.workings, ...own },
    learned: output,
    taught: taught.learned ?? null,
  };
}
