/**
 * Everything the engine says of one tank, as plain data: what pages are drawn from, and what a worker sends back.
 * The parts are those that the command line prints with --json.
 */
import { animals } from "../catalogue/index.ts";
import type { AheadOutput } from "../contract/output/ahead.ts";
import type { AnimalsOutput } from "../contract/output/animals.ts";
import type { LarderOutput } from "../contract/output/larder.ts";
import type { WavesOutput } from "../contract/output/waves.ts";
import type { WorkingOutput } from "../contract/output/working.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { aheadOutputOf } from "./ahead/ahead-output.ts";
import { aheadReport } from "./ahead/report.ts";
import { fitOf } from "./animals/fit.ts";
import { animalsOutputOf } from "./animals/output.ts";
import { larderFor, larderOutputOf } from "./larder.ts";
import {
  allFigures,
  type EnsembleChoice,
  larderScene,
  type Means,
  membersOf,
  planTank,
} from "./plan/plan-tank.ts";
import { wavesOutputOf } from "./plan/waves-output.ts";
import type { WhatIf } from "./what-if.ts";
import { workingOutputOf } from "./working.ts";

export interface TankAnswers {
  readonly larder: LarderOutput;
  readonly waves: WavesOutput;
  /** With the waves of the plan; with a what-if, both courses. */
  readonly ahead: AheadOutput;
  /** The whole catalogue, each animal with how it fits this tank. */
  readonly animals: AnimalsOutput;
  /**
   * Every figure of the other parts, by its id. Ask by `workingOf(answers, id)` in working.ts: it also answers for facts
   * of animals (`animal.ID.FACT`), which are made when asked for and are not among these.
   */
  readonly workings: Readonly<Record<string, NonNullable<WorkingOutput["figure"]>>>;
}

/** How far the weeks ahead are run for a page. */
const PAGE_DAYS = 182;

export function answersOf(
  facts: TankFacts,
  choice: EnsembleChoice,
  means: Means,
  change: WhatIf | null = null,
): TankAnswers {
  const changed = change?.facts ?? facts;
  const laid = larderFor(changed, choice);
  const beside = change === null ? null : { changes: change.changes, today: larderFor(facts, choice).scene };
  const plan = planTank(changed, choice, means);
  const planToday = change === null ? null : planTank(facts, choice, means);
  const request = { facts, whatIf: change, plan: planToday ?? plan, days: PAGE_DAYS, choice };
  const scene = larderScene(changed, membersOf(changed, choice), 0);
  return {
    larder: larderOutputOf(laid, choice, beside),
    waves: wavesOutputOf(
      plan,
      changed,
      choice,
      change === null || planToday === null ? null : { changes: change.changes, today: planToday },
    ),
    ahead: aheadOutputOf(aheadReport(request, means.progress), facts, choice),
    animals: animalsOutputOf(
      animals.map((animal) => ({ animal, fit: fitOf(animal, changed, plan) })),
      changed,
    ),
    workings: Object.fromEntries(
      allFigures(plan, changed, scene).map((figure) => [figure.id, workingOutputOf(figure, []).figure!]),
    ),
  };
}
