/**
 * A member's run through the days that its daybook tells of, from their first morning to today: with the water changes,
 * wipes, arrivals, losses and changes that happened. Calibration compares its days with what was observed; a forecast
 * begins where it ends. docs/model/calibration.md, "The run".
 */
import type { TankEvent } from "../balance/events.ts";
import type { Ledger } from "../balance/ledger.ts";
import { FF, NO2, NO3, PO4, TAN, XA, XN } from "../balance/pools.ts";
import { ENSEMBLE_STEPS, run, type StepRule } from "../balance/run.ts";
import type { World } from "../balance/world.ts";
import { type Member, readingsBefore } from "../larder/members.ts";
import { valueAt } from "../numeric/draws.ts";
import { exp } from "../numeric/elementary.ts";
import type { Spread } from "../types/estimate.ts";
import type { Given, Learned, LearnedWindow, WindowEvent } from "../types/learned.ts";
import type { TankFacts } from "../types/tank.ts";
import { careEvents, WIPED_OUT } from "./care.ts";
import { type CrewKind, type Standing, worldOf } from "./crew.ts";
import {
  atFilling,
  LAMP_DAY,
  LONGEST_RUN_UP_DAYS,
  RESIDENT_RESERVE,
  setToKnown,
  settled,
  startUpEvents,
} from "./run-up.ts";

/** Hair algae on the first day, times what the run-up has; nitrifiers likewise. Judgement. */
export const HAIR_AT_START: Spread = { low: 0.3, central: 1, high: 3.3 };
export const NITRIFIERS_AT_START: Spread = { low: 0.3, central: 1, high: 3.3 };

/**
 * Added to a concentration (mg N/L, mg P/L) before its logarithm is taken, so that what no kit can tell apart is near.
 * Observations, their errors and how far today's water lies off the run are all on this scale.
 */
export const NEAR_ZERO = { tan: 0.05, no2: 0.03, no3: 0.2, po4: 0.01 } as const;
export type Nutrient = keyof typeof NEAR_ZERO;
const POOL_OF: Readonly<Record<Nutrient, number>> = { tan: TAN, no2: NO2, no3: NO3, po4: PO4 };
export const QUANTITY_OF = {
  tan: "tan_mg_n_per_l",
  no2: "no2_mg_n_per_l",
  no3: "no3_mg_n_per_l",
  po4: "po4_mg_p_per_l",
} as const;

/** Ammonia that is told of so many days from filling stands for the first ammonia of a start. Judgement. */
const FIRST_DAYS = 3;

