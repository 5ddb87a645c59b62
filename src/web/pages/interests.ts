/** Quantities of the forecast that a keeper asks about, and the unit each is read in. Pure. */
import type { TankAnswers } from "../../answers/tank-answers.ts";
import type { Reading } from "../../engine/types/tank.ts";
import { nToNitrate, pToPhosphate } from "../../engine/units/nutrients.ts";

export interface Interest {
  readonly id: string;
  /** From the forecast's unit to the one shown, and its name. */
  readonly per: number;
  readonly unit: string;
  /** Readings of it, and from their unit to the one shown. */
  readonly reading?: readonly [Reading["quantity"], (value: number) => number];
}

/** In the order in which they are told. */
export const INTERESTS: readonly Interest[] = [
  { id: "no3", per: 1, unit: "mg/L", reading: ["no3_mg_n_per_l", nToNitrate] },
  { id: "po4", per: 1, unit: "mg/L", reading: ["po4_mg_p_per_l", pToPhosphate] },
  { id: "tan", per: 1, unit: "mg N/L", reading: ["tan_mg_n_per_l", (value) => value] },
  { id: "film_glass", per: 1e-3, unit: "g C/m²" },
  { id: "film_rock", per: 1e-3, unit: "g C/m²" },
  { id: "hair_algae", per: 1e-3, unit: "g C/m²" },
];

export const two = (value: number): number => Number(value.toPrecision(2));

type Chance = TankAnswers["ahead"]["as_it_is"]["chances"][number];

/** Limits that are told in the unit a keeper reads. */
export function limitWords({ quantity, limit, unit }: Pick<Chance, "quantity" | "limit" | "unit">): string {
  const interest = INTERESTS.find(({ id }) => id === quantity);
  if (interest === undefined) return `${two(limit)} ${unit}`;
  return `${two(limit * interest.per)} ${interest.unit}`;
}
