/**
 * Start-up of one tank: its stage by tests, when it ends over the versions of the tank that its daybook leaves, twenty of
 * them to be drawn, what other rock would have meant. Some seconds of work: for a thread or a command.
 */
import { animals } from "../../catalogue/index.ts";
import type { StartUpOutput } from "../../contract/output/start-up.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { type Ended, type Ends, endsOf, twentyEnded } from "../../engine/care/start-up/ends.ts";
import { START_UP } from "../../engine/care/start-up/judgement.ts";
import { courseOf, type StartUpPlan } from "../../engine/care/start-up/runs.ts";
import type { Member } from "../../engine/larder/members.ts";
import { bandOf, quantileOfSorted } from "../../engine/numeric/quantile.ts";
import { kindsOf } from "../../engine/stocking/check.ts";
import { companyOf } from "../../engine/stocking/waves.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact } from "../../engine/types/link.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Valued } from "../bench/known.ts";
import { isUnreadable } from "../bench/water.ts";
import { withConfidence } from "../figures/confidence.ts";
import { DEFAULT_ENSEMBLE, type EnsembleChoice, membersOf } from "../plan/plan-tank.ts";
import type { Progress } from "../progress.ts";
import type { RecordScene } from "../record-scene.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { ammoniumChlorideG, dryFoodG } from "./dose.ts";
import { startUpFigures } from "./figures.ts";
import { nextTestOf } from "./next-test.ts";
import { type StageFound, stageOf } from "./stage.ts";
import { topsOf } from "./tops.ts";
import { stageSentence } from "./words.ts";

export interface StartUpSaid {
  readonly output: StartUpOutput;
  readonly figures: readonly Figure[];
}

const ROCKS = ["live", "mixed", "dry", "none"] as const;
/** Versions that are asked for their end: each is run day by day until then. */
const CHOICE: EnsembleChoice = { ...DEFAULT_ENSEMBLE, members: 100 };
/** Versions that other rock is run with: fewer, as it is told in whole days and wide. */
const ROCK_CHOICE: EnsembleChoice = { members: 24, seed: 1 };
/** Days that the drawing goes on beyond the latest end of the twenty, and its least and most. */
const AFTER_DAYS = 5;
const DRAWN_DAYS = { least: 21, most: 90 } as const;
/** Counts of twenty at which a date is told. */
const TOLD_AT = [5, 10, 15, 19] as const;

/** `scene.facts`: as taught where the daybook has taught. */
export function startUpOf(scene: RecordScene, progress: Progress): StartUpSaid {
  const { facts, today } = scene;
  const found = stageOf(scene);
  const running = found.stage !== "past" && found.stage !== "proven";
  const kinds = kindsOf(companyOf(facts, animals), [], animals).filter(({ residents }) => residents > 0);
  const plan: StartUpPlan = { facts, kinds, stocked: found.stocked };
  const ends = running ? driven(plan, membersOf(facts, CHOICE), progress) : null;
  const end = ends === null ? null : endTold(ends, today);
  const rocks = running ? byRock(facts, progress) : [];
  const output: StartUpOutput = {
    schema: "grazewell.start-up/1",
    engine: ENGINE_VERSION,
    tank: { name: facts.name, as_of: today, age_days: Math.round(facts.ageDays.central) },
    stage: found.stage,
    says: stageSentence(found, topsOf(scene)),
    stocked: found.stocked,
    tests: { ammonia: testTold(found.tan, "tan_mg_n_per_l"), nitrite: testTold(found.no2, "no2_mg_n_per_l") },
    next_test: nextTestOf(found, today),
    end,
    versions:
      ends === null
        ? null
        : {
            ...{ drawn: ends.drawn, left: ends.ended.length, within_days: ends.withinDays },
            taught: facts.learned !== undefined,
          },
    runs: ends === null || end === null ? null : runsTold(twentyEnded(ends), plan, today),
    by_rock: rocks,
    dose: found.stocked ? null : doseTold(facts, found),
    statement: STATEMENT,
  };
  return { output, figures: withConfidence(startUpFigures(output, ends, facts)) };
}

