/** Growths of the record that ask for an answer: how thick, told as what, why, who eats it, what to do. */
import { growthFacts } from "../../catalogue/diagnosis.ts";
import { GROWTH_ANCHORS } from "../../contract/daybook/growth-anchors.ts";
import type { FoundOutput, OutbreakOutput } from "../../contract/output/growths.ts";
import type { Traits } from "../../engine/care/diagnosis/key.ts";
import {
  type DiagnosisScene,
  growthsSeen,
  SCORE_OF_COVER,
  within,
} from "../../engine/care/diagnosis/scene.ts";
import type { GrowthFact } from "../../engine/types/diagnosis.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { GROWTHS, type Growth } from "../../engine/types/tank.ts";
import { causesTold } from "./causes.ts";
import { keyFound } from "./key.ts";
import { aboutNow, nameOfAnimal } from "./scene.ts";

export interface Outbreak {
  readonly output: OutbreakOutput;
  readonly figures: readonly Figure[];
  /** All that its traits were weighed as, with their grains. */
  readonly suspects: readonly { readonly id: string; readonly of20: number }[];
}

const NEWS_DAYS = 28;
/** Score from which a growth asks for an answer; of what can harm at once, a trace. */
const ASKS_FROM: Readonly<Record<Growth, number>> = {
  ...{ film_glass: 3, film_rock: 3, film_sand: 3, diatoms: 2, hair_algae: 2, bubble_algae: 1 },
  ...{ cyanobacteria: 1, dinoflagellates: 1, detritus_sand: 3, detritus_crevice: 3, leftovers: 2 },
};

/** Growths of the daybook that no thing of the key is scored under: the nearest one. */
const NEAREST: Readonly<Partial<Record<Growth, string>>> = {
  ...{ film_rock: "film-algae", film_sand: "film-algae", detritus_crevice: "settled-dirt" },
  leftovers: "settled-dirt",
};

interface GrowthNow {
  readonly growth: Growth;
  readonly score: number;
  readonly on: string;
  readonly from: "daybook" | "questions";
  readonly traits: Traits;
}

/**
 * The latest word of four weeks on each growth: the daybook's, or what the questions were told on the day they were. Where
 * that day is not known, as of a file's own day.
 */
function growthsNow({ record, facts }: DiagnosisScene): GrowthNow[] {
  const told =
    record.told === undefined ? { on: facts.asOf, covers: facts.sightings } : record.told.sightings;
  return GROWTHS.flatMap((growth): GrowthNow[] => {
    const seen = growthsSeen(record, growth).filter(({ on }) => within(on, record.asOf, NEWS_DAYS));
    const last = seen.at(-1);
    const cover = told?.covers[growth];
    const isTold = told !== null && cover !== undefined && within(told.on, record.asOf, NEWS_DAYS);
    if (last !== undefined && !(isTold && told.on > last.on)) {
      // Traits hold until they are said otherwise: a later score without them is of the same growth.
      const traits = Object.assign({}, ...seen.map((one) => one.traits)) as Traits;
      return [{ growth, score: last.score, on: last.on, from: "daybook", traits }];
    }
    return isTold
      ? [{ growth, score: SCORE_OF_COVER[cover], on: told.on, from: "questions", traits: {} }]
      : [];
  });
}

export function outbreaksOf(scene: DiagnosisScene): Outbreak[] {
  return growthsNow(scene)
    .filter(({ growth, score }) => score >= ASKS_FROM[growth])
    .sort((a, b) => weightOf(b) - weightOf(a))
    .map((now) => outbreakOf(now, scene));
}

const weightOf = ({ growth, score }: GrowthNow): number => (growth === "dinoflagellates" ? 10 : 0) + score;

/** Traits of the key among those kept: clues that the keeper answered are kept beside them. */
const keyTraits = (traits: Traits): Traits => {
  const known = new Set([...growthFacts.values()].flatMap(({ chances }) => Object.keys(chances)));
  return Object.fromEntries(Object.entries(traits).filter(([id]) => known.has(id)));
};

function outbreakOf(now: GrowthNow, scene: DiagnosisScene): Outbreak {
  const { growth, score, on, from, traits } = now;
  const said = keyTraits(traits);
  const key = Object.keys(said).length === 0 ? null : keyFound("growth", said, new Set(), scene);
  const thing = thingOf(growth, key?.things.flatMap((one) => (one === null ? [] : [one.id])) ?? []);
  const told = causesTold(scene, aboutNow(growth, on));
  const living = new Set(scene.facts.present.filter(({ count }) => count > 0).map(({ id }) => id));
  const anchors = GROWTH_ANCHORS[growth];
  const found: readonly FoundOutput[] = key?.found ?? [];
  return {
    output: {
      ...{ growth, label: anchors.label, score, anchor: anchors.anchors[score as 0 | 1 | 2 | 3 | 4] },
      ...{ on, from, described_as: thing.id, key: [...found] },
      asked_first: [...told.askedFirst],
      causes: [...told.causes],
      would_tell: [...told.wouldTell],
      eaters: thing.eaters.map(({ animal, eats, evidence }) => ({
        ...{ animal, name: nameOfAnimal(animal), eats, evidence },
        lives_here: living.has(animal),
      })),
      ...{ crew: thing.crew, crew_said: thing.crewSaid.text },
      do: thing.doLines.map(({ text }) => text),
      dont: thing.dont.map(({ text }) => text),
      ...{ stop: thing.stop.text, closes_gates: thing.closesGates, toxin: thing.toxin?.text ?? null },
    },
    figures: told.figures,
    suspects: found.flatMap(({ id, of_20 }) => (id === null ? [] : [{ id, of20: of_20 }])),
  };
}

/** The likeliest thing scored under that growth; without traits the commonest. */
function thingOf(growth: Growth, likeliest: readonly string[]): GrowthFact {
  const scored = [...growthFacts.values()].filter(({ sighting }) => sighting === growth);
  const found = likeliest.find((id) => scored.some((one) => one.id === id));
  const common = [...scored].sort((a, b) => b.prior - a.prior)[0]?.id;
  const thing = growthFacts.get(found ?? NEAREST[growth] ?? common ?? "film-algae");
  if (thing === undefined)
    throw new RangeError(`Cannot describe ${growth}: facts/growths has nothing for it`);
  return thing;
}
