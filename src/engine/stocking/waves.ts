/**
 * Waves one after another: each an integer programme at the supply of its own day, on top of those before, and each
 * judged against the planned company too. No forecast here: that is check.ts.
 */
import { awayDays, QUIET_BEFORE_DAYS } from "../ahead/away.ts";
import { type Larder, larderOf } from "../larder/larder.ts";
import type { Member } from "../larder/members.ts";
import type { Animal, AnimalRisk } from "../types/animal.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import { wouldEat } from "./enemies.ts";
import type { Solution, Solve } from "./linear-model.ts";
import type { Prices } from "./prices.ts";
import {
  breakEven,
  type Candidate,
  mostAlone,
  Programme,
  type ProgrammeAnswer,
  type ProgrammeInput,
  type ShelfSupply,
} from "./programme.ts";
import { firstWaveMost, type QuietDays, type WaveDate, waveDates } from "./schedule.ts";
import { type Company, daysBetween, type Suitability, suitabilityOf } from "./suitability.ts";

/** What planning needs besides the tank: the catalogue, the ensemble, a solver, what things are worth. */
export interface PlanningTools {
  readonly animals: readonly Animal[];
  readonly members: readonly Member[];
  readonly solve: Solve;
  readonly prices: Prices;
}

/** Limits that may be set aside, to learn what each costs. All are in force where nothing is said. */
export interface Limits {
  readonly spacing: boolean;
  readonly shop: boolean;
  readonly plannedShare: boolean;
  /** Most heads of a kind in all, where the forecast has shown that more do not live. */
  readonly mended: ReadonlyMap<string, number>;
  readonly wishes: boolean;
}
export const ALL_LIMITS: Limits = {
  spacing: true,
  shop: true,
  plannedShare: true,
  mended: new Map(),
  wishes: true,
};

export interface WaveDraft {
  readonly date: WaveDate;
  readonly larder: Larder;
  readonly supply: ShelfSupply;
  readonly programme: Programme;
  readonly answer: ProgrammeAnswer;
  /** Heads bought in this wave, by kind. */
  readonly bought: ReadonlyMap<string, number>;
  readonly suitability: ReadonlyMap<string, Suitability>;
}

/** Under this live mass animals are bought three at least. @source model-design */
const SMALL_ANIMAL_G = 1.5;
const SMALL_GROUP = 3;
/** Most of a shelf that the tank's grazing fish are taken to eat before the crew. Judgement. */
const FISH_TAKE_MOST = 0.5;
/** How much faster animals burn for 10 °C more. @source model-design */
const Q10_ANIMAL = 2;

/** Kinds of the catalogue that live in the tank or are planned by its keeper. */
export function companyOf(facts: TankFacts, animals: readonly Animal[]): Company[] {
  const byId = new Map(animals.map((animal) => [animal.id, animal]));
  const as = (planned: boolean) => (row: { id: string; count: number }) => {
    const animal = byId.get(row.id);
    return animal === undefined || row.count <= 0 ? [] : [{ animal, count: row.count, planned }];
  };
  return [...facts.present.flatMap(as(false)), ...facts.planned.flatMap(as(true))];
}

/** Crew that the keeper has planned: kind, heads and the day from the plan's day; without a date, today. */
export function plannedCrew(
  facts: TankFacts,
  animals: readonly Animal[],
): readonly { readonly id: string; readonly count: number; readonly day: number }[] {
  const crew = new Set(animals.filter(isCrew).map(({ id }) => id));
  return facts.planned
    .filter(({ id, count }) => crew.has(id) && count > 0)
    .map(({ id, count, on }) => ({
      id,
      count,
      day: on === null ? 0 : Math.max(0, daysBetween(facts.asOf, on)),
    }));
}

/** Members of the crew: animals that live off the shelves. Fish are fed; what they graze is taken off first. */
export const isCrew = (animal: Animal): boolean =>
  animal.group !== "fish" && SHELVES.some((shelf) => animal.diet[shelf] > 0);

