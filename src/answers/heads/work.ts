/**
 * What the engine says of the heads of one tank, worked out once: each kind followed, what feeds them, who is missing,
 * who is too many. Outputs, figures and advice are made from it.
 */
import { animalById, animals } from "../../catalogue/index.ts";
import { type Cause, causesOf } from "../../engine/heads/causes.ts";
import { type Fed, feedingOf } from "../../engine/heads/feeding.ts";
import {
  bareGlassDays,
  type FilmSlower,
  filmSlower,
  growthsBack,
  shelvesBack,
} from "../../engine/heads/growth-back.ts";
import { ASKED_DAYS, askFrom, headsOfKind, type KindHeads } from "../../engine/heads/kind.ts";
import { cameTo, isFollowed, lifeOf, MOST_FOLLOWED } from "../../engine/heads/life.ts";
import { type HeadRates, headRates } from "../../engine/heads/rates.ts";
import { likeliest, meanHeads } from "../../engine/heads/summary.ts";
import { type Missing, type Order, ordersOf, topUps } from "../../engine/heads/top-up.ts";
import { type LessFood, lessFood } from "../../engine/heads/way-down.ts";
import { type Larder, larderOf } from "../../engine/larder/larder.ts";
import { daysBetween, suitabilityOf } from "../../engine/stocking/suitability.ts";
import { companyOf, isCrew, leastGroup, warmthOf } from "../../engine/stocking/waves.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import { SHELVES, type ShelfId } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { TABLE } from "../figures/table.ts";
import { crewThere, DEFAULT_ENSEMBLE, membersOf } from "../plan/plan-tank.ts";
import type { RecordScene } from "../record-scene.ts";

export interface Asked {
  readonly ratio: number;
  readonly from: number;
  readonly lastSpokeOn: string;
  readonly causes: readonly Cause[];
}

export interface HeadsWork {
  readonly scene: RecordScene;
  readonly rates: HeadRates;
  readonly kinds: readonly KindHeads[];
  readonly notFollowed: readonly { readonly animal: Animal; readonly why: string }[];
  readonly fed: Fed;
  readonly asked: ReadonlyMap<string, Asked>;
  readonly orders: readonly Order[];
  readonly heldBack: readonly { readonly animal: Animal; readonly why: string }[];
  readonly growths: ReturnType<typeof growthsBack>;
  readonly bareDays: number | null;
  readonly slower: FilmSlower | null;
  readonly wayDown: readonly LessFood[];
}

/** By record, which is one object for as long as nothing is logged: page, bench and round ask for the same. */
const WORKED = new WeakMap<TankRecord, HeadsWork>();

export function headsWork(scene: RecordScene): HeadsWork {
  const known = WORKED.get(scene.record);
  if (known?.scene.facts === scene.facts && known.scene.today === scene.today) return known;
  const work = worked(scene);
  WORKED.set(scene.record, work);
  return work;
}

function worked(scene: RecordScene): HeadsWork {
  const { facts, record, today } = scene;
  const rates = headRates(TABLE);
  const all = animalsOf(scene);
  const followed = all.filter(isFollowed);
  const lives = followed.map((animal) => lifeOf(animal, facts, record, rates));
  const kinds = lives
    .filter((life) => cameTo(life) > 0 && cameTo(life) <= MOST_FOLLOWED)
    .map((life) => headsOfKind(life, rates));
  const larder = larderNow(facts);
  const crew = livingCrew(facts, kinds);
  const fed = feedingOf(
    crew,
    larder.parts.map(({ supply }) => supply),
    warmthOf(facts),
    facts.handFedMgCPerDay.central,
  );
  const asked = askedOf(scene, kinds, fed);
  const { missing, heldBack } = missingOf(facts, kinds, asked);
  const growths = growthsBack(record);
  const { items, unfed } = topUps(
    missing,
    spareOf(larder, fed),
    warmthOf(facts),
    today,
    shelvesBack(growths),
  );
  const noFood = unfed.map((animal) => ({
    animal,
    why: "The larder would not feed one more in 15 of 20 runs.",
  }));
  const bareDays = bareGlassDays(record);
  const slower = filmSlower(record);
  return {
    ...{ scene, rates, kinds, fed, asked, bareDays, slower },
    notFollowed: notFollowedOf(all, lives),
    orders: ordersOf(items, today),
    heldBack: [...heldBack, ...noFood],
    growths,
    wayDown: lessFood(fed, bareDays !== null || slower !== null),
  };
}

