/**
 * What the daybook says of one tank: trends, heads, growths and signs, the advice of all of them, and the working of every
 * number in them. Quick: nothing here runs the balance. Worked out once for each record and day, in steps, so that who
 * has other things to do can do them between.
 */

import type { GrowthsOutput } from "../contract/output/growths.ts";
import type { HeadsOutput } from "../contract/output/heads.ts";
import type { TrendsOutput } from "../contract/output/trends.ts";
import { atOnce, type Steps } from "../contract/steps.ts";
import type { ShownIn } from "../contract/tank-file/shown-in.ts";
import type { TankRecord } from "../engine/types/record.ts";
import type { Advice } from "./advice.ts";
import { arrivalAdvice } from "./arrivals/apart-dates.ts";
import { growthsOf } from "./growths/growths.ts";
import { headsOf } from "./heads/heads.ts";
import { absenceAdvice, absenceFigures } from "./holiday/advice.ts";
import { afterMedicineAdvice, medicineFigures } from "./medicines/after.ts";
import { coursesOf } from "./medicines/courses.ts";
import type { RecordScene } from "./record-scene.ts";
import { startUpAdvice } from "./start-up/advice.ts";
import { trendsInSteps } from "./trends/trends.ts";
import { type WorkingFigure, workingOutputOf } from "./working.ts";

export interface RecordAnswers {
  readonly trends: TrendsOutput;
  readonly heads: HeadsOutput;
  readonly growths: GrowthsOutput;
  readonly advice: readonly Advice[];
  /** By the id of the figure. */
  readonly workings: Readonly<Record<string, WorkingFigure>>;
}

/** By record: a kept tank's is the same object until its daybook or its day changes. */
const KNOWN = new WeakMap<TankRecord, { readonly scene: RecordScene; readonly answers: RecordAnswers }>();

/** `shown`: the units that the keeper reads in. */
export const recordAnswersOf = (scene: RecordScene, shown: ShownIn): RecordAnswers =>
  atOnce(recordAnswersInSteps(scene, shown));

export function* recordAnswersInSteps(scene: RecordScene, shown: ShownIn): Steps<RecordAnswers> {
  const known = KNOWN.get(scene.record);
  if (known !== undefined && known.scene.facts === scene.facts && known.scene.today === scene.today)
    return known.answers;
  const trends = yield* trendsInSteps(scene, { shown });
  yield;
  const heads = headsOf(scene);
  yield;
  const growths = growthsOf(scene);
  yield;
  const parts = [trends, heads, growths];
  const courses = coursesOf(scene.facts.medicines, scene.record, scene.today);
  const figures = [
    ...parts.flatMap((part) => part.figures),
    ...courses.flatMap(medicineFigures),
    ...absenceFigures(scene),
  ];
  const answers: RecordAnswers = {
    ...{ trends: trends.output, heads: heads.output, growths: growths.output },
    advice: [
      ...parts.flatMap(({ advice }) => advice),
      ...[startUpAdvice, afterMedicineAdvice, arrivalAdvice, absenceAdvice].flatMap((part) => part(scene)),
    ],
    workings: Object.fromEntries(figures.map((figure) => [figure.id, workingOutputOf(figure, []).figure!])),
  };
  KNOWN.set(scene.record, { scene, answers });
  return answers;
}