export const warmthOf = (facts: TankFacts): number => Q10_ANIMAL ** ((facts.temperatureC.central - 25) / 10);

const filmSeen = ({ sightings }: TankFacts): boolean =>
  [sightings.film_glass, sightings.film_rock, sightings.diatoms, sightings.hair_algae].some(
    (cover) => cover === "patches" || cover === "covered",
  );

/** Supply left to the crew when fish that graze have had theirs. */
function supplyFor(
  larder: Larder,
  company: readonly Company[],
  warmth: number,
  plannedShare: number,
): ShelfSupply {
  const left = (of: (shelf: ShelfId) => number) =>
    Object.fromEntries(
      SHELVES.map((shelf): [ShelfId, number] => {
        const fishTake = company
          .filter(({ animal, planned }) => animal.group === "fish" && !planned)
          .reduce(
            (sum, { animal, count }) => sum + count * animal.diet[shelf] * breakEven(animal, warmth),
            0,
          );
        const supply = of(shelf);
        const grazed =
          shelf === "uneaten_feed" || shelf === "carrion" ? 0 : Math.min(fishTake, FISH_TAKE_MOST * supply);
        return [shelf, supply - grazed];
      }),
    ) as Record<ShelfId, number>;
  return {
    pessimistic: left((shelf) => plannedShare * larder.shelves[shelf].pessimistic),
    central: left((shelf) => larder.shelves[shelf].supply.central),
  };
}

/** Nobody at home, and the days before: what has just come would be watched by nobody. On the day back heads are counted. */
const quietDays = (facts: TankFacts): QuietDays[] =>
  awayDays(facts).map(({ leave, back }) => ({ from: leave - QUIET_BEFORE_DAYS, to: back }));

/** Drafts every wave; a wave that buys nothing is drafted too. */
export function draftWaves(facts: TankFacts, tools: PlanningTools, limits: Limits = ALL_LIMITS): WaveDraft[] {
  const company = companyOf(facts, tools.animals);
  const hasCrew = company.some(({ animal, planned }) => !planned && isCrew(animal));
  const dates = waveDates(facts.ageDays.central, filmSeen(facts), hasCrew, quietDays(facts));
  const had = new Map<string, number>();
  for (const { animal, count, planned } of company) {
    if (isCrew(animal) && !planned) had.set(animal.id, (had.get(animal.id) ?? 0) + count);
  }
  const drafts: WaveDraft[] = [];
  const wishes = wishesToCome(facts, tools, limits, company, dates.at(-1)!.day, had);
  let since = Number.NEGATIVE_INFINITY;
  for (const date of dates) {
    // What the keeper has planned for the time before this wave is there by then, and eats.
    for (const { id, count, day } of plannedCrew(facts, tools.animals)) {
      if (day > since && day <= date.day) had.set(id, (had.get(id) ?? 0) + count);
    }
    since = date.day;
    const first = drafts.every(({ bought }) => bought.size === 0);
    const draft = draftWave(facts, tools, limits, company, date, had, wishes, first);
    if (draft === null) break;
    drafts.push(draft);
    for (const [id, heads] of draft.answer.heads) had.set(id, heads);
  }
  return drafts;
}

/**
 * Wishes that some wave will grant, in the keeper's order: nothing that would eat them or be eaten is bought before
 * they come, and of two wishes that would eat each other the first stands.
 */
function wishesToCome(
  facts: TankFacts,
  { animals }: PlanningTools,
  limits: Limits,
  company: readonly Company[],
  lastDay: number,
  had: ReadonlyMap<string, number>,
): Animal[] {
  const granted: Animal[] = [];
  for (const id of limits.wishes ? facts.wishes : []) {
    const animal = animals.find((one) => one.id === id);
    if (animal === undefined || granted.some((other) => wouldEat(animal, other))) continue;
    const fits = suitabilityOf(animal, { facts, company, daysAhead: lastDay }).reasons.length === 0;
    const besides = notCounted(animal, facts, company, BEFORE_ANY_WAVE);
    if (candidateFor(animal, had.get(id) ?? 0, besides, fits, facts, limits).wished > 0) granted.push(animal);
  }
  return granted;
}

