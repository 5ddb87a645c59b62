/**
 * Every clue of facts/causes/clues.yaml as the record answers it; the keeper's own answers, kept in sightings as traits
 * under the clue's id, come before it. docs/model/diagnosis.md#clues
 */
import { type ClueState, seen, UNKNOWN } from "./clue.ts";
import { KIND_CLUES } from "./clues/kinds.ts";
import { PAST_CLUES } from "./clues/past.ts";
import { WATER_CLUES } from "./clues/water.ts";
import { type DiagnosisScene, type Subject, within } from "./scene.ts";

type Clue = (scene: DiagnosisScene, subject: Subject) => ClueState;

export const RECORD_CLUES: Readonly<Record<string, Clue>> = {
  ...WATER_CLUES,
  ...PAST_CLUES,
  ...KIND_CLUES,
};

/** Days that an answer of the keeper's holds. */
const ANSWER_DAYS = 42;

/** Given now, before what the daybook holds. */
export type ClueAnswers = Readonly<Record<string, boolean>>;

export function clueOf(
  id: string,
  scene: DiagnosisScene,
  subject: Subject,
  answers: ClueAnswers = {},
): ClueState {
  const now = answers[id];
  if (now !== undefined) return seen(now, subject.on);
  const told = scene.record.observations
    .flatMap((one) => {
      if (one.kind !== "growth" && one.kind !== "sign") return [];
      const said = one.traits[id];
      return said === undefined || !within(one.on, subject.on, ANSWER_DAYS) ? [] : [{ said, on: one.on }];
    })
    .at(-1);
  if (told !== undefined) return seen(told.said, told.on);
  return Object.hasOwn(RECORD_CLUES, id) ? (RECORD_CLUES[id]?.(scene, subject) ?? UNKNOWN) : UNKNOWN;
}
