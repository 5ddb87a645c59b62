/** What a trait key finds from the answers given, in words; and the question that would tell most. */
import { diagnosis } from "../../catalogue/diagnosis.ts";
import type { FoundOutput } from "../../contract/output/growths.ts";
import { clueOf } from "../../engine/care/diagnosis/clues.ts";
import { likelihood, speaksOf, type Traits, weigh } from "../../engine/care/diagnosis/key.ts";
import { nextQuestion, openQuestions } from "../../engine/care/diagnosis/next-question.ts";
import type { DiagnosisScene } from "../../engine/care/diagnosis/scene.ts";
import { twentieths } from "../../engine/care/diagnosis/twentieths.ts";
import type { GrowthFact, HitchhikerFact, KeyQuestion, TraitKey } from "../../engine/types/diagnosis.ts";
import { aboutNow } from "./scene.ts";

export const KEYS = { growth: diagnosis.growths, animal: diagnosis.hitchhikers } as const;
export type KeyName = keyof typeof KEYS;
type Thing = GrowthFact | HitchhikerFact;

/** From here on a thing is named; below it "can't tell yet". */
export const NAMED_FROM = 13;
/** Suspected from here on (about even): waiting costs little, and a brown colour alone is not enough. */
export const SUSPECTED_FROM = 8;
/** No key is sure: one grain always stays with the next likely. */
const MOST_GRAINS = 19;

export interface KeyFound {
  /** Likeliest first, those with a grain. */
  readonly found: readonly FoundOutput[];
  readonly things: readonly (Thing | null)[];
  /** Null: can't tell yet. */
  readonly named: Thing | null;
  readonly next: KeyQuestion | null;
  /** Every open question, most telling first. */
  readonly open: readonly KeyQuestion[];
  /** Traits that the record answered. */
  readonly fromRecord: Traits;
}

/** @param said by trait; what the record answers is added where nothing was said */
export function keyFound(
  name: KeyName,
  said: Traits,
  skipped: ReadonlySet<string>,
  scene: DiagnosisScene | null,
): KeyFound {
  const key: TraitKey<Thing> = KEYS[name];
  const fromRecord = scene === null ? {} : recordTraits(key, said, skipped, scene);
  const traits = { ...fromRecord, ...said };
  const weighed = weigh(key, traits);
  const grains = capped(twentieths(weighed.map(({ chance }) => chance)));
  const told = Object.keys(said).length > 0;
  const rows = weighed
    .map(({ thing }, i) => ({ thing, of20: grains[i] ?? 0 }))
    .filter(({ of20 }) => of20 > 0);
  const [top] = rows;
  return {
    found: rows.map(({ thing, of20 }) => foundOf(key, thing, of20, traits)),
    things: rows.map(({ thing }) => thing),
    named: told && top !== undefined && top.of20 >= NAMED_FROM ? top.thing : null,
    next: nextQuestion(key, traits, skipped)?.question ?? null,
    open: openQuestions(key, traits, skipped).map(({ question }) => question),
    fromRecord,
  };
}

function capped(grains: readonly number[]): number[] {
  if ((grains[0] ?? 0) <= MOST_GRAINS) return [...grains];
  return grains.map((count, i) => (i === 0 ? MOST_GRAINS : i === 1 ? 1 : count));
}

function recordTraits(
  key: TraitKey<Thing>,
  said: Traits,
  skipped: ReadonlySet<string>,
  scene: DiagnosisScene,
): Traits {
  return Object.fromEntries(
    key.questions.flatMap(({ id, record }) => {
      if (record === null || said[id] !== undefined || skipped.has(id)) return [];
      const { holds } = clueOf(record, scene, aboutNow("diatoms", scene.record.asOf));
      return holds === null ? [] : [[id, holds]];
    }),
  );
}

function foundOf(key: TraitKey<Thing>, thing: Thing | null, of20: number, traits: Traits): FoundOutput {
  if (thing === null) return { id: null, name: "something else", of_20: of20, for: [], against: [] };
  const speaks = speaksOf(key, thing, traits);
  return {
    ...{ id: thing.id, name: thing.name, of_20: of20 },
    for: speaks
      .filter(({ factor }) => factor > 1.05)
      .map(({ question }) => answerWords(question, thing, traits)),
    against: speaks
      .filter(({ factor }) => factor < 0.95)
      .map(({ question }) => answerWords(question, thing, traits)),
  };
}

/** "gas bubbles in it (seen with 17 of 20)". */
function answerWords(question: KeyQuestion, thing: Thing, traits: Traits): string {
  const of20 = Math.round(likelihood(question, thing, traits) * 20);
  const often = of20 === 0 ? "with fewer than 1 of 20" : `with ${of20} of 20`;
  return `${saidWords(question, traits)} (so ${often} of these)`;
}

/** What was answered: "golden to rust brown", "no gas bubbles in it". */
export function saidWords({ options, no }: KeyQuestion, traits: Traits): string {
  const yes = options.filter(({ id }) => traits[id] === true).map(({ words }) => words);
  if (yes.length > 0) return yes.join(" or ");
  const [only] = options;
  if (options.length === 1 && only !== undefined) return no ?? `not ${only.words}`;
  const denied = options.filter(({ id }) => traits[id] === false).map(({ words }) => words);
  return `not ${denied.join(", nor ")}`;
}
