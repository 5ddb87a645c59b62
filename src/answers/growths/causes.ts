/** Ranked causes in words: what speaks for and against each, what is not known, what would tell them apart. */
import { clueFacts } from "../../catalogue/diagnosis.ts";
import type { CauseOutput, QuestionOutput } from "../../contract/output/growths.ts";
import {
  askedFirst,
  type RankedCause,
  rankCauses,
  tellingClues,
  type WeighedClue,
} from "../../engine/care/diagnosis/causes.ts";
import type { ClueAnswers } from "../../engine/care/diagnosis/clues.ts";
import type { DiagnosisScene, Subject } from "../../engine/care/diagnosis/scene.ts";
import { ofTwenty } from "../../engine/care/diagnosis/twentieths.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { chanceWord, dateWords } from "../words.ts";
import { causeFigure } from "./figures.ts";

/** Two clues may be settled by one look. */
const onePerTest = (questions: readonly QuestionOutput[]): QuestionOutput[] =>
  questions.filter(({ test }, i) => questions.findIndex((one) => one.test === test) === i);

export interface CausesTold {
  readonly causes: readonly CauseOutput[];
  readonly askedFirst: readonly QuestionOutput[];
  readonly wouldTell: readonly QuestionOutput[];
  readonly figures: readonly Figure[];
}

/** More are seldom worth reading; those under 1 of 20 are left out. */
const CAUSES_TOLD = 6;

export function causesTold(scene: DiagnosisScene, subject: Subject, answers: ClueAnswers = {}): CausesTold {
  const ranked = rankCauses(scene, subject, answers);
  const told = ranked.filter(({ chance }) => ofTwenty(chance) >= 1).slice(0, CAUSES_TOLD);
  return {
    causes: told.map((one) => causeOf(one, subject)),
    askedFirst: askedFirst(ranked, subject.effect).map(questionOf),
    wouldTell: onePerTest(tellingClues(told, 5).map(questionOf)).slice(0, 3),
    figures: told.map((one) => causeFigure(one, subject)),
  };
}

function questionOf(id: string): QuestionOutput {
  const clue = clueFacts.get(id);
  if (clue === undefined)
    throw new RangeError(`Cannot ask for clue "${id}": facts/causes has none of that id`);
  return { clue: id, ask: clue.ask, test: clue.test };
}

/** "The tank is younger than four months.", with the day where it was seen on one. */
export function clueWords({ id, holds, on }: Pick<WeighedClue, "id" | "holds" | "on">): string {
  const clue = clueFacts.get(id);
  if (clue === undefined) return id;
  const words = holds === true ? clue.yes : clue.no;
  return on === null ? words : `${words.replace(/\.$/, "")} (${dateWords(on)}).`;
}

function causeOf({ cause, chance, clues, open }: RankedCause, { effect }: Subject): CauseOutput {
  const moved = (towards: (factor: number) => boolean): string[] =>
    clues
      .filter(({ holds, factor }) => holds !== null && towards(factor))
      .sort((a, b) => Math.max(b.factor, 1 / b.factor) - Math.max(a.factor, 1 / a.factor))
      .map(clueWords);
  const grains = ofTwenty(chance);
  return {
    ...{ id: cause.id, name: cause.name, of_20: grains, word: chanceWord(grains) },
    figure: figureId.growthCause(effect, cause.id),
    for: moved((factor) => factor > 1),
    against: moved((factor) => factor < 1),
    not_known: open.map(questionOf),
    do: cause.doLines.map(({ text }) => text),
    dont: cause.dont.map(({ text }) => text),
    ...{ stop: cause.stop.text, evidence: cause.evidence },
  };
}