/** Least heads of a kind to have, if any: its own group, and three of small animals. */
export const leastGroup = ({ groupMin, liveWetMassG }: Animal): number =>
  Math.max(groupMin, liveWetMassG.central < SMALL_ANIMAL_G ? SMALL_GROUP : 1);

const BEFORE_ANY_WAVE = -1;

/** Heads of a kind that a wave of that day does not count as there: planned for later, and fish that live there. */
function notCounted(animal: Animal, facts: TankFacts, company: readonly Company[], waveDay: number): number {
  const rows = isCrew(animal)
    ? plannedCrew(facts, [animal]).filter(({ day }) => day > waveDay)
    : company.filter((mate) => mate.animal.id === animal.id);
  return rows.reduce((heads, { count }) => heads + count, 0);
}

/** One wave on top of `had`; null when the solver found nothing at all. */
function draftWave(
  facts: TankFacts,
  tools: PlanningTools,
  limits: Limits,
  company: readonly Company[],
  date: WaveDate,
  had: ReadonlyMap<string, number>,
  wishes: readonly Animal[],
  first: boolean,
): WaveDraft | null {
  const residents = company
    .filter(({ planned, animal }) => !planned && isCrew(animal))
    .map(({ animal, count }) => ({ animal, heads: count }));
  const larder = larderOf(tools.members, {
    daysAhead: date.day,
    sightings: facts.sightings,
    residents,
    grazed: residents.length > 0,
  });
  const warmth = warmthOf(facts);
  const supply = supplyFor(larder, company, warmth, limits.plannedShare ? date.plannedShare : 1);
  const shopFacts: TankFacts = limits.shop
    ? facts
    : { ...facts, exclusions: [], stockList: null, priceBandMax: 4 };
  const comes = [...tools.animals.filter(({ id }) => (had.get(id) ?? 0) > 0), ...wishes];
  const suitability = new Map<string, Suitability>();
  const candidates: Candidate[] = [];
  for (const animal of tools.animals) {
    const already = had.get(animal.id) ?? 0;
    const verdict = suitabilityOf(animal, { facts: shopFacts, company, daysAhead: date.day });
    suitability.set(animal.id, verdict);
    if (!isCrew(animal) && animal.role !== "crew" && animal.role !== "crew_with_caution") continue;
    const fits = verdict.reasons.length === 0 && !comes.some((other) => wouldEat(animal, other));
    const besides = notCounted(animal, facts, company, date.day);
    const candidate = candidateFor(animal, already, besides, fits, facts, limits);
    const fed = fedCandidate(candidate, supply, warmth);
    if (fed.cap > 0) candidates.push(fed);
  }
  const base = { candidates: oneHazard(candidates, facts.wishes), supply, prices: tools.prices, warmth };
  // What those already there lack is learnt first, with nothing bought: food for newcomers must not come at their cost.
  const residentsLack = lackOf(base, tools.solve);
  if (residentsLack === null) return null;
  const wished = base.candidates.reduce(
    (most, { animal, wished: heads }) => most + heads * breakEven(animal, warmth),
    0,
  );
  const asked = sum(base.candidates.map((c) => Math.max(0, c.wished - c.already)));
  const programme = new Programme({
    ...{ ...base, handFedMost: residentsLack + wished + 1e-6 },
    mostBought: first ? Math.max(asked, firstWaveMost(facts.displayL.central)) : undefined,
  });
  const { answer } = solveProgramme(programme, tools.solve);
  if (answer === null) return null;
  const bought = new Map<string, number>();
  for (const [id, heads] of answer.heads) {
    const more = heads - (had.get(id) ?? 0);
    if (more > 0) bought.set(id, more);
  }
  return { date, larder, supply, programme, answer, bought, suitability };
}

