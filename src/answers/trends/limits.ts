/**
 * Limits that each measured quantity is held against: of poisons and nutrients those of the weeks ahead, of the rest the
 * bounds beyond which the reader calls a reading unusual (a test holds the two together).
 */
import type { Measured } from "../../contract/daybook/reading.ts";
import type { LimitOf } from "../../engine/trends/crossing.ts";
import type { Scale } from "../../engine/trends/series.ts";
import { nToNitrite } from "../../engine/units/nutrients.ts";
import { LIMITS } from "../ahead/limits.ts";

export interface TrendLimit extends LimitOf {
  readonly why: string;
  readonly parameter: string | null;
}

const AHEAD_OF: Readonly<
  Partial<Record<Measured, readonly [id: string, toNamed: (value: number) => number]>>
> = {
  tan_mg_n_per_l: ["tan_above", (value) => value],
  no2_mg_per_l: ["no2_above", nToNitrite],
  no3_mg_per_l: ["no3_above", (value) => value],
  po4_mg_per_l: ["po4_above", (value) => value],
};

/** In the unit that the name ends in. */
export const COMMON: Readonly<Partial<Record<Measured, readonly [least: number, most: number]>>> = {
  temperature_c: [22, 29],
  salinity_psu: [30, 37],
  ph: [7.6, 8.6],
  alkalinity_dkh: [6, 13],
  calcium_mg_per_l: [350, 500],
  magnesium_mg_per_l: [1100, 1500],
};
const WHY_COMMON = "what reef tanks mostly have";

/** Two figures for those of the catalogue, as the weeks ahead tell them; in the unit told. */
export function limitsOf(quantity: Measured, { factor, offset }: Scale): readonly TrendLimit[] {
  const inUnit = (value: number) => Number((value * factor + offset).toPrecision(6));
  const known = AHEAD_OF[quantity];
  if (known !== undefined) {
    const limit = LIMITS.find(({ id }) => id === known[0]);
    if (limit === undefined)
      throw new RangeError(`Cannot set a limit: the weeks ahead have no "${known[0]}"`);
    const value = Number(inUnit(known[1](limit.value)).toPrecision(2));
    return [{ id: "above", side: "above", value, why: limit.why, parameter: limit.parameter }];
  }
  const [least, most] = COMMON[quantity] ?? [];
  if (least === undefined || most === undefined) return [];
  return [
    { id: "above", side: "above", value: inUnit(most), why: WHY_COMMON, parameter: null },
    { id: "below", side: "below", value: inUnit(least), why: WHY_COMMON, parameter: null },
  ];
}