function driven(plan: StartUpPlan, members: readonly Member[], progress: Progress): Ends {
  const work = endsOf(plan, members);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    progress("running the start-up", step.value.done / step.value.of);
  }
}

function endTold({ ended }: Ends, today: string): StartUpOutput["end"] {
  if (ended.length < START_UP.leastLeft) return null;
  const days = ended.map(({ day }) => day);
  const at = (share: number): number => Math.ceil(quantileOfSorted(days, share));
  const upTo = (day: number): number => days.filter((one) => one <= day).length / days.length;
  const tellable = [...new Set(TOLD_AT.map((count) => at(count / 20)))];
  return {
    early: addDays(today, at(0.05)),
    middle: addDays(today, at(0.5)),
    late: addDays(today, at(0.95)),
    figure: figureId.care("start_up", "end"),
    by: tellable.map((day) => ({
      on: addDays(today, day),
      of_20: Math.round(20 * upTo(day)),
      figure: figureId.care("start_up", `by.${addDays(today, day)}`),
    })),
  };
}

function runsTold(twenty: readonly Ended[], plan: StartUpPlan, today: string): StartUpOutput["runs"] {
  const last = twenty.at(-1)?.day ?? 0;
  const days = Math.min(DRAWN_DAYS.most, Math.max(DRAWN_DAYS.least, last + AFTER_DAYS));
  const courses = twenty.map(({ member }) => courseOf(member, plan, days));
  const rows = (of: "tan" | "no2") =>
    courses.map((course) => course.map((night) => Number(night[of].toPrecision(3))));
  return {
    days: Array.from({ length: days + 1 }, (_, day) => addDays(today, day)),
    ...{ ammonia: rows("tan"), nitrite: rows("no2") },
    ...{ readable_ammonia: START_UP.readable.tan, readable_nitrite: START_UP.readable.no2 },
    figures: {
      ammonia: figureId.care("start_up", "ammonia"),
      nitrite: figureId.care("start_up", "nitrite"),
    },
  };
}

/** The same tank from its filling, empty of animals, with each kind of rock, before any test. */
function byRock(facts: TankFacts, progress: Progress): StartUpOutput["by_rock"] {
  return ROCKS.map((rock) => {
    const { learned: _, ...rest } = facts;
    const other: TankFacts = {
      ...rest,
      ageDays: { ...exact(0), origin: "derived", how: "from its filling" },
      rockStart: { value: rock, origin: "derived" },
      ...{ readings: [], present: [], sightings: {} },
    };
    const plan: StartUpPlan = { facts: other, kinds: [], stocked: false };
    const { ended } = driven(plan, membersOf(other, ROCK_CHOICE), progress);
    const band = ended.length === 0 ? null : bandOf(ended.map(({ day }) => day));
    return { rock, band };
  }).flatMap(({ rock, band }) =>
    band === null
      ? []
      : [
          {
            ...{ rock, days: whole(band), this_tank: facts.rockStart.value === rock },
            figure: figureId.care("start_up", `rock.${rock}`),
          },
        ],
  );
}

const whole = ({ low, central, high }: Spread): Spread => ({
  low: Math.round(low),
  central: Math.round(central),
  high: Math.round(high),
});

function testTold(
  value: Valued | null,
  quantity: "tan_mg_n_per_l" | "no2_mg_n_per_l",
): StartUpOutput["tests"]["ammonia"] {
  if (value === null) return null;
  const { on, low, central, high } = value;
  return { on, mg_n_per_l: { low, central, high }, readable: !isUnreadable(value, quantity) };
}

function doseTold(facts: TankFacts, { stage }: StageFound): StartUpOutput["dose"] {
  if (stage === "past") return null;
  return {
    mg_n_per_l: START_UP.testDoseMgNPerL,
    ammonium_chloride_g: ammoniumChlorideG(facts.waterL, START_UP.testDoseMgNPerL),
    dry_food_g: dryFoodG(facts, START_UP.testDoseMgNPerL),
    figures: {
      dose: figureId.care("start_up", "dose"),
      salt: figureId.care("start_up", "salt"),
      food: figureId.care("start_up", "food"),
    },
  };
}