/** Kinds that can poison a tank or sting its keeper: each is watched alone before the next comes. */
const HAZARDS: readonly AnimalRisk[] = ["releases_toxin_on_death", "eggs_toxic", "venomous_or_spiny"];

/**
 * Of the wishes that are new and a hazard, a wave brings the first of the keeper's order alone: when something is
 * amiss, it must be plain with whom. The others wait for later waves. Judgement.
 */
function oneHazard(candidates: readonly Candidate[], wishes: readonly string[]): Candidate[] {
  const isNew = ({ animal, already, wished }: Candidate): boolean =>
    wished > 0 && already === 0 && HAZARDS.some((risk) => animal.risks.includes(risk));
  const first = wishes.find((id) => candidates.some((one) => one.animal.id === id && isNew(one)));
  // A new one that has to wait has no head there and may have none: it is no candidate of this wave.
  return candidates.filter((one) => !isNew(one) || one.animal.id === first);
}

/** Food that those already there do not find, mg C a day; null when the solver found nothing at all. */
function lackOf(base: Omit<ProgrammeInput, "handFedMost">, solve: Solve): number | null {
  // Where nobody lives nobody lacks: no need to ask the solver.
  if (base.candidates.every(({ already }) => already === 0)) return 0;
  const candidates = base.candidates.map((c) => ({ ...c, cap: c.already, wished: 0 }));
  const { answer } = solveProgramme(new Programme({ ...base, candidates, handFedMost: 1e6 }), solve);
  return answer === null ? null : sum(answer.handFed.values());
}

function candidateFor(
  animal: Animal,
  already: number,
  besides: number,
  fits: boolean,
  facts: TankFacts,
  limits: Limits,
): Candidate {
  const room = limits.spacing
    ? Math.floor(facts.displayL.central / animal.spacingLitresPerAnimal.central) - besides
    : MOST_HEADS;
  const mates = (animal.maxPerTank ?? MOST_HEADS) - besides;
  const mended = limits.mended.get(animal.id) ?? MOST_HEADS;
  const groupMin = leastGroup(animal);
  const most = fits ? Math.min(room, mates, mended, MOST_HEADS) : already;
  const cap = most >= groupMin ? Math.max(already, most) : already;
  const asked = limits.wishes && facts.wishes.includes(animal.id) && animal.group !== "pod";
  const isWished = asked && cap > already;
  return {
    animal,
    already,
    cap,
    groupMin,
    wished: isWished ? Math.min(cap, groupMin) : 0,
    byHand: asked && (already > 0 || isWished) ? "as_wished" : already > 0 ? "if_need_be" : "no",
  };
}
/**
 * Pods come as a culture of hundreds and settle their own number: nobody buys them by the head. Of the rest, no more
 * than the pessimistic supply could feed if nothing else ate from it; a wish may be fed by hand.
 */
function fedCandidate(candidate: Candidate, supply: ShelfSupply, warmth: number): Candidate {
  const { animal, already, cap, groupMin, wished } = candidate;
  if (wished > 0) return candidate;
  const food =
    animal.group === "pod" ? already : Math.max(already, mostAlone(animal, supply.pessimistic, warmth, cap));
  return { ...candidate, cap: food >= groupMin ? Math.min(cap, food) : already };
}

/** No crew is larger of one kind: tanks are counted, pods are not bought by the head. */
const MOST_HEADS = 400;

function solveProgramme(
  programme: Programme,
  solve: Solve,
): { solution: Solution; answer: ProgrammeAnswer | null } {
  const solution = solve(programme.model);
  return { solution, answer: programme.read(solution) };
}

const sum = (values: Iterable<number>): number => {
  let total = 0;
  for (const value of values) total += value;
  return total;
};
