/**
 * What happens in a twin's tank, unknown to its keeper: one draw of every parameter and fact, run through the daybook's
 * weeks and the four after. A "departure" makes the truth one that the model is not (other-truths.ts).
 */
import { modelParameters } from "../../src/catalogue/index.ts";
import { careEvents, WIPED, WIPED_OUT } from "../../src/engine/ahead/care.ts";
import { type CrewKind, standingOf, worldOf } from "../../src/engine/ahead/start.ts";
import { beginWith } from "../../src/engine/ahead/window.ts";
import type { TankEvent } from "../../src/engine/balance/events.ts";
import { D, FF, FG, FR, FS, headsAt, NO2, NO3, PO4, reserveAt, TAN } from "../../src/engine/balance/pools.ts";
import { DISPLAY_STEPS, run } from "../../src/engine/balance/run.ts";
import { drawMembers, type Member } from "../../src/engine/larder/members.ts";
import { RandomStream } from "../../src/engine/numeric/random.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { nToNitrate, pToPhosphate } from "../../src/engine/units/nutrients.ts";
import { Chance } from "../kit/chance.ts";
import type { Departure } from "./other-truths.ts";
import { crewOf, DAYBOOK_DAYS, factsBefore } from "./tank.ts";

export const FUTURE_DAYS = 28;
/** Added to a twin's seed for the draw of its truth. */
export const TRUTH_SEED = 7_000_000;

/** The tank at one midnight, in the units of a forecast. */
export interface TruthDay {
  readonly tan: number;
  readonly no2: number;
  readonly no3: number;
  readonly po4: number;
  readonly film_glass: number;
  readonly film_rock: number;
  readonly film_sand: number;
  readonly hair_algae: number;
  readonly detritus_sand: number;
  readonly heads: readonly number[];
  /** Reserve of each kind, share of full; not a number where none is left. */
  readonly condition: readonly number[];
}

export interface Truth {
  readonly member: Member;
  readonly kinds: readonly CrewKind[];
  /** From the daybook's first day on, one a day. */
  readonly days: readonly TruthDay[];
  /** What the keeper did in the daybook's weeks, day 0 the first. */
  readonly done: readonly TankEvent[];
  /** The tank on the day that the keeper asks, and what it is given from then on. */
  readonly today: { readonly state: Float64Array; readonly member: Member };
  readonly later: readonly TankEvent[];
}

/** `more`: what happens besides the usual care, day 0 the daybook's first. */
export function truthOf(
  facts: TankFacts,
  seed: number,
  departure: Departure,
  more: readonly TankEvent[] = [],
): Truth {
  const chance = new Chance(seed, 12);
  const [drawn] = drawMembers(factsBefore(facts, DAYBOOK_DAYS), modelParameters, {
    count: 1,
    seed: TRUTH_SEED + seed,
  });
  const there = crewOf(facts).map((kind) => ({ ...kind, residents: kind.residents - addedOf(kind, more) }));
  const kinds = departure.crew?.(there) ?? there;
  const member = departure.member?.(drawn!) ?? drawn!;
  const start = standingOf(member, kinds, factsBefore(facts, DAYBOOK_DAYS));
  // The glass was wiped on one of the days of its interval before the daybook's first.
  const first = new Chance(seed, 17);
  const daysSinceWipe = first.whole(0, Math.max(1, facts.wipeGlassEveryDays.central) - 1);
  const done = [...doneBy(facts, daysSinceWipe, chance), ...more].sort((a, b) => a.t - b.t);
  // After the daybook's weeks the keeper goes on as told: what is forecast is this.
  const later = careEvents(facts, FUTURE_DAYS).map((event) => ({ ...event, t: event.t + DAYBOOK_DAYS }));
  const days: TruthDay[] = [];
  const random = new RandomStream(seed, 13);
  const all = [...done, ...later];
  let { state } = start;
  beginWith(state, { nitrifiersAtStart: first.normal(), hairAtStart: first.normal() });
  state[FG] = glassSince(daysSinceWipe, start, kinds, facts);
  let now = start.member;
  const drawnParameters = start.member.parameters;
  let today = { state, member: now };
  for (let day = 0; day <= DAYBOOK_DAYS + FUTURE_DAYS; day += 1) {
    if (day === DAYBOOK_DAYS) today = { state, member: now };
    days.push(dayOf(state, now, kinds));
    const changed = departure.eachDay?.(drawnParameters, { day, po4MgPPerL: state[PO4]! / now.inputs.V });
    if (changed !== undefined) now = { ...now, parameters: { ...drawnParameters, ...changed } };
    const world = worldOf(now, kinds, facts.phScale, "drawn");
    const events = all.filter(({ t }) => t === day).map((event) => ({ ...event, t: 0 }));
    ({ state } = run(world, state, events, { days: 1, steps: DISPLAY_STEPS, random }));
    now = { ...now, inputs: world.inputs };
  }
  return { member, kinds, days, done, today, later };
}

const addedOf = ({ animal }: CrewKind, events: readonly TankEvent[]): number =>
  events.reduce((sum, event) => {
    const added = event.kind === "addAnimals" && event.species === animal.id ? event.count : 0;
    return sum + added;
  }, 0);

/** Film on the glass so many days after a wipe, mg C: as it grows back in the tank as it stands. */
function glassSince(
  days: number,
  { member, state }: Truth["today"],
  kinds: readonly CrewKind[],
  facts: TankFacts,
): number {
  const world = worldOf(member, kinds, facts.phScale, "expected");
  const wiped = { t: 0, kind: "wipeGlass", fraction: WIPED, removed: WIPED_OUT } as const;
  return run(world, state, [wiped], { days, steps: DISPLAY_STEPS }).state[FG]!;
}

/** Usual care with a keeper's irregularity: each chore a day early, on its day or late, now and then left out. */
function doneBy(facts: TankFacts, daysSinceWipe: number, chance: Chance): TankEvent[] {
  return careEvents(facts, DAYBOOK_DAYS + daysSinceWipe)
    .map((event) => (event.kind === "wipeGlass" ? { ...event, t: event.t - daysSinceWipe } : event))
    .filter(({ t }) => t < DAYBOOK_DAYS)
    .filter((event) => event.kind === "changeFilter" || !chance.is(0.1))
    .map((event) => ({ ...event, t: Math.min(DAYBOOK_DAYS - 1, Math.max(0, event.t + chance.whole(-1, 1))) }))
    .sort((a, b) => a.t - b.t);
}

/** The tank at a midnight. */
export function dayOf(y: Float64Array, { inputs }: Member, kinds: readonly CrewKind[]): TruthDay {
  const perL = 1 / inputs.V;
  return {
    tan: y[TAN]! * perL,
    no2: y[NO2]! * perL,
    no3: nToNitrate(y[NO3]! * perL),
    po4: pToPhosphate(y[PO4]! * perL),
    film_glass: y[FG]! / inputs.Ag,
    film_rock: y[FR]! / inputs.Ar,
    film_sand: inputs.As > 1e-3 ? y[FS]! / inputs.As : 0,
    hair_algae: y[FF]! / inputs.Ar,
    detritus_sand: inputs.As > 1e-3 ? y[D]! / inputs.As : 0,
    heads: kinds.map((_, s) => y[headsAt(s)]!),
    condition: kinds.map(
      ({ species }, s) => y[reserveAt(s, kinds.length)]! / (y[headsAt(s)]! * species.eFull),
    ),
  };
}
