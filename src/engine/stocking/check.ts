/**
 * The plan meets the forecast: every member is run through the balance with the waves as drafted, and each kind is
 * asked for 90 days after its last arrival. A kind that is not alive then in 15 of 20 runs has its number cut.
 */

import { survivalOf } from "../ahead/chances.ts";
import { acrossMembers, type Forecast, forecast, type Progress, ROW_DAYS } from "../ahead/forecast.ts";
import { type CrewKind, crewKind } from "../ahead/start.ts";
import type { TankEvent } from "../balance/events.ts";
import type { Member } from "../larder/members.ts";
import type { Animal } from "../types/animal.ts";
import type { TankFacts } from "../types/tank.ts";
import type { Company } from "./suitability.ts";
import { isCrew, plannedCrew, type WaveDraft } from "./waves.ts";

export const CHECK_DAYS = 90;
/** Runs of 20 in which a kind must be alive, deaths of age counted out. */
export const ALIVE_RUNS = 15;

export interface KindCheck {
  readonly id: string;
  /** Heads after the last wave that brings it. */
  readonly heads: number;
  readonly resident: boolean;
  /** Day it is asked for. */
  readonly day: number;
  /** In how many of 20 runs at least half of the heads are alive then. */
  readonly aliveOf20: number;
  /** The same if nothing but age took any. */
  readonly agedOf20: number;
  /** Share of runs in which half are alive, against what age alone would leave: below 15 of 20 it starves too often. */
  readonly fedShare: number;
  /** Median share of the heads alive. */
  readonly survive: number;
  /** Middle reserve of the living, 0 to 1; null where none lives in the middle run. */
  readonly condition: number | null;
}

export interface PlanCheck {
  readonly kinds: readonly KindCheck[];
  readonly forecast: Forecast;
}

/** Kinds that live in the tank or arrive with a wave, in one order for every run. */
export function kindsOf(
  company: readonly Company[],
  drafts: readonly WaveDraft[],
  animals: readonly Animal[],
): CrewKind[] {
  const residents = new Map<string, number>();
  for (const { animal, count, planned } of company) {
    if (!planned && isCrew(animal)) residents.set(animal.id, (residents.get(animal.id) ?? 0) + count);
  }
  const planned = company
    .filter(({ animal, planned: later }) => later && isCrew(animal))
    .map(({ animal }) => animal.id);
  const arriving = new Set([...planned, ...drafts.flatMap(({ bought }) => [...bought.keys()])]);
  return animals
    .filter(({ id }) => residents.has(id) || arriving.has(id))
    .map((animal) => crewKind(animal, residents.get(animal.id) ?? 0));
}

/** New arrivals are thin: what they can go without is the low figure of the catalogue. */
export function arrivalCondition({ starvationToleranceDays: { low, central } }: Animal): number {
  return Math.min(0.6, low / central);
}

/** What the keeper has planned, as events: thin as all new arrivals are. */
export function plannedArrivals(facts: TankFacts, kinds: readonly CrewKind[]): TankEvent[] {
  return plannedCrew(
    facts,
    kinds.map(({ animal }) => animal),
  ).map(({ id, count, day }) => {
    const { animal } = kinds.find(({ species }) => species.id === id)!;
    return { t: day, kind: "addAnimals", species: id, count, condition: arrivalCondition(animal) };
  });
}

/** The waves as events. */
export function arrivals(drafts: readonly WaveDraft[], kinds: readonly CrewKind[]): TankEvent[] {
  return drafts.flatMap(({ date, bought }) =>
    [...bought].map(([id, count]): TankEvent => {
      const kind = kinds.find(({ species }) => species.id === id);
      if (kind === undefined) throw new RangeError(`Cannot add ${id}: it is among no kinds of this run`);
      const condition = arrivalCondition(kind.animal);
      return { t: date.day, kind: "addAnimals", species: id, count, condition };
    }),
  );
}

/** Runs the plan and asks for every kind. */
export function* checkPlan(given: {
  readonly facts: TankFacts;
  readonly members: readonly Member[];
  readonly kinds: readonly CrewKind[];
  readonly drafts: readonly WaveDraft[];
  readonly seed: number;
  /** Run at least so far, with oxygen: a caller that shows the weeks ahead need not run them again. */
  readonly outlookDays?: number | undefined;
  /** Runs of the first members with these very drafts. */
  readonly known?: Forecast | undefined;
}): Generator<Progress, PlanCheck> {
  const { facts, members, kinds, drafts, seed, outlookDays, known } = given;
  const own = plannedCrew(
    facts,
    kinds.map(({ animal }) => animal),
  );
  const events = [...arrivals(drafts, kinds), ...plannedArrivals(facts, kinds)];
  const lastArrival = (id: string) =>
    Math.max(
      0,
      ...drafts.filter(({ bought }) => bought.has(id)).map(({ date }) => date.day),
      ...own.filter((row) => row.id === id).map(({ day }) => day),
    );
  const asked = kinds.map(({ animal }) => roundUp(lastArrival(animal.id) + CHECK_DAYS));
  const days = Math.max(CHECK_DAYS + ROW_DAYS, ...asked, outlookDays ?? 0);
  const withOxygen = outlookDays !== undefined;
  const outlook = yield* forecast({ facts, members, kinds, events, days, seed, withOxygen, known });
  const checks = kinds.map(({ animal, residents }, k): KindCheck => {
    const ownHeads = own.filter(({ id }) => id === animal.id).reduce((sum, { count }) => sum + count, 0);
    const came = drafts.reduce((sum, { bought }) => sum + (bought.get(animal.id) ?? 0), ownHeads);
    const heads = residents + came;
    const week = Math.min(outlook.weeks - 1, asked[k]! / ROW_DAYS);
    const sheaf = outlook.kinds[k]!.heads;
    const first = acrossMembers(sheaf, 0);
    const shares = Array.from(acrossMembers(sheaf, week), (n, m) => n / (first[m]! + came))
      .filter(Number.isFinite)
      .sort((a, b) => a - b);
    const { aliveOf20, agedOf20, fedShare } = survivalOf(sheaf, week, {
      came,
      deathRate: kinds[k]!.species.m0,
      days: CHECK_DAYS,
    });
    const condition = acrossMembers(outlook.kinds[k]!.condition, week).filter(Number.isFinite).sort();
    return {
      id: animal.id,
      heads,
      resident: residents + ownHeads > 0,
      day: asked[k]!,
      aliveOf20,
      agedOf20,
      fedShare,
      survive: shares[shares.length >> 1] ?? 0,
      condition: condition.length * 2 >= shares.length ? condition[condition.length >> 1]! : null,
    };
  });
  return { kinds: checks, forecast: outlook };
}

const roundUp = (day: number): number => Math.ceil(day / ROW_DAYS) * ROW_DAYS;
