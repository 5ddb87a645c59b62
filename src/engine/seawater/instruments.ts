/**
 * One salinity from whatever instrument was read, its own error taken off by what it showed in water of known salinity.
 * Equations: docs/model/seawater.md, "Instruments".
 */
import {
  type Celsius,
  celsius,
  millisiemensPerCentimetre,
  type PracticalSalinity,
  practicalSalinity,
  specificGravity,
} from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";
import { conductivityOf, salinityFromConductivity } from "./conductivity.ts";
import {
  floatingGravityOf,
  type GravityScale,
  gravityOf,
  salinityFromFloatingGravity,
  salinityFromGravity,
} from "./specific-gravity.ts";

/** How the instrument makes its number. */
export type Instrument =
  /** A meter or scale that shows salinity itself. */
  | { readonly kind: "salinity" }
  /** Refractometer or probe that corrects for temperature, with a specific gravity scale. */
  | { readonly kind: "gravity"; readonly scale: GravityScale }
  /** Floating glass, not corrected. */
  | { readonly kind: "floating"; readonly scale: GravityScale }
  /** Conductivity meter that corrects to 25 °C. */
  | { readonly kind: "conductivity_25" }
  /** One that does not. */
  | { readonly kind: "conductivity" };

const SALINITY: Range = { name: "salinity", unit: "psu", min: 0, max: 50, source: "unesco-44" };

/** Conductivity of pure water is a ten-thousandth of seawater's. */
const FRESH_CONDUCTIVITY = 0;

/**
 * What an instrument without error shows in this water.
 * @throws OutOfRange as the equation behind the instrument
 */
export function shownBy(instrument: Instrument, salinity: PracticalSalinity, temperature: Celsius): number {
  switch (instrument.kind) {
    case "salinity":
      return salinity;
    case "gravity":
      return gravityOf(salinity, instrument.scale);
    case "floating":
      return floatingGravityOf(temperature, salinity, instrument.scale);
    case "conductivity_25":
      return salinity === 0 ? FRESH_CONDUCTIVITY : conductivityOf(celsius(25), salinity);
    case "conductivity":
      return salinity === 0 ? FRESH_CONDUCTIVITY : conductivityOf(temperature, salinity);
  }
}

/**
 * Salinity from what an instrument without error shows. Inverse of `shownBy`.
 * @throws OutOfRange for readings no water gives, naming the unit they probably are in
 */
export function salinityShown(
  instrument: Instrument,
  reading: number,
  temperature: Celsius,
): PracticalSalinity {
  switch (instrument.kind) {
    case "salinity":
      requireRange("take a salinity", [SALINITY, reading]);
      return practicalSalinity(reading);
    case "gravity":
      return salinityFromGravity(specificGravity(reading), instrument.scale);
    case "floating":
      return salinityFromFloatingGravity(specificGravity(reading), temperature, instrument.scale);
    case "conductivity_25":
      return salinityFromConductivity(millisiemensPerCentimetre(reading), celsius(25));
    case "conductivity":
      return salinityFromConductivity(millisiemensPerCentimetre(reading), temperature);
  }
}

/** What it showed where the truth was known; null where it was not tried. */
export interface Calibration {
  readonly inFresh: number | null;
  readonly inReference: { readonly shown: number; readonly salinity: PracticalSalinity } | null;
}

/**
 * What it would have shown without its error. Tried in both waters: a straight line through both. In one: shifted by that
 * error throughout, so that the slope stays untested.
 * @param temperature of the water it was tried in
 * @throws OutOfRange as `shownBy`, and where both waters gave one reading
 */
export function corrected(
  instrument: Instrument,
  reading: number,
  { inFresh, inReference }: Calibration,
  temperature: Celsius,
): number {
  const fresh = shownBy(instrument, practicalSalinity(0), temperature);
  if (inReference === null) return inFresh === null ? reading : reading + fresh - inFresh;
  const truth = shownBy(instrument, inReference.salinity, temperature);
  if (inFresh === null) return reading + truth - inReference.shown;
  const span: Range = {
    ...{ name: "step between the two waters, over what it should be", unit: "", min: 0.5, max: 2 },
    source: "unesco-44",
    wayOut: () => "that instrument does not tell fresh water from salt: try it again, or use another",
  };
  const slope = (inReference.shown - inFresh) / (truth - fresh);
  requireRange("correct an instrument", [span, slope]);
  return fresh + (reading - inFresh) / slope;
}
