/**
 * A trait key as naive Bayes: every thing has its share among what is asked about and a chance for each trait; answers
 * multiply. "Something else" stands beside them all with the mean chance of every answer, so that answers which fit
 * nothing raise it. Traits are taken as independent, which they are not quite: chances are kept off 0 and 1 in facts/.
 * docs/model/diagnosis.md#key
 */
import type { KeyQuestion, KeyThing, TraitKey } from "../../types/diagnosis.ts";

/** By trait, seen or not; what is absent was not looked at. */
export type Traits = Readonly<Record<string, boolean>>;

/** Share of what is asked about that no thing of the key is: judgement. */
export const ELSE_PRIOR = 0.08;

export interface Weighed<Thing> {
  /** Null: something that the key does not hold. */
  readonly thing: Thing | null;
  /** 0 to 1; all of a key sum to 1. */
  readonly chance: number;
}

/**
 * Chance of what was said of one question where it is this thing: 1 where nothing was said. Options that exclude each
 * other: one of those said to be so, else one of those not denied; all denied says nothing of the things here.
 */
export function likelihood(question: KeyQuestion, { chances }: KeyThing, traits: Traits): number {
  const { options } = question;
  const chanceOf = (id: string): number => chances[id] ?? 0.5;
  const [only] = options;
  if (options.length === 1 && only !== undefined) {
    const seen = traits[only.id];
    if (seen === undefined) return 1;
    return seen ? chanceOf(only.id) : 1 - chanceOf(only.id);
  }
  const seen = options.filter(({ id }) => traits[id] === true);
  const open = seen.length > 0 ? seen : options.filter(({ id }) => traits[id] !== false);
  if (open.length === 0 || open.length === options.length) return 1;
  return open.reduce((sum, { id }) => sum + chanceOf(id), 0);
}

export const isAnswered = ({ options }: KeyQuestion, traits: Traits): boolean =>
  options.some(({ id }) => traits[id] === true) || options.every(({ id }) => traits[id] !== undefined);

/** What any thing of the key, by its share, would show: the chance of the answer before it is known what it is. */
const meanLikelihood = (question: KeyQuestion, things: readonly KeyThing[], traits: Traits): number =>
  things.reduce((sum, thing) => sum + thing.prior * likelihood(question, thing, traits), 0);

/** Every thing with its chance, likeliest first, those alike in the order of the key. */
export function weigh<Thing extends KeyThing>(
  { questions, things }: TraitKey<Thing>,
  traits: Traits,
): Weighed<Thing>[] {
  const product = (chanceOf: (question: KeyQuestion) => number): number =>
    questions.reduce((all, question) => all * chanceOf(question), 1);
  const weights = [
    ...things.map((thing) => ({
      thing,
      weight: (1 - ELSE_PRIOR) * thing.prior * product((question) => likelihood(question, thing, traits)),
    })),
    { thing: null, weight: ELSE_PRIOR * product((question) => meanLikelihood(question, things, traits)) },
  ];
  const total = weights.reduce((sum, { weight }) => sum + weight, 0);
  return weights
    .map(({ thing, weight }) => ({ thing, chance: weight / total }))
    .sort((a, b) => b.chance - a.chance);
}

export interface Speaks {
  readonly question: KeyQuestion;
  /** Times as likely with this thing as in general: above 1 speaks for it, below against. */
  readonly factor: number;
}

/** What each answer says of one thing, strongest first. */
export function speaksOf<Thing extends KeyThing>(
  { questions, things }: TraitKey<Thing>,
  thing: Thing,
  traits: Traits,
): Speaks[] {
  const strength = (factor: number): number => (factor > 1 ? factor : 1 / factor);
  return questions
    .filter(({ options }) => options.some(({ id }) => traits[id] !== undefined))
    .map((question) => ({
      question,
      factor: likelihood(question, thing, traits) / meanLikelihood(question, things, traits),
    }))
    .sort((a, b) => strength(b.factor) - strength(a.factor));
}
