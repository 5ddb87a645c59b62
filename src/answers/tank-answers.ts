/**
 * Everything the engine says of one tank, as plain data: what pages are drawn from, and what a worker sends back.
 * The parts are those that the command line prints with --json.
 */
import { animals } from "../catalogue/index.ts";
import type { AheadOutput } from "../contract/output/ahead.ts";
import type { AnimalsOutput } from "../contract/output/animals.ts";
import type { LarderOutput } from "../contract/output/larder.ts";
import type { StartUpOutput } from "../contract/output/start-up.ts";
import type { FlowsOutput } from "../contract/output/trends.ts";
import type { WavesOutput } from "../contract/output/waves.ts";
import type { Plan } from "../engine/stocking/plan.ts";
import type { Figure } from "../engine/types/figure.ts";
import { figureId } from "../engine/types/figure-id.ts";
import type { Learned } from "../engine/types/learned.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { aheadOutputOf } from "./ahead/ahead-output.ts";
import { type AheadReport, aheadReport } from "./ahead/report.ts";
import { fitOf } from "./animals/fit.ts";
import { animalsOutputOf } from "./animals/output.ts";
import { aheadFigures } from "./figures/ahead-figures.ts";
import { larderFigures, tankAndPlanFigures } from "./figures/all.ts";
import { withConfidence } from "./figures/confidence.ts";
import { prefixed, TODAY, WHAT_IF } from "./figures/prefix.ts";
import type { HolidayOutput } from "./holiday/holiday.ts";
import { type LaidLarder, larderFor, larderOutputOf } from "./larder.ts";
import type { LearnedOutput } from "./learned/output.ts";
import { type EnsembleChoice, type Means, membersOf, planTank } from "./plan/plan-tank.ts";
import { wavesOutputOf } from "./plan/waves-output.ts";
import type { WhatIf } from "./what-if.ts";
import { type WorkingFigure, workingOutputOf } from "./working.ts";
import { oxygenFigures } from "./wrong/numbers/oxygen.ts";

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
  /** Where nitrogen and phosphorus go; of a tank as it is, where the server's thread was asked for all runs. */
  readonly flows?: FlowsOutput;
  /** How its start-up goes on; of a young tank as it is, where the server's thread was asked for all runs. */
  readonly startUp?: StartUpOutput;
  /** What the daybook has taught, where there was one to learn from. */
  readonly learned?: LearnedOutput;
  /** A holiday, where one was asked for. */
  readonly holiday?: HolidayOutput;
  /** For an engine elsewhere that is to answer of the same tank; null where nothing was learned. */
  readonly taught?: Learned | null;
}

/** How far the weeks ahead are run for a page. */
const PAGE_DAYS = 182;

export function answersOf(
  facts: TankFacts,
  choice: EnsembleChoice,
  means: Means,
  change: WhatIf | null = null,
): TankAnswers {
  const parts = partsOf(facts, choice, means, change);
  for (;;) {
    const step = parts.next();
    if (step.done === true) return step.value;
  }
}

/**
 * The same as it comes: the larder first (with its workings), then waves and animals, then all. A page can show the
 * larder while the plan is still being made.
 */
export function* partsOf(
  facts: TankFacts,
  choice: EnsembleChoice,
  means: Means,
  change: WhatIf | null = null,
): Generator<Partial<TankAnswers>, TankAnswers> {
  const changed = change?.facts ?? facts;
  const changes = change?.changes ?? [];
  const laid = larderFor(changed, choice);
  const laidToday = change === null ? null : larderFor(facts, choice);
  const larder = larderOutputOf(
    laid,
    choice,
    laidToday === null ? null : { changes, today: laidToday.scene },
  );
  yield { larder, workings: workingsOf(larderOf({ laid, laidToday })) };
  const plans = plansOf(facts, choice, means, change);
  const { plan, planToday } = plans;
  const waves = wavesOutputOf(
    plan,
    changed,
    choice,
    planToday === null ? null : { changes, today: planToday },
  );
  const guide = animalsOutputOf(
    animals.map((animal) => ({ animal, fit: fitOf(animal, changed, plan) })),
    changed,
  );
  yield { waves, animals: guide };
  const work = { ...weeksOf(facts, choice, means, change, plans), laid, laidToday };
  return { larder, waves, ahead: work.ahead, animals: guide, workings: workingsOf(figuresIn(work)) };
}

