/**
 * A tank's facts with what its daybook has taught, and that as plain data with its figures. Some seconds of work: for a
 * thread or a worker. Kept by facts and record, as every part of a tank's answers asks for the same.
 */
import { animals, modelParameters } from "../../catalogue/index.ts";
import type { Progress as Steps } from "../../engine/ahead/forecast.ts";
import { type Calibration, calibrate } from "../../engine/calibration/calibrate.ts";
import { JUDGEMENT } from "../../engine/calibration/judgement.ts";
import { type Lessons, lessonsOf } from "../../engine/calibration/lessons.ts";
import { QUANTITIES_LEARNED } from "../../engine/calibration/quantities.ts";
import { headRates } from "../../engine/heads/rates.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TABLE } from "../figures/table.ts";
import type { Progress } from "../progress.ts";
import { learnedFigures } from "./figures.ts";
import { GROUP_LABEL } from "./labels.ts";
import type { LearnedOutput } from "./output.ts";

/** Members that learn, whatever the count that an answer is asked with: fewer take the first of them. */
const LEARNING = { members: 200, seed: 1 } as const;

export interface Learning {
  /** With what was learned; the very facts that were given where nothing was. */
  readonly facts: TankFacts;
  readonly output: LearnedOutput;
  readonly figures: readonly Figure[];
}

/** Advances member by member, so that a caller can stop. */
export function* learning(facts: TankFacts, record: TankRecord): Generator<Steps, Learning> {
  const calibration = yield* calibrate({
    ...{ facts, record, table: modelParameters, rates: headRates(TABLE), animals },
    ...LEARNING,
  });
  const lessons = lessonsOf(calibration);
  const output = outputOf(calibration, lessons, record);
  if (lessons === null) return { facts, output, figures: [] };
  return {
    facts: { ...facts, learned: calibration.learned },
    output,
    figures: learnedFigures(lessons, output, facts),
  };
}

/** Driven to its end at once. */
export function learnedOf(facts: TankFacts, record: TankRecord, progress: Progress): Learning {
  const work = learning(facts, record);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    progress("learning from the daybook", step.value.done / step.value.of);
  }
}

function outputOf(
  { observed, learned }: Calibration,
  lessons: Lessons | null,
  { asOf }: TankRecord,
): LearnedOutput {
  const observations = observed.reduce((sum, { of }) => sum + of, 0);
  const least = JUDGEMENT.leastObservations;
  if (lessons === null) return { observations, least, taught: null };
  const labels = new Map(QUANTITIES_LEARNED.map(({ id, label }) => [id, label]));
  return {
    ...{ observations, least },
    taught: {
      ...{ from: learned.window.from, to: asOf, members: learned.scores.length },
      quantities: lessons.quantities.map(({ id, before, after, spreadLeft, seen, pulls }) => {
        const { label, unit } = QUANTITIES_LEARNED.find((quantity) => quantity.id === id)!;
        const strongest = (Object.entries(pulls) as [keyof typeof GROUP_LABEL, number][]).reduce<
          [keyof typeof GROUP_LABEL, number] | null
        >((best, pull) => (best === null || Math.abs(pull[1]) > Math.abs(best[1]) ? pull : best), null);
        return {
          ...{ id, label, unit, before, after, spread_left: spreadLeft, seen },
          pulled_by:
            strongest === null || Math.abs(strongest[1]) < LITTLE
              ? null
              : {
                  group: strongest[0],
                  label: GROUP_LABEL[strongest[0]],
                  way: strongest[1] > 0 ? "up" : "down",
                },
          figure: figureId.learned(id),
        };
      }),
      groups: lessons.groups.map(({ group, observations: count, share }) => ({
        ...{ group, label: GROUP_LABEL[group], observations: count, share },
        figure: figureId.learnedShare(group),
      })),
      readings: lessons.readings.map(({ entry, on, group, moved, by, outlying }) => ({
        ...{ entry, on, group, label: GROUP_LABEL[group], moved: labels.get(moved) ?? moved },
        way: by > 0 ? "up" : "down",
        pull: Math.abs(by) >= MUCH ? "much" : Math.abs(by) >= LITTLE ? "some" : "little",
        outlying: outlying > 1,
      })),
    },
  };
}

/** Pulls in standard deviations of what was known before: below, little; from there on, much. Judgement. */
const LITTLE = 0.1;
const MUCH = 0.5;
