import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diagnosis } from "../../../catalogue/diagnosis.ts";
import type { KeyThing, TraitKey } from "../../types/diagnosis.ts";
import { ELSE_PRIOR, isAnswered, likelihood, speaksOf, type Traits, weigh } from "./key.ts";
import { nextQuestion, openQuestions } from "./next-question.ts";
import { twentieths } from "./twentieths.ts";

const KEYS: readonly (readonly [string, TraitKey])[] = [
  ["growths", diagnosis.growths],
  ["hitchhikers", diagnosis.hitchhikers],
];

/** Answers in any order: of options that exclude each other at most one is seen. */
const anyAnswers = (key: TraitKey): fc.Arbitrary<[string, boolean][]> =>
  fc
    .tuple(
      ...key.questions.map(({ options }) =>
        options.length === 1
          ? fc.option(fc.tuple(fc.constant(options[0]?.id ?? ""), fc.boolean()))
          : fc.option(fc.tuple(fc.constantFrom(...options.map(({ id }) => id)), fc.constant(true))),
      ),
    )
    .map((all) => all.filter((one): one is [string, boolean] => one !== null))
    .chain((all) => fc.shuffledSubarray(all, { minLength: 0, maxLength: all.length }));

const chancesOf = (key: TraitKey, traits: Traits): Map<string, number> =>
  new Map(weigh(key, traits).map(({ thing, chance }) => [thing?.id ?? "else", chance]));

describe.each(KEYS)("the key to %s", (_, key) => {
  test("chances sum to 1, whatever was answered; grains to 20", () => {
    fc.assert(
      fc.property(anyAnswers(key), (answers) => {
        const weighed = weigh(key, Object.fromEntries(answers));
        expect(weighed.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
        expect(weighed.every(({ chance }) => chance > 0 && chance < 1)).toBe(true);
        expect(twentieths(weighed.map(({ chance }) => chance)).reduce((a, b) => a + b, 0)).toBe(20);
      }),
    );
  });

  test("without answers each thing has its share", () => {
    for (const { thing, chance } of weigh(key, {}))
      expect(chance).toBeCloseTo(thing === null ? ELSE_PRIOR : (1 - ELSE_PRIOR) * thing.prior, 12);
  });

  test("the order of answers does not matter", () => {
    fc.assert(
      fc.property(anyAnswers(key), (answers) => {
        const forwards = chancesOf(key, Object.fromEntries(answers));
        const backwards = chancesOf(key, Object.fromEntries([...answers].reverse()));
        for (const [id, chance] of forwards) expect(backwards.get(id)).toBe(chance);
      }),
    );
  });

  test("an answer that fits a thing as well as any other never lowers it", () => {
    fc.assert(
      fc.property(anyAnswers(key), fc.nat(), fc.nat(), (answers, which, option) => {
        const traits = Object.fromEntries(answers);
        const open = key.questions.filter((question) => !isAnswered(question, traits));
        const question = open[which % Math.max(1, open.length)];
        if (question === undefined) return;
        const trait = question.options[option % question.options.length];
        if (trait === undefined) return;
        const more = { ...traits, [trait.id]: true };
        const best = [...key.things].sort(
          (a, b) => likelihood(question, b, more) - likelihood(question, a, more),
        )[0] as KeyThing;
        const before = chancesOf(key, traits).get(best.id) ?? 0;
        expect(chancesOf(key, more).get(best.id) ?? 0).toBeGreaterThanOrEqual(before - 1e-12);
      }),
    );
  });

  test("what speaks for a thing has a factor above 1, and taking it away lowers the thing", () => {
    fc.assert(
      fc.property(anyAnswers(key), (answers) => {
        const traits = Object.fromEntries(answers);
        const top = weigh(key, traits)[0]?.thing;
        if (top == null) return;
        for (const { question, factor } of speaksOf(key, top, traits)) {
          const without = Object.fromEntries(
            Object.entries(traits).filter(([id]) => !question.options.some((one) => one.id === id)),
          );
          // Over "something else", whose chance moves by the mean, the odds move by the factor alone.
          const odds = (of: Traits): number => {
            const chances = chancesOf(key, of);
            return (chances.get(top.id) ?? 0) / (chances.get("else") ?? 1);
          };
          expect(odds(traits) / odds(without) / factor).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 30 },
    );
  });

  test("the next question is open, tells something, and no other open look tells more", () => {
    fc.assert(
      fc.property(anyAnswers(key), (answers) => {
        const traits = Object.fromEntries(answers);
        const next = nextQuestion(key, traits);
        const open = openQuestions(key, traits);
        expect(open.every(({ bits }) => bits > -1e-12)).toBe(true);
        if (next === null) return;
        expect(isAnswered(next.question, traits)).toBe(false);
        const looks = open.filter(({ question }) => question.effort === "eye");
        if (next.question.effort === "eye") expect(looks[0]?.question.id).toBe(next.question.id);
        else expect(looks[0]?.bits ?? 0).toBeLessThan(0.1);
      }),
      { numRuns: 40 },
    );
  });
});

test("a question that was skipped is not asked again", () => {
  const first = nextQuestion(diagnosis.growths, {});
  const skipped = new Set([first?.question.id ?? ""]);
  expect(nextQuestion(diagnosis.growths, {}, skipped)?.question.id).not.toBe(first?.question.id);
});

test("options denied: only those left count; all denied says nothing", () => {
  const colour = diagnosis.growths.questions.find(({ id }) => id === "colour");
  const diatoms = diagnosis.growths.things.find(({ id }) => id === "diatoms");
  if (colour === undefined || diatoms === undefined) throw new Error("facts changed");
  const denied = (...ids: readonly string[]) => Object.fromEntries(ids.map((id) => [id, false]));
  const notBrown = likelihood(colour, diatoms, denied("colour_brown"));
  expect(notBrown).toBeCloseTo(1 - (diatoms.chances["colour_brown"] ?? 0), 9);
  expect(likelihood(colour, diatoms, denied(...colour.options.map(({ id }) => id)))).toBe(1);
  expect(likelihood(colour, diatoms, { colour_brown: true, colour_green: true })).toBeCloseTo(0.96, 9);
});

// Twenty grains by largest remainder: worked by hand.
test.each([
  [
    [1 / 3, 1 / 3, 1 / 3],
    [7, 7, 6],
  ],
  [
    [0.974, 0.026],
    [19, 1],
  ],
  [[1], [20]],
  [
    [0.5, 0.25, 0.125, 0.125],
    [10, 5, 3, 2],
  ],
])("twentieths(%j) → %j", (chances, grains) => {
  expect(twentieths(chances)).toEqual(grains);
});
