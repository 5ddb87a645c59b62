/**
 * Where a member of the ensemble stands on the day of the plan: run up to it from its own start, or from sixty days
 * before with settled filters, then set to what was read and seen. docs/model/ahead.md, "Start".
 */
import type { TankEvent } from "../balance/events.ts";
import {
  D,
  FF,
  FG,
  FR,
  FS,
  hazardAt,
  headsAt,
  NO2,
  NO3,
  PO4,
  PRK,
  Q,
  reserveAt,
  TAN,
  XA,
  XN,
} from "../balance/pools.ts";
import { ENSEMBLE_STEPS, run } from "../balance/run.ts";
import { type CrewSpecies, speciesFrom } from "../balance/species.ts";
import { type UnionisedShare, World } from "../balance/world.ts";
import { latestReading, type Member } from "../larder/members.ts";
import { unionisedAmmoniaFraction } from "../seawater/ammonia.ts";
import type { Animal } from "../types/animal.ts";
import type { Cover, TankFacts } from "../types/tank.ts";
import { careEvents } from "./care.ts";

const LONGEST_RUN_UP_DAYS = 60;
/** Nitrifiers at first filling, share of full capacity, by rock. @source model-design (back-fitted start-ups) */
const SEED_BY_ROCK = { live: 5e-2, mixed: 1e-2, dry: 3e-4, none: 1e-4 } as const;
/** Nitrifiers of a settled tank, share of full capacity. */
const SETTLED_SHARE = 0.1;
/** First ammonia of a filling, mg N/L, and the days on which lamps and fish usually start. */
const FIRST_AMMONIA_MG_N_PER_L = 2;
const LAMP_DAY = { live: 5, mixed: 10, dry: 14, none: 14 } as const;
const FISH_DAY = 38;
/** Days that fish seen today have been there at least. */
const FISH_SINCE_DAYS = 7;
/** Crop of film seen, mg C/m2 (visible from 150); of hair algae on lit rock. Judgement; alg.film_visible_C. */
const FILM_BY_COVER: Readonly<Record<Cover, number>> = { none: 40, trace: 150, patches: 500, covered: 1200 };
const HAIR_BY_COVER: Readonly<Record<Cover, number>> = {
  none: 100,
  trace: 800,
  patches: 4000,
  covered: 20000,
};
/** Reserve of animals that have lived in the tank, share of full, before the run-up adjusts it. */
const RESIDENT_RESERVE = 0.7;

export interface CrewKind {
  readonly animal: Animal;
  readonly species: CrewSpecies;
  /** Heads in the tank on the day of the plan. */
  readonly residents: number;
}

export const crewKind = (animal: Animal, residents: number): CrewKind => ({
  animal,
  species: speciesFrom(animal),
  residents,
});

/** The seawater layer's un-ionised share, kept within the range that its equation serves. */
export function unionisedShareOn(scale: "nbs" | "total"): UnionisedShare {
  return (temperatureC, salinityPsu, ph) =>
    unionisedAmmoniaFraction(clamp(temperatureC, 0, 40), clamp(salinityPsu, 0, 45), clamp(ph, 5, 10), scale);
}

/** A world for a member with the kinds that live there or will. */
export function worldOf(
  member: Member,
  kinds: readonly CrewKind[],
  scale: "nbs" | "total",
  mortality: "expected" | "drawn",
): World {
  return new World({
    inputs: member.inputs,
    parameters: member.parameters,
    species: kinds.map(({ species }) => species),
    unionisedShare: unionisedShareOn(scale),
    mortality,
  });
}

/** A member on the day of the plan: its state, and itself with the export that its readings show it to have. */
export interface Standing {
  readonly member: Member;
  readonly state: Float64Array;
}

