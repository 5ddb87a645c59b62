/**
 * Pieces of a run-up: a tank at its filling, a settled tank, how a start goes, and what readings and sightings set.
 * docs/model/ahead.md, "Start".
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
import type { World } from "../balance/world.ts";
import { latestReading, type Member } from "../larder/members.ts";
import type { Cover, TankFacts } from "../types/tank.ts";
import type { CrewKind } from "./crew.ts";

export const LONGEST_RUN_UP_DAYS = 60;
/** Nitrifiers at first filling, share of full capacity, by rock. @source model-design (back-fitted start-ups) */
const SEED_BY_ROCK = { live: 5e-2, mixed: 1e-2, dry: 3e-4, none: 1e-4 } as const;
/** Nitrifiers of a settled tank, share of full capacity. */
const SETTLED_SHARE = 0.1;
/** First ammonia of a filling, mg N/L, and the days on which lamps and fish usually start. */
const FIRST_AMMONIA_MG_N_PER_L = 2;
export const LAMP_DAY = { live: 5, mixed: 10, dry: 14, none: 14 } as const;
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
export const RESIDENT_RESERVE = 0.7;

export function atFilling(
  world: World,
  { inputs, nutrients, parameters }: Member,
  facts: TankFacts,
): Float64Array {
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

export function startUpEvents(world: World, { inputs }: Member, facts: TankFacts, days: number): TankEvent[] {
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
export function settled(world: World, { inputs, sizing, nutrients, parameters }: Member): Float64Array {
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
export function setToKnown(
  y: Float64Array,
  member: Member,
  kinds: readonly CrewKind[],
  facts: TankFacts,
): void {
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
