/**
 * Oxygen at dawn, and how long it lasts without pumps: a diagnostic from a state's rates. It does not feed back
 * on anything. Equations: docs/model/balance.md, "Oxygen". Saturation is an argument (the seawater layer has it).
 */
import { log } from "../numeric/elementary.ts";
import { derivatives, RATE, rateCount, Scratch } from "./kernel.ts";
import { transfersOf } from "./transfers.ts";
import type { World } from "./world.ts";

/** mg O2 for a mg of carbon respired: 32/12. */
const PER_CARBON = 2.67;
/** mg O2 for a mg of nitrogen, ammonia to nitrite and nitrite to nitrate: 48/14 and 16/14. */
const PER_AMMONIA = 3.43;
const PER_NITRITE = 1.14;
/** Routine use of active reef fish, mg O2 a gram wet and day at 25 °C (220 mg/kg/h), and its Q10. */
const PER_FISH_GRAM = 5.28;
const FISH_Q10 = 2.4;

/** Who uses oxygen, mg O2/d. */
export interface OxygenDemand {
  /** Decay of leftovers, carrion, detritus, filter dirt and dissolved organic matter. */
  readonly decay: number;
  readonly algae: number;
  readonly crew: number;
  readonly nitrification: number;
  readonly fish: number;
}

export interface DawnOxygen {
  readonly demand: OxygenDemand;
  readonly demandMgPerDay: number;
  readonly saturationMgPerL: number;
  /** Daily mean demand against gas exchange through a night; 0 where demand would use up more than there is. */
  readonly dawnMgPerL: number;
}

/** Oxygen used by the tank in state `y`, by user. */
export function oxygenDemand(world: World, y: Float64Array): OxygenDemand {
  const kinds = world.species.length;
  const rates = new Float64Array(rateCount(kinds));
  derivatives(world, y, new Float64Array(world.size), new Scratch(kinds), false, rates);
  let decay = 0;
  let algae = 0;
  let crew = 0;
  for (const { name, to, rate, per } of transfersOf(world)) {
    if (to !== "co2") continue;
    const carbon = per * rates[rate]!;
    if (name === "decay") decay += carbon;
    else if (name === "respiration") algae += carbon;
    else if (rate >= RATE.kind) crew += carbon;
    // what is left is the fish's own carbon: their use is reckoned from their weight
  }
  return {
    decay: PER_CARBON * decay,
    algae: PER_CARBON * algae,
    crew: PER_CARBON * crew,
    nitrification: PER_AMMONIA * rates[RATE.nitA]! + PER_NITRITE * rates[RATE.nitN]!,
    fish: PER_FISH_GRAM * FISH_Q10 ** ((world.inputs.T - 25) / 10) * world.inputs.fish,
  };
}

/** @param saturationMgPerL of this water at its temperature and salinity */
export function dawnOxygen(world: World, y: Float64Array, saturationMgPerL: number): DawnOxygen {
  const demand = oxygenDemand(world, y);
  const demandMgPerDay = Object.values(demand).reduce((sum, part) => sum + part, 0);
  const deficit = demandMgPerDay / (24 * world.inputs.kLa * world.inputs.V);
  return { demand, demandMgPerDay, saturationMgPerL, dawnMgPerL: Math.max(0, saturationMgPerL - deficit) };
}

/** Gas exchange with all pumps off, 1/h: a still surface, from a tall narrow tank to a shallow wide one. */
export const STILL_EXCHANGE_PER_H = { low: 0.02, high: 0.1 } as const;

export type HoursToAlarm =
  | { readonly kind: "hours"; readonly hours: number }
  /** The surface alone keeps oxygen above the alarm. */
  | { readonly kind: "never"; readonly settlesAtMgPerL: number };

/**
 * Hours until oxygen falls to `alarmMgPerL` once the pumps stop at dawn, if everything goes on using what it uses
 * at dawn. A simple estimate: animals use less as oxygen falls, but still water also layers.
 */
export function hoursToAlarm(
  { demandMgPerDay, saturationMgPerL, dawnMgPerL }: DawnOxygen,
  litres: number,
  exchangePerH: number,
  alarmMgPerL: number,
): HoursToAlarm {
  const settlesAt = saturationMgPerL - demandMgPerDay / (24 * litres) / exchangePerH;
  if (dawnMgPerL <= alarmMgPerL) return { kind: "hours", hours: 0 };
  if (settlesAt >= alarmMgPerL) return { kind: "never", settlesAtMgPerL: settlesAt };
  const hours = log((dawnMgPerL - settlesAt) / (alarmMgPerL - settlesAt)) / exchangePerH;
  return { kind: "hours", hours };
}
