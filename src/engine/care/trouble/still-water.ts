/**
 * Hours of oxygen with all pumps off, over the runs of the weeks ahead: each run's oxygen at dawn on the first day, back
 * to what it uses, and a still surface of its own. docs/model/trouble.md, "Still water"; the equation is the balance's.
 * Limits: as `hoursToAlarm`; where water layers or fish crowd, sooner.
 */
import { acrossMembers, type Sheaf } from "../../ahead/forecast.ts";
import { hoursToAlarm, STILL_EXCHANGE_PER_H } from "../../balance/oxygen.ts";
import type { Member } from "../../larder/members.ts";
import { exp, log } from "../../numeric/elementary.ts";
import { oxygenSaturation } from "../../seawater/oxygen.ts";
import { celsius, practicalSalinity } from "../../units/quantity.ts";

/** Nobody asks for more: by then the power is back or the animals were moved. */
export const LONGEST_HOURS = 48;

/** @param dawn by member and week, mg/L. Hours of each run that has any water, `LONGEST_HOURS` at most. */
export function hoursOfOxygen(dawn: Sheaf, members: readonly Member[], alarmMgPerL: number): number[] {
  return [...acrossMembers(dawn, 0)].flatMap((dawnMgPerL, m) => {
    const member = members[m];
    if (member === undefined || !Number.isFinite(dawnMgPerL)) return [];
    const { V, T, S, kLa } = member.inputs;
    const saturationMgPerL = oxygenSaturation(celsius(within(T, 0, 40)), practicalSalinity(within(S, 0, 42)));
    const demandMgPerDay = (saturationMgPerL - dawnMgPerL) * 24 * kLa * V;
    const lasts = hoursToAlarm(
      { demand: NOBODY, demandMgPerDay, saturationMgPerL, dawnMgPerL },
      V,
      stillExchange(m),
      alarmMgPerL,
    );
    return [lasts.kind === "never" ? LONGEST_HOURS : Math.min(LONGEST_HOURS, lasts.hours)];
  });
}

/** Who uses it is told elsewhere; hours need the sum alone. */
const NOBODY = { decay: 0, algae: 0, crew: 0, nitrification: 0, fish: 0 } as const;

const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Surfaces from tall and narrow to shallow and wide, spread evenly over the runs without chance (van der Corput). */
export function stillExchange(run: number): number {
  const { low, high } = STILL_EXCHANGE_PER_H;
  let share = 0;
  for (let n = run + 1, part = 0.5; n > 0; n = Math.floor(n / 2), part /= 2) share += (n % 2) * part;
  return low * exp(share * log(high / low));
}
