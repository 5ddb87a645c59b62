/**
 * Everything the engine says of one tank, as plain data: what pages are drawn from, and what a worker sends back.
 * The parts are those that the command line prints with --json.
 */
import { animals } from "../catalogue/index.ts";
import type { AheadOutput } from "../contract/output/ahead.ts";
import type { AnimalsOutput } from "../contract/output/animals.ts";
import type { LarderOutput } from "../contract/output/larder.ts";
import type { WavesOutput } from "../contract/output/waves.ts";
import type { Plan } from "../engine/stocking/plan.ts";
import type { Figure } from "../engine/types/figure.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { aheadOutputOf } from "./ahead/ahead-output.ts";
import { type AheadReport, aheadReport } from "./ahead/report.ts";
import { fitOf } from "./animals/fit.ts";
import { animalsOutputOf } from "./animals/output.ts";
import { aheadFigures } from "./figures/ahead-figures.ts";
import { tankAndPlanFigures } from "./figures/all.ts";
import { withConfidence } from "./figures/confidence.ts";
import { prefixed, TODAY, WHAT_IF } from "./figures/prefix.ts";
import { type LaidLarder, larderFor, larderOutputOf } from "./larder.ts";
import { type EnsembleChoice, type Means, membersOf, planTank } from "./plan/plan-tank.ts";
import { wavesOutputOf } from "./plan/waves-output.ts";
import type { WhatIf } from "./what-if.ts";
import { type WorkingFigure, workingOutputOf } from "./working.ts";

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
  readonly workings: Readonly<Record<string, WorkingFigure>>;
}

/** How far the weeks ahead are run for a page. */
const PAGE_DAYS = 182;

export function answersOf(
  facts: TankFacts,
  choice: EnsembleChoice,
  means: Means,
  change: WhatIf | null = null,
): TankAnswers {
  const work = workOf(facts, choice, means, change);
  const { changed, laid, plan, today, ahead } = work;
  const changes = change?.changes ?? [];
  return {
    larder: larderOutputOf(laid, choice, today === null ? null : { changes, today: today.laid.scene }),
    waves: wavesOutputOf(plan, changed, choice, today === null ? null : { changes, today: today.plan }),
    ahead,
    animals: animalsOutputOf(
      animals.map((animal) => ({ animal, fit: fitOf(animal, changed, plan) })),
      changed,
    ),
    workings: Object.fromEntries(
      figuresIn(work).map((figure) => [figure.id, workingOutputOf(figure, []).figure!]),
    ),
  };
}

/** Every figure of a tank as it is, but facts of animals. */
export const figuresOf = (facts: TankFacts, choice: EnsembleChoice, means: Means): Figure[] =>
  figuresIn(workOf(facts, choice, means, null));

/** All that is worked out once and shown in several parts. */
interface Work {
  readonly facts: TankFacts;
  readonly changed: TankFacts;
  readonly choice: EnsembleChoice;
  readonly laid: LaidLarder;
  readonly plan: Plan;
  /** The tank without the changes; null where nothing is changed. */
  readonly today: { readonly laid: LaidLarder; readonly plan: Plan } | null;
  readonly report: AheadReport;
  readonly ahead: AheadOutput;
}

function workOf(facts: TankFacts, choice: EnsembleChoice, means: Means, change: WhatIf | null): Work {
  const changed = change?.facts ?? facts;
  const laid = larderFor(changed, choice);
  const plan = planTank(changed, choice, means, false, change === null ? PAGE_DAYS : undefined);
  const today =
    change === null
      ? null
      : { laid: larderFor(facts, choice), plan: planTank(facts, choice, means, false, PAGE_DAYS) };
  const request = { facts, whatIf: change, plan: today?.plan ?? plan, days: PAGE_DAYS, choice };
  const report = aheadReport(request, means.progress);
  const ahead = aheadOutputOf(report, facts, choice);
  return { facts, changed, choice, laid, plan, today, report, ahead };
}

function figuresIn({ facts, changed, choice, laid, plan, today, report, ahead }: Work): Figure[] {
  const { asItIs, whatIf, members } = report;
  const { weeks } = ahead;
  const asItIsFigures = aheadFigures(asItIs, ahead.as_it_is, { facts, members, weeks });
  const whatIfFigures =
    whatIf === null || ahead.what_if === null
      ? []
      : aheadFigures(whatIf, ahead.what_if.outlook, {
          ...{ facts: changed, members: membersOf(changed, choice), weeks },
        });
  return withConfidence([
    ...tankAndPlanFigures(laid, plan),
    ...(today === null ? [] : prefixed(tankAndPlanFigures(today.laid, today.plan), TODAY)),
    ...prefixed(asItIsFigures, "", today === null ? "" : TODAY),
    ...prefixed(whatIfFigures, WHAT_IF, ""),
  ]);
}