/** Runs the window; `onDay` gets every midnight's state, before that day's happenings. The world ends as the last one left it. */
export function runWindow(
  member: Member,
  kinds: readonly CrewKind[],
  facts: TankFacts,
  window: LearnedWindow,
  onDay?: (day: number, state: Float64Array, world: World) => void,
  steps: StepRule = ENSEMBLE_STEPS,
  keepLedger = false,
): {
  readonly world: World;
  readonly first: Float64Array;
  readonly state: Float64Array;
  /** Of the window; null unless asked for. */
  readonly ledger: Ledger | null;
} {
  const { days } = window;
  const own = member.learned!.own;
  const age = Math.max(0, Math.round(member.ageDays));
  const before: Member = {
    ...member,
    ageDays: member.ageDays - days,
    nutrients: member.learned!.startNutrients,
  };
  const atStart = { ...facts, readings: readingsBefore(facts, window.from), sightings: {} };
  const startKinds = kinds.map((kind) => ({ ...kind, residents: window.heads[kind.animal.id] ?? 0 }));
  const runUp = Math.min(LONGEST_RUN_UP_DAYS, Math.max(0, age - days));
  const fromFilling = runUp === Math.max(0, age - days);
  const world = worldOf(member, kinds, facts.phScale, "expected");
  const today = world.inputs;
  world.set(inputsGiven(window.first, today));
  const first = fromFilling ? atFilling(world, before, atStart) : settled(world, before);
  // Who told what was dosed at filling is not given the usual first ammonia besides.
  const told = days >= age && window.events.some(({ kind, t }) => kind === "ammonia" && t <= FIRST_DAYS);
  const starting = (fromFilling ? startUpEvents(world, before, atStart, age) : []).filter(
    ({ kind }) => !(told && kind === "dose"),
  );
  const events: TankEvent[] = starting.filter(({ t }) => t < runUp);
  for (const { species, residents } of startKinds) {
    if (residents === 0) continue;
    const t = fromFilling ? Math.max(0, runUp - 21) : 0;
    events.push({
      t,
      kind: "addAnimals",
      species: species.id,
      count: residents,
      condition: RESIDENT_RESERVE,
    });
  }
  const care = careEvents(atStart, runUp, LAMP_DAY.dry);
  events.push(...wipedBefore(care, runUp, atStart.wipeGlassEveryDays.central, own.wipedBefore));
  events.sort((a, b) => a.t - b.t);
  const { state } = run(world, first, events, { days: runUp, steps });
  setToKnown(state, before, startKinds, atStart);
  beginWith(state, own);
  const holds = new Set(kinds.map(({ animal }) => animal.id));
  const happened = [
    ...starting.filter(({ t }) => t >= runUp).map((event) => ({ ...event, t: event.t - runUp })),
    ...window.events.flatMap((event) => eventOf(event, holds, facts, today)),
  ].sort((a, b) => a.t - b.t);
  const end = run(world, state, happened, {
    ...{ days, steps, keepLedger },
    ...(onDay === undefined ? {} : { rowEvery: 1, onRow: (day, y) => onDay(day, y, world) }),
  });
  return { world, first: state, state: end.state, ledger: end.ledger };
}

/**
 * Care before the daybook with its wipes moved: nobody knows how long before the first day the last one was, so each
 * member has it on one of the days of its interval, by a score. A first sight of the glass then tells no growth.
 */
function wipedBefore(
  care: readonly TankEvent[],
  runUp: number,
  everyDays: number,
  score: number,
): readonly TankEvent[] {
  const wipes = care.filter(({ kind }) => kind === "wipeGlass");
  const last = wipes.at(-1);
  if (last === undefined) return care;
  const interval = Math.max(1, Math.round(everyDays));
  const before = 1 + Math.min(interval - 1, Math.floor(interval * shareBelow(score)));
  const moved = wipes.map((wipe) => ({ ...wipe, t: wipe.t + (runUp - before - last.t) }));
  return [...care.filter(({ kind }) => kind !== "wipeGlass"), ...moved];
}

/** Share of standard normal scores below one, within 0.01: a logistic curve. */
const shareBelow = (score: number): number => 1 / (1 + exp(-1.702 * score));

/** Hair algae and nitrifiers of the daybook's first day, at a score each; `state` is changed. */
export function beginWith(
  state: Float64Array,
  { hairAtStart, nitrifiersAtStart }: { readonly hairAtStart: number; readonly nitrifiersAtStart: number },
): void {
  const nitrifiers = valueAt(NITRIFIERS_AT_START, nitrifiersAtStart);
  state[FF] = state[FF]! * valueAt(HAIR_AT_START, hairAtStart);
  state[XA] = state[XA]! * nitrifiers;
  state[XN] = state[XN]! * nitrifiers;
}

/** What the keeper gave at a time, of what the tank is given today. */
function inputsGiven({ feed, fish, hours, light, skimmer }: Given, today: World["inputs"]) {
  return {
    feed: today.feed * feed,
    fish: today.fish * fish,
    hours: Math.min(24, today.hours * hours),
    light,
    ...(skimmer === null ? {} : { skimOn: skimmer }),
  };
}

