/**
 * Salinity after fresh water got in, and how long the way back takes in steps. docs/model/trouble.md, "Salinity".
 * Salt stays, water is added: practical salinity is taken as a share of the water's volume, which misses by less than
 * 0.3 % of the change (density).
 */

/** @param freshL that stayed in the tank's water; negative: that left it by evaporation */
export const salinityAfter = (psu: number, waterL: number, freshL: number): number =>
  (psu * waterL) / (waterL + freshL);

/** Purified water to put in place of tank water to lower the salinity to `to`, litres. */
export const purifiedToSwap = (psu: number, to: number, waterL: number): number =>
  psu <= to ? 0 : waterL * (1 - to / psu);

/** Whole days from one salinity to another, `perDay` at most each. */
export const daysOfSteps = (from: number, to: number, perDay: number): number =>
  Math.max(0, Math.ceil(Math.abs(to - from) / perDay - 1e-9));