/** Everybody that ever was there, by the facts or the record, in the catalogue's order. */
function animalsOf({ facts, record }: RecordScene): Animal[] {
  const ids = new Set([
    ...facts.present.filter(({ count }) => count > 0).map(({ id }) => id),
    ...record.happenings.flatMap((one) => ("animal" in one ? [one.animal] : [])),
  ]);
  return animals.filter(({ id }) => ids.has(id));
}

function notFollowedOf(
  all: readonly Animal[],
  lives: readonly { readonly animal: Animal; readonly before: number; readonly events: readonly unknown[] }[],
): HeadsWork["notFollowed"] {
  return all.flatMap((animal) => {
    if (!isFollowed(animal))
      return [{ animal, why: "It comes as a culture or by itself, and is not counted by the head." }];
    const life = lives.find((one) => one.animal === animal);
    return life !== undefined && cameTo(life as Parameters<typeof cameTo>[0]) > MOST_FOLLOWED
      ? [{ animal, why: `More than ${MOST_FOLLOWED} are not followed head by head.` }]
      : [];
  });
}

/** The same larder as its page: the same members, the same day. */
function larderNow(facts: TankFacts): Larder {
  const residents = crewThere(facts);
  const scene = { daysAhead: 0, sightings: facts.sightings, residents, grazed: residents.length > 0 };
  return larderOf(membersOf(facts, DEFAULT_ENSEMBLE), scene);
}

/** The crew in the numbers that likely live; kinds that are not followed as the facts have them. */
function livingCrew(facts: TankFacts, kinds: readonly KindHeads[]) {
  const byId = new Map(kinds.map((kind) => [kind.life.animal.id, likeliest(kind.living)]));
  const heads = new Map<string, number>();
  for (const { animal, heads: listed } of crewThere(facts)) {
    heads.set(animal.id, byId.get(animal.id) ?? (heads.get(animal.id) ?? 0) + listed);
  }
  return [...heads].map(([id, count]) => ({ animal: animalById.get(id)!, heads: count }));
}

function askedOf(
  { facts, record, today }: RecordScene,
  kinds: readonly KindHeads[],
  fed: Fed,
): ReadonlyMap<string, Asked> {
  const from = askFrom(kinds.length);
  const company = companyOf(facts, animals)
    .filter(({ planned }) => !planned)
    .map(({ animal }) => animal);
  return new Map(
    kinds.flatMap((kind): [string, Asked][] => {
      const { logRatio, lastSpokeOn } = kind.trouble;
      if (logRatio < from || lastSpokeOn === null || daysBetween(lastSpokeOn, today) > ASKED_DAYS) return [];
      const own = fed.kinds.find(({ animal }) => animal.id === kind.life.animal.id) ?? null;
      const causes = causesOf({ kind, facts, record, fed: own, company });
      return [[kind.life.animal.id, { ratio: logRatio, from, lastSpokeOn, causes }]];
    }),
  );
}

/** Left for newcomers: what 15 of 20 runs reach, less what those there want. */
const spareOf = (larder: Larder, { wanted }: Fed): Record<ShelfId, number> =>
  Object.fromEntries(
    SHELVES.map((shelf) => [shelf, Math.max(0, larder.shelves[shelf].pessimistic - wanted[shelf])]),
  ) as Record<ShelfId, number>;

function missingOf(
  facts: TankFacts,
  kinds: readonly KindHeads[],
  asked: ReadonlyMap<string, Asked>,
): { missing: Missing[]; heldBack: { animal: Animal; why: string }[] } {
  const missing: Missing[] = [];
  const heldBack: { animal: Animal; why: string }[] = [];
  const company = companyOf(facts, animals);
  for (const { life, came, living, ahead } of kinds) {
    const { animal, events } = life;
    if (!isCrew(animal)) continue;
    const moved = events.reduce((sum, one) => sum + (one.kind === "moved_out" ? one.count : 0), 0);
    const wanted = came - moved;
    const now = meanHeads(living);
    const fewer = wanted - Math.round(now);
    const others = company.filter((mate) => mate.animal.id !== animal.id);
    const against = suitabilityOf(animal, { facts, company: others, daysAhead: 0 }).reasons[0];
    const why = asked.has(animal.id)
      ? "More died than is usual: first the cause, then new ones."
      : (against?.text ?? null);
    if (why !== null) {
      if (fewer > 0) heldBack.push({ animal, why });
      continue;
    }
    missing.push({
      ...{ animal, now, wanted },
      later: ahead.map(({ weeks, living: then }) => ({ weeks, heads: meanHeads(then) })),
      groupMin: leastGroup(animal),
      most: Math.min(
        Math.floor(facts.displayL.central / animal.spacingLitresPerAnimal.central),
        animal.maxPerTank ?? Number.POSITIVE_INFINITY,
      ),
    });
  }
  return { missing, heldBack };
}