/** Every figure of a tank as it is, but facts of animals. */
export function figuresOf(facts: TankFacts, choice: EnsembleChoice, means: Means): Figure[] {
  const plans = plansOf(facts, choice, means, null);
  return figuresIn({
    ...weeksOf(facts, choice, means, null, plans),
    ...{ laid: larderFor(facts, choice), laidToday: null },
  });
}

const workingsOf = (figures: readonly Figure[]): TankAnswers["workings"] =>
  Object.fromEntries(figures.map((figure) => [figure.id, workingOutputOf(figure, []).figure!]));

interface Larders {
  readonly laid: LaidLarder;
  /** Without the changes; null where nothing is changed. */
  readonly laidToday: LaidLarder | null;
}

interface Plans {
  readonly plan: Plan;
  readonly planToday: Plan | null;
}

/** All that is worked out once and shown in several parts. */
interface Work extends Larders, Plans {
  readonly facts: TankFacts;
  readonly changed: TankFacts;
  readonly choice: EnsembleChoice;
  readonly report: AheadReport;
  readonly ahead: AheadOutput;
}

function plansOf(facts: TankFacts, choice: EnsembleChoice, means: Means, change: WhatIf | null): Plans {
  if (change === null) return { plan: planTank(facts, choice, means, false, PAGE_DAYS), planToday: null };
  const plan = planTank(change.facts, choice, means);
  return { plan, planToday: planTank(facts, choice, means, false, PAGE_DAYS) };
}

function weeksOf(
  facts: TankFacts,
  choice: EnsembleChoice,
  means: Means,
  change: WhatIf | null,
  plans: Plans,
): Omit<Work, keyof Larders> {
  const { plan, planToday } = plans;
  const request = {
    ...{ facts, whatIf: change, days: PAGE_DAYS, choice },
    plan: change?.withoutWaves === true ? null : (planToday ?? plan),
  };
  const report = aheadReport(request, means.progress);
  const ahead = aheadOutputOf(report, facts, choice);
  return { facts, changed: change?.facts ?? facts, choice, ...plans, report, ahead };
}

const larderOf = ({ laid, laidToday }: Larders): Figure[] =>
  withConfidence([
    ...larderFigures(laid),
    ...(laidToday === null ? [] : prefixed(larderFigures(laidToday), TODAY)),
  ]);

function figuresIn(work: Work): Figure[] {
  const { facts, changed, choice, laid, laidToday, plan, planToday, report, ahead } = work;
  const today = laidToday === null || planToday === null ? [] : tankAndPlanFigures(laidToday, planToday);
  const { asItIs, whatIf, members } = report;
  const { weeks } = ahead;
  const asItIsFigures = aheadFigures(asItIs, ahead.as_it_is, { facts, members, weeks });
  const dawn = asItIsFigures.find(({ id }) => id === figureId.dawnOxygen());
  const stillWater = oxygenFigures(asItIs.course.forecast, members, facts, dawn);
  const whatIfFigures =
    whatIf === null || ahead.what_if === null
      ? []
      : aheadFigures(whatIf, ahead.what_if.outlook, {
          ...{ facts: changed, members: membersOf(changed, choice), weeks },
        });
  return withConfidence([
    ...tankAndPlanFigures(laid, plan),
    ...prefixed(today, TODAY),
    ...prefixed([...asItIsFigures, ...stillWater], "", laidToday === null ? "" : TODAY),
    ...prefixed(whatIfFigures, WHAT_IF, ""),
  ]);
}
