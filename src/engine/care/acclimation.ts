/**
 * Acclimation by mixing: how an animal's water is brought from the bag's to the tank's, in stages that change salinity no
 * faster than a limit, and what its ammonia becomes meanwhile as pH rises. Salt, alkalinity, inorganic carbon, ammonia
 * and heat mix in proportion to volume; pH is solved from what mixed. docs/model/arrivals.md, "Acclimation".
 * Limits: volumes of the two waters are taken as equal in density; a bag's CO2 leaves into air by itself once it is open,
 * so the stages' pH is the least that it can be, and `airedUnionised` the most.
 */
import { log } from "../numeric/elementary.ts";
import { unionisedAmmoniaFraction } from "../seawater/ammonia.ts";
import { type CarbonateState, carbonateFrom, type Water } from "../seawater/carbonate.ts";
import {
  celsius,
  type MicromolePerKilogram,
  micromolePerKilogram,
  practicalSalinity,
} from "../units/quantity.ts";

export interface Acclimated {
  readonly salinityPsu: number;
  readonly temperatureC: number;
  /** µmol/kg; null where no pH was told. */
  readonly alkalinity: number | null;
  readonly dic: number | null;
  /** Total ammonia, mg N/L; null where it was not tested. */
  readonly tan: number | null;
}

export interface Stage {
  /** Minutes from the first mixing on. */
  readonly minute: number;
  /** Litres taken out and thrown away before, and put in of tank water. */
  readonly outL: number;
  readonly inL: number;
  /** Litres of tank water a minute, where it drips through the stage. */
  readonly litresPerMinute: number;
  /** Water that the animal sits in afterwards. */
  readonly volumeL: number;
  readonly water: Acclimated;
}

/** Water of two origins, so many parts of each. Splitting a mixing into several gives the same water. */
export function mixed(a: Acclimated, partsA: number, b: Acclimated, partsB: number): Acclimated {
  const all = partsA + partsB;
  const of = (x: number, y: number): number => (x * partsA + y * partsB) / all;
  const maybe = (x: number | null, y: number | null): number | null =>
    x === null || y === null ? null : of(x, y);
  return {
    salinityPsu: of(a.salinityPsu, b.salinityPsu),
    temperatureC: of(a.temperatureC, b.temperatureC),
    alkalinity: maybe(a.alkalinity, b.alkalinity),
    dic: maybe(a.dic, b.dic),
    // The tank's own ammonia is taken as none where nobody tested it.
    tan: a.tan === null ? null : of(a.tan, b.tan ?? 0),
  };
}

export interface AcclimationPlan {
  readonly bag: Acclimated;
  readonly tank: Acclimated;
  readonly bagL: number;
  /** Steps: water is taken out before as much is put in. Drip: it is only put in. */
  readonly way: "steps" | "drip";
  /** Most change of salinity in an hour, psu. */
  readonly psuPerHour: number;
  /** The rest that is left to the move itself, psu. */
  readonly restPsu: number;
  /** Minutes between two stages. */
  readonly everyMinutes: number;
}

/** Stages until no more than the rest is left; empty where the two waters are as near already. */
export function stagesOf(plan: AcclimationPlan): Stage[] {
  const { bag, tank, bagL, way, psuPerHour, restPsu, everyMinutes } = plan;
  const gap = Math.abs(tank.salinityPsu - bag.salinityPsu);
  if (gap <= restPsu) return [];
  const count = Math.ceil((gap - restPsu) / ((psuPerHour * everyMinutes) / 60) - 1e-9);
  const step = (gap - restPsu) / count;
  const stages: Stage[] = [];
  let water = bag;
  let volumeL = bagL;
  for (let n = 1; n <= count; n += 1) {
    const before = gap - step * (n - 1);
    const after = gap - step * n;
    // Of the gap stays what of the old water stays.
    const keeps = after / before;
    const outL = way === "steps" ? volumeL * (1 - keeps) : 0;
    const inL = way === "steps" ? outL : volumeL * (1 / keeps - 1);
    water = mixed(water, volumeL - outL, tank, inL);
    volumeL = volumeL - outL + inL;
    stages.push({
      ...{ minute: n * everyMinutes, outL, inL, volumeL, water },
      litresPerMinute: inL / everyMinutes,
    });
  }
  return stages;
}

const waterOf = ({ temperatureC, salinityPsu }: Acclimated): Water => ({
  temperature: celsius(temperatureC),
  salinity: practicalSalinity(salinityPsu),
});

/** pH on the total scale; null where no pH was told of either water. */
export function phOf(water: Acclimated): number | null {
  const { alkalinity, dic } = water;
  if (alkalinity === null || dic === null) return null;
  return stateOf(water, micromolePerKilogram(alkalinity), micromolePerKilogram(dic)).ph;
}

const stateOf = (
  water: Acclimated,
  alkalinity: MicromolePerKilogram,
  dic: MicromolePerKilogram,
): CarbonateState => carbonateFrom({ alkalinity, dic }, waterOf(water));

/** Share of its ammonia that is un-ionised, at its own pH. */
export function unionisedShareOf(water: Acclimated): number | null {
  const ph = phOf(water);
  return ph === null ? null : shareAt(water, ph);
}

const shareAt = ({ temperatureC, salinityPsu }: Acclimated, ph: number): number =>
  unionisedAmmoniaFraction(temperatureC, salinityPsu, ph, "total");

/** Most that the bag's un-ionised share can come to: its CO2 gone into air before any of the ammonia is diluted. */
export function airedShare(bag: Acclimated, tank: Acclimated): number | null {
  const ph = phOf(tank);
  return ph === null ? null : shareAt({ ...bag, temperatureC: tank.temperatureC }, ph);
}

/** Minutes until a floating bag has come within so much of the tank, at so many minutes for the gap to fall to a third. */
export const floatMinutes = (gapC: number, withinC: number, foldMinutes: number): number =>
  gapC <= withinC ? 0 : foldMinutes * log(gapC / withinC);