function eventOf(
  event: WindowEvent,
  holds: ReadonlySet<string>,
  facts: TankFacts,
  today: World["inputs"],
): TankEvent[] {
  const { t } = event;
  switch (event.kind) {
    case "water":
      return [
        {
          ...{ t, kind: "waterChange", fraction: event.share, siphon: event.siphon },
          newNO3N: facts.newWaterNo3NMgPerL.central,
          newPO4P: facts.newWaterPo4PMgPerL.central,
        },
      ];
    case "wipe":
      return [{ t, kind: "wipeGlass", fraction: event.share, removed: WIPED_OUT }];
    case "siphon":
      return [{ t, kind: "waterChange", fraction: 0, siphon: event.share }];
    case "stir":
      return [{ t, kind: "stirSand", fraction: event.share }];
    case "pull":
      return [{ t, kind: "removeFilaments", fraction: event.share }];
    case "harvest":
      return [{ t, kind: "harvestRefugium", fraction: event.share }];
    case "filter":
      return [{ t, kind: "changeFilter" }];
    case "sorbent":
      return [{ t, kind: "renewSorbent" }];
    case "arrive":
      return holds.has(event.animal)
        ? [{ t, kind: "addAnimals", species: event.animal, count: event.count, condition: event.condition }]
        : [];
    case "leave":
      return holds.has(event.animal)
        ? [{ t, kind: "removeAnimals", species: event.animal, count: event.count }]
        : [];
    case "ammonia":
      return [{ t, kind: "dose", pool: "TAN", mg: event.mgNPerL * today.V }];
    case "body":
      return [{ t, kind: "carrion", mgC: event.mgC, mgN: event.mgN, mgP: event.mgP }];
    case "given":
      return [{ t, kind: "set", ...inputsGiven(event, today) }];
  }
}

/** Share of the hair algae seen below which a run contradicts the eye, which errs by far less; and a floor, mg C/m2. Judgement. */
const NEXT_TO_NONE = 0.1;
const LEAST_CROP = 1e-3;

/**
 * A learned member today: where its run through the daybook's days ends. What was observed has taught the run and sets
 * nothing, but hair algae that a run has next to none of; the water is moved by what the latest readings leave unexplained;
 * heads are those on the keeper's list without the deaths that the head counts let it have.
 */
export function standingLearned(member: Member, kinds: readonly CrewKind[], facts: TankFacts): Standing {
  const { window } = facts.learned as Learned;
  const { own, unseenLosses } = member.learned!;
  const { hairSeen } = window;
  let hairThen = 0;
  const { state: y, world } = runWindow(member, kinds, facts, window, (day, state) => {
    if (day === hairSeen?.day) hairThen = state[FF]! / Math.max(1e-3, member.inputs.Ar);
  });
  // What is seen is there: what befell it since, a pull as well, is the run's.
  if (hairSeen !== undefined && hairThen < NEXT_TO_NONE * hairSeen.mgCPerM2)
    y[FF] = y[FF]! * (hairSeen.mgCPerM2 / Math.max(hairThen, LEAST_CROP));
  const observed = new Set(window.observed);
  const litres = member.inputs.V;
  for (const nutrient of Object.keys(NEAR_ZERO) as Nutrient[]) {
    if (!observed.has(QUANTITY_OF[nutrient])) continue;
    const c = NEAR_ZERO[nutrient];
    const pool = POOL_OF[nutrient];
    y[pool] = litres * Math.max(0, (y[pool]! / litres + c) * exp(own[`${nutrient}Today`]) - c);
  }
  const filmSeen = ["film_glass", "film_rock", "film_sand"].some((film) => observed.has(film));
  const unseen: TankFacts = {
    ...facts,
    readings: facts.readings.filter(({ quantity }) => !observed.has(quantity)),
    sightings: Object.fromEntries(
      Object.entries(facts.sightings).filter(
        ([growth]) => !observed.has(growth) && !(growth === "diatoms" && filmSeen),
      ),
    ),
  };
  // What nobody observed stays as the run has it, unless a reading or sighting from elsewhere says more.
  const living = kinds.map((kind) => ({
    ...kind,
    residents: Math.max(0, kind.residents - (unseenLosses[kind.animal.id] ?? 0)),
  }));
  setToKnown(y, { ...member, ageDays: 0 }, living, unseen);
  return { member: { ...member, inputs: { ...world.inputs } }, state: y };
}
