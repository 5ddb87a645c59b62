/**
 * Which question to ask next: the one whose answer is expected to tell most (mutual information of answer and thing, in
 * bits). By eye first; a night's look or a tool is asked for when a look can tell little more.
 */
import { log } from "../../numeric/elementary.ts";
import type { Effort, KeyQuestion, KeyThing, TraitKey } from "../../types/diagnosis.ts";
import { isAnswered, type Traits, weigh } from "./key.ts";

/** Below this a look tells too little to ask for it before a night's look or a tool, bits: judgement. */
const WORTH_A_LOOK = 0.1;
/** Below this nothing is worth asking, bits: judgement. */
const WORTH_ASKING = 0.02;

export interface Asked {
  readonly question: KeyQuestion;
  readonly bits: number;
}

const LN2 = log(2);
const entropy = (chances: readonly number[]): number =>
  chances.reduce((sum, chance) => (chance <= 0 ? sum : sum - (chance * log(chance)) / LN2), 0);

/** Chances of each answer to a question: of its options, or yes and no. */
function answersOf({ options }: KeyQuestion, { chances }: KeyThing): number[] {
  const known = options.map(({ id }) => chances[id] ?? 0.5);
  const [only] = known;
  if (known.length === 1 && only !== undefined) return [only, 1 - only];
  const sum = known.reduce((all, chance) => all + chance, 0);
  return known.map((chance) => chance / sum);
}

function bitsOf<Thing extends KeyThing>(
  key: TraitKey<Thing>,
  question: KeyQuestion,
  weighed: readonly { readonly thing: Thing | null; readonly chance: number }[],
): number {
  const count = Math.max(2, question.options.length);
  const mean = Array.from({ length: count }, (_, answer) =>
    key.things.reduce((sum, thing) => sum + thing.prior * (answersOf(question, thing)[answer] ?? 0), 0),
  );
  const rows = weighed.map(({ thing, chance }) => ({
    chance,
    answers: thing === null ? mean : answersOf(question, thing),
  }));
  const expected = mean.map((_, answer) =>
    rows.reduce((sum, { chance, answers }) => sum + chance * (answers[answer] ?? 0), 0),
  );
  return entropy(expected) - rows.reduce((sum, { chance, answers }) => sum + chance * entropy(answers), 0);
}

/** Every open question with what it is expected to tell, most first; `skipped` were asked, and can't be told. */
export function openQuestions<Thing extends KeyThing>(
  key: TraitKey<Thing>,
  traits: Traits,
  skipped: ReadonlySet<string> = new Set(),
): Asked[] {
  const weighed = weigh(key, traits);
  return key.questions
    .filter((question) => !isAnswered(question, traits) && !skipped.has(question.id))
    .map((question) => ({ question, bits: bitsOf(key, question, weighed) }))
    .sort((a, b) => b.bits - a.bits);
}

/** Null where no answer would tell enough to be worth a question. */
export function nextQuestion<Thing extends KeyThing>(
  key: TraitKey<Thing>,
  traits: Traits,
  skipped: ReadonlySet<string> = new Set(),
): Asked | null {
  const open = openQuestions(key, traits, skipped);
  const best = (...efforts: readonly Effort[]): Asked | undefined =>
    open.find(({ question }) => efforts.includes(question.effort));
  const look = best("eye");
  const asked = look !== undefined && look.bits >= WORTH_A_LOOK ? look : open[0];
  return asked === undefined || asked.bits < WORTH_ASKING ? null : asked;
}