export function standingOf(member: Member, kinds: readonly CrewKind[], facts: TankFacts): Standing {
  const age = Math.max(0, Math.round(member.ageDays));
  const days = Math.min(LONGEST_RUN_UP_DAYS, age);
  const fromFilling = days === age;
  const world = worldOf(member, kinds, facts.phScale, "expected");
  const first = fromFilling ? atFilling(world, member, facts) : settled(world, member);
  const events: TankEvent[] = fromFilling ? startUpEvents(world, member, facts, days) : [];
  kinds.forEach(({ species, residents }) => {
    if (residents === 0) return;
    const t = fromFilling ? Math.max(0, days - 21) : 0;
    events.push({
      t,
      kind: "addAnimals",
      species: species.id,
      count: residents,
      condition: RESIDENT_RESERVE,
    });
  });
  events.push(...careEvents(facts, days, LAMP_DAY.dry));
  events.sort((a, b) => a.t - b.t);
  const { state } = run(world, first, events, { days, steps: ENSEMBLE_STEPS });
  setToKnown(state, member, kinds, facts);
  return { member: holding(member, kinds, state, facts), state };
}

/** Days over which a settled tank's gain of nitrate and phosphate is taken. */
const HOLD_DAYS = 14;
/** From this age on a tank that is cared for as usual is taken to hold its nitrate and phosphate. Judgement. */
const HOLDS_FROM_DAYS = 120;

/**
 * A tank long settled holds what its keeper reads: if the member would gain, it has an export that nobody has told
 * of. What the next two weeks would gain leaves from now on: nitrogen as denitrification, phosphorus onto a sink without end.
 */
function holding(member: Member, kinds: readonly CrewKind[], state: Float64Array, facts: TankFacts): Member {
  const readsNitrate = latestReading(facts.readings, "no3_mg_n_per_l") !== null;
  const readsPhosphate = latestReading(facts.readings, "po4_mg_p_per_l") !== null;
  if (member.ageDays < HOLDS_FROM_DAYS || !(readsNitrate || readsPhosphate)) return member;
  const { inputs, nutrients, parameters } = member;
  const world = worldOf(member, kinds, facts.phScale, "expected");
  const before = state;
  const { state: after } = run(world, state, careEvents(facts, HOLD_DAYS), {
    days: HOLD_DAYS,
    steps: ENSEMBLE_STEPS,
  });
  const gain = (pool: number): number => Math.max(0, (after[pool]! - before[pool]!) / HOLD_DAYS);
  const changed: Partial<Record<"dRock" | "dSand" | "kSorb" | "capSorb", number>> = {};
  if (readsNitrate) {
    const c = Math.max(nutrients.no3MgNPerL, 0.05);
    const warm = parameters.q10dec ** ((inputs.T - 25) / 10);
    const perUnit = (warm * c) / (parameters.Kdn + c);
    if (inputs.rockKg > 0) changed.dRock = parameters.dRock + gain(NO3) / (perUnit * inputs.rockKg);
    else if (inputs.As > 0) changed.dSand = parameters.dSand + gain(NO3) / (perUnit * inputs.As);
  }
  if (readsPhosphate) {
    // Beside a sorbent of the keeper's, not instead of it.
    changed.kSorb = parameters.kSorb + gain(PO4) / (Math.max(nutrients.po4MgPPerL, 0.002) * inputs.V);
    changed.capSorb = ENDLESS_MG_P;
  }
  return { ...member, parameters: { ...parameters, ...changed } };
}
const ENDLESS_MG_P = 1e9;

function atFilling(world: World, { inputs, nutrients, parameters }: Member, facts: TankFacts): Float64Array {
  const y = new Float64Array(world.size);
  const seed = SEED_BY_ROCK[facts.rockStart.value];
  y[NO3] = Math.min(0.2, nutrients.no3MgNPerL) * inputs.V;
  y[PO4] = Math.min(0.02, nutrients.po4MgPPerL) * inputs.V;
  y[XA] = seed * parameters.gamA * inputs.Ac;
  y[XN] = seed * parameters.gamN * inputs.Ac;
  y[FG] = inputs.Ag;
  y[FR] = inputs.Ar;
  y[FS] = inputs.As;
  y[FF] = 5 * inputs.Ar;
  y[Q] = 20 * inputs.rockKg;
  y[Q + 1] = 2.4 * inputs.rockKg;
  y[Q + 2] = 0.24 * inputs.rockKg;
  y[PRK] = (parameters.capRock * inputs.rockKg) / 6;
  return y;
}

