/**
 * What water of a salinity and temperature is, each figure with its band: what was typed through every corner, and on top
 * what choosing one equation leaves open. `grazewell water` and the sums stand on the same of these.
 */
import { unionisedAmmoniaBand } from "../../engine/seawater/ammonia.ts";
import { conductivityOf } from "../../engine/seawater/conductivity.ts";
import { density } from "../../engine/seawater/density.ts";
import { oxygenSaturation } from "../../engine/seawater/oxygen.ts";
import type { PhScale } from "../../engine/seawater/ph-scale.ts";
import { pressureAtAltitude } from "../../engine/seawater/pressure.ts";
import { GRAVITY_SCALES, type GravityScaleName, gravityOf } from "../../engine/seawater/specific-gravity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { atmosphere, celsius, metre, practicalSalinity } from "../../engine/units/quantity.ts";
import { cornersOf } from "../sums/spread.ts";

export interface WaterSpreads {
  readonly temperature: Spread;
  readonly salinity: Spread;
}

/** How far rival equations lie apart: what choosing one leaves open. */
const OPEN = { density: 0.01, gravity: 1e-5, conductivity: 0.02 } as const;
/** What weather does to air pressure, as a share. */
export const WEATHER = 0.03;
/** Error of a pH reading, and what not knowing its scale adds. */
export const PH_ERROR = 0.1;
export const PH_SCALE_DOUBT = 0.05;

/** kg/m3. @throws OutOfRange as the density */
export const densityBand = (water: WaterSpreads): Spread =>
  opened(
    OPEN.density,
    ofWater(water, (t, s) => density(celsius(t), practicalSalinity(s))),
  );

/** @throws OutOfRange as the density */
export const gravityBand = (water: WaterSpreads, scale: GravityScaleName): Spread =>
  opened(
    OPEN.gravity,
    ofWater(water, (_, s) => gravityOf(practicalSalinity(s), GRAVITY_SCALES[scale])),
  );

/** mS/cm at the water's own temperature, or as a meter shows it that corrects to 25 °C. @throws OutOfRange */
export const conductivityBand = (water: WaterSpreads, at: "own" | "25"): Spread =>
  opened(
    OPEN.conductivity,
    ofWater(water, (t, s) => conductivityOf(celsius(at === "25" ? 25 : t), practicalSalinity(s))),
  );

/** mg/L when saturated at this height. The band is the weather's. @throws OutOfRange as the oxygen */
export const oxygenBand = ({ temperature, salinity }: WaterSpreads, altitudeM: Spread): Spread =>
  cornersOf([temperature, salinity, altitudeM], ([t = 0, s = 0, h = 0], end) => {
    const weather = end === "central" ? 1 : end === "low" ? 1 - WEATHER : 1 + WEATHER;
    const pressure = atmosphere(pressureAtAltitude(metre(h)) * weather);
    return oxygenSaturation(celsius(t), practicalSalinity(s), pressure);
  });

export interface PhRead {
  readonly ph: Spread;
  readonly scale: PhScale;
  /** False where the scale was taken for granted. */
  readonly stated: boolean;
}

/** Share of ammonia that is un-ionised: the equation's error on top of the reading's own. @throws OutOfRange */
export function ammoniaShareBand(water: WaterSpreads, { ph, scale, stated }: PhRead): Spread {
  const error = PH_ERROR + (stated ? 0 : PH_SCALE_DOUBT);
  return ofWater(water, (t, s, end) => unionisedAmmoniaBand(t, s, ph[end], scale, error)[end]);
}

export const product = (a: Spread, b: Spread): Spread => ({
  low: a.low * b.low,
  central: a.central * b.central,
  high: a.high * b.high,
});

const ofWater = (
  { temperature, salinity }: WaterSpreads,
  of: (t: number, s: number, end: keyof Spread) => number,
): Spread => cornersOf([temperature, salinity], ([t = 0, s = 0], end) => of(t, s, end));

const opened = (by: number, { low, central, high }: Spread): Spread => ({
  low: low - by,
  central,
  high: high + by,
});
