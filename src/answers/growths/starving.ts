/**
 * Kinds that go hungry, named before they die: from the weeks ahead where they are known, and from signs of the record.
 * Without the weeks ahead (null) the signs alone speak, and two must agree. docs/model/diagnosis.md#hunger
 */
import {
  type HungerSign,
  type HungryKind,
  hungryKinds,
  type KindAhead,
} from "../../engine/care/diagnosis/hunger.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { RecordScene } from "../record-scene.ts";
import { maybeTold, type Sentence } from "../sentence.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { chance, counted } from "../words.ts";
import { diagnosisOf } from "./scene.ts";

export interface StarvingKind {
  readonly animal: string;
  readonly name: string;
  readonly heads: number;
  readonly inWeeks: number | null;
  readonly said: Sentence;
}

const SIGN_WORDS: Readonly<Record<HungerSign, string>> = {
  glass_bare: "the glass stays bare",
  hungry_shelf: "film was scored next to nothing",
  losses: "some of its kind were lost",
  fallen: "some lay on their backs",
};

export function starvingKinds(
  answers: Pick<TankAnswers, "ahead"> | null,
  scene: RecordScene,
): StarvingKind[] {
  const ahead = answers === null ? null : aheadOf(answers);
  return hungryKinds(diagnosisOf(scene), ahead).map(toldOf);
}

const aheadOf = ({ ahead }: Pick<TankAnswers, "ahead">): KindAhead[] =>
  ahead.as_it_is.kinds.map(({ id, condition_by_week, starves_of_20 }) => ({
    ...{ id, starvesOf20: starves_of_20 },
    conditionByWeek: condition_by_week.q50,
    lowConditionByWeek: condition_by_week.q05,
  }));

function toldOf({ animal, heads, inWeeks, starvesOf20, signs }: HungryKind): StarvingKind {
  const who = heads === 1 ? `The ${animal.commonName}` : counted(heads, animal.commonName);
  const verb = heads === 1 ? "goes" : "go";
  const when =
    inWeeks === null ? "" : inWeeks === 0 ? " now" : ` within ${inWeeks} ${inWeeks === 1 ? "week" : "weeks"}`;
  const runs: Sentence =
    starvesOf20 === null
      ? []
      : [
          ": ",
          maybeTold(chance(starvesOf20), figureId.kind(animal.id, "starves")),
          " runs lose more than age takes",
        ];
  const seen = signs.length === 0 ? "." : `. Signs: ${signs.map((sign) => SIGN_WORDS[sign]).join(", ")}.`;
  return {
    ...{ animal: animal.id, name: animal.commonName, heads, inWeeks },
    said: [`${who} ${verb} hungry${when}`, ...runs, seen],
  };
}