function startUpEvents(world: World, { inputs }: Member, facts: TankFacts, days: number): TankEvent[] {
  const rock = facts.rockStart.value;
  const lampDay = Math.min(LAMP_DAY[rock], Math.max(0, days - 1));
  const fishDay = Math.min(FISH_DAY, Math.max(0, days - FISH_SINCE_DAYS));
  const lived = { fish: inputs.fish, feed: inputs.feed };
  world.set({ light: 0, fish: 0, feed: 0 });
  return [
    { t: 0, kind: "dose", pool: "TAN", mg: FIRST_AMMONIA_MG_N_PER_L * inputs.V },
    { t: lampDay, kind: "set", light: 1 },
    { t: fishDay, kind: "set", ...lived },
  ];
}

/** A tank past its start: residue crops on every surface, filters that carry its load, some detritus. */
function settled(world: World, { inputs, sizing, nutrients, parameters }: Member): Float64Array {
  const y = new Float64Array(world.size);
  y[TAN] = nutrients.tanMgNPerL * inputs.V;
  y[NO3] = nutrients.no3MgNPerL * inputs.V;
  y[PO4] = nutrients.po4MgPPerL * inputs.V;
  y[XA] = SETTLED_SHARE * parameters.gamA * inputs.Ac;
  y[XN] = SETTLED_SHARE * parameters.gamN * inputs.Ac;
  y[FG] = sizing.cropGlass * inputs.Ag;
  y[FR] = sizing.cropRock * inputs.Ar;
  y[FS] = sizing.cropRock * inputs.As;
  y[FF] = 300 * inputs.Ar;
  const detritus = 200 * inputs.As;
  [D, Q].forEach((pool, i) => {
    const carbon = i === 0 ? detritus : 200 * inputs.Ar;
    y[pool] = carbon;
    y[pool + 1] = 0.12 * carbon;
    y[pool + 2] = 0.012 * carbon;
  });
  y[PRK] =
    (parameters.capRock * inputs.rockKg * nutrients.po4MgPPerL) / (parameters.KRock + nutrients.po4MgPPerL);
  return y;
}

/** Readings and sightings overrule the run-up; heads are what the keeper says. */
function setToKnown(y: Float64Array, member: Member, kinds: readonly CrewKind[], facts: TankFacts): void {
  const { inputs, nutrients } = member;
  const read = (quantity: Parameters<typeof latestReading>[1]) =>
    latestReading(facts.readings, quantity) !== null;
  const settledTank = member.ageDays > LONGEST_RUN_UP_DAYS;
  if (read("tan_mg_n_per_l")) y[TAN] = nutrients.tanMgNPerL * inputs.V;
  if (read("no2_mg_n_per_l")) y[NO2] = nutrients.no2MgNPerL * inputs.V;
  if (settledTank || read("no3_mg_n_per_l")) y[NO3] = nutrients.no3MgNPerL * inputs.V;
  if (settledTank || read("po4_mg_p_per_l")) y[PO4] = nutrients.po4MgPPerL * inputs.V;
  const { film_glass, film_rock, film_sand, diatoms, hair_algae } = facts.sightings;
  const film = (seen: Cover | undefined, pool: number, area: number): void => {
    const cover = seen ?? diatoms;
    if (cover !== undefined) y[pool] = FILM_BY_COVER[cover] * area;
  };
  film(film_glass, FG, inputs.Ag);
  film(film_rock, FR, inputs.Ar);
  film(film_sand, FS, inputs.As);
  if (hair_algae !== undefined) y[FF] = HAIR_BY_COVER[hair_algae] * inputs.Ar;
  kinds.forEach(({ residents }, s) => {
    const heads = y[headsAt(s)]!;
    const reserve = reserveAt(s, kinds.length);
    y[reserve] = heads > 0 ? (y[reserve]! / heads) * residents : 0;
    y[headsAt(s)] = residents;
    y[hazardAt(s, kinds.length)] = 0;
  });
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
