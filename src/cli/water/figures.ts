/** From readings to every figure of `grazewell water`, each with its range, confidence and sources. */
import type { WaterOutput } from "../../contract/output/water.ts";
import { phOnTotalScale, unionisedAmmoniaBand } from "../../engine/seawater/ammonia.ts";
import { conductivityOf } from "../../engine/seawater/conductivity.ts";
import { density } from "../../engine/seawater/density.ts";
import { oxygenSaturation } from "../../engine/seawater/oxygen.ts";
import { pressureAtAltitude } from "../../engine/seawater/pressure.ts";
import { SEAWATER_SOURCES } from "../../engine/seawater/sources.ts";
import { GRAVITY_SCALES, gravityOf } from "../../engine/seawater/specific-gravity.ts";
import { fitConfidence } from "../../engine/seawater/validity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { nToAmmonia } from "../../engine/units/nutrients.ts";
import {
  atmosphere,
  type Celsius,
  celsius,
  metre,
  type PracticalSalinity,
  practicalSalinity,
} from "../../engine/units/quantity.ts";
import { ammoniaLimits } from "./limits.ts";
import { notesOn } from "./notes.ts";
import type { WaterReadings } from "./read.ts";
import { FIGURES, type FigureKey, type FigureRule } from "./rules.ts";

/** How far rival equations lie apart: what choosing one leaves open. */
const OPEN = { density: 0.01, gravity: 1e-5, conductivity: 0.02 } as const;
/** What weather does to air pressure, as a share. */
const WEATHER = 0.03;
/** Error of a pH reading, and what not knowing its scale adds. */
const PH_ERROR = 0.1;
const PH_SCALE_DOUBT = 0.05;

type OfWater = (temperature: Celsius, salinity: PracticalSalinity) => number;

export function waterOutput(readings: WaterReadings): WaterOutput {
  const { salinity, temperature, ph, phScale, tan, altitude } = readings;
  const t = celsius(temperature.central);
  const s = practicalSalinity(salinity.central);
  const pressure = pressureAtAltitude(metre(altitude?.central ?? 0));
  const spread = (central: OfWater, low: OfWater = central, high: OfWater = central): Spread => ({
    low: Math.min(...corners(readings).map(([warmth, salt]) => low(warmth, salt))),
    central: central(t, s),
    high: Math.max(...corners(readings).map(([warmth, salt]) => high(warmth, salt))),
  });
  const oxygen =
    (share: number): OfWater =>
    (warmth, salt) =>
      oxygenSaturation(warmth, salt, atmosphere(pressure * share));
  const on =
    (scale: "25/25" | "20/20"): OfWater =>
    (_, salt) =>
      gravityOf(salt, GRAVITY_SCALES[scale]);

  const always = {
    density_kg_per_m3: opened(OPEN.density, spread(density)),
    specific_gravity_25_25: opened(OPEN.gravity, spread(on("25/25"))),
    specific_gravity_20_20: opened(OPEN.gravity, spread(on("20/20"))),
    conductivity_mS_per_cm: opened(OPEN.conductivity, spread(conductivityOf)),
    conductivity_at_25_c_mS_per_cm: opened(
      OPEN.conductivity,
      spread((_, salt) => conductivityOf(celsius(25), salt)),
    ),
    oxygen_saturation_mg_per_L: spread(oxygen(1), oxygen(1 - WEATHER), oxygen(1 + WEATHER)),
  };
  const share = ph === null ? null : shareOf(readings, ph, spread);
  const ammonia = share === null || tan === null ? null : product(share, tan);
  const limits = ammonia === null ? null : ammoniaLimits(ammonia);
  const spreads: Readonly<Record<FigureKey, Spread | null>> = {
    ...always,
    unionised_ammonia_fraction: share,
    unionised_ammonia_mg_n_per_L: ammonia,
  };
  const known = (Object.keys(FIGURES) as FigureKey[]).filter((key) => spreads[key] !== null);
  const perFigure = <T>(of: (rule: FigureRule) => T): Record<string, T> =>
    Object.fromEntries(known.map((key) => [key, of(FIGURES[key])]));
  const isLow = ({ equations }: FigureRule) => equations.some((name) => fitConfidence(name, t, s) === "low");

  return {
    schema: "grazewell.water/1",
    readings: [salinity, temperature, ph, tan, altitude]
      .filter((reading) => reading !== null)
      .map(({ central, ...reading }) => ({ ...reading, value: central })),
    salinity_psu: s,
    temperature_c: t,
    ph: ph?.central ?? null,
    ph_scale: ph === null ? null : phScale,
    ph_total: ph === null ? null : phOnTotalScale(ph.central, phScale, t, s),
    altitude_m: altitude?.central ?? 0,
    air_pressure_atm: pressure,
    density_kg_per_m3: always.density_kg_per_m3.central,
    specific_gravity_25_25: always.specific_gravity_25_25.central,
    specific_gravity_20_20: always.specific_gravity_20_20.central,
    conductivity_mS_per_cm: always.conductivity_mS_per_cm.central,
    conductivity_at_25_c_mS_per_cm: always.conductivity_at_25_c_mS_per_cm.central,
    oxygen_saturation_mg_per_L: always.oxygen_saturation_mg_per_L.central,
    unionised_ammonia_fraction: share?.central ?? null,
    tan_mg_n_per_L: tan?.central ?? null,
    unionised_ammonia_mg_n_per_L: ammonia?.central ?? null,
    unionised_ammonia_mg_nh3_per_L: ammonia === null ? null : nToAmmonia(ammonia.central),
    ammonia_limits: limits,
    bands: Object.fromEntries(
      known.map((key) => [key, { low: spreads[key]?.low ?? 0, high: spreads[key]?.high ?? 0 }]),
    ),
    confidence: perFigure((rule) => (isLow(rule) ? "low" : "fitted")),
    sources: perFigure(({ sources }) => sources.map((key) => SEAWATER_SOURCES[key])),
    notes: notesOn(readings, known.map((key) => FIGURES[key]).filter(isLow), limits),
  };
}

/** Every end of what was read of temperature and salinity: where a figure is lowest and highest. */
function corners({ temperature, salinity }: WaterReadings): (readonly [Celsius, PracticalSalinity])[] {
  return [temperature.low, temperature.high].flatMap((warmth) =>
    [salinity.low, salinity.high].map((salt) => [celsius(warmth), practicalSalinity(salt)] as const),
  );
}

function shareOf(
  { phScale, phScaleStated }: WaterReadings,
  ph: Spread,
  spread: (central: OfWater, low: OfWater, high: OfWater) => Spread,
): Spread {
  const error = PH_ERROR + (phScaleStated ? 0 : PH_SCALE_DOUBT);
  return spread(
    (t, s) => unionisedAmmoniaBand(t, s, ph.central, phScale).central,
    (t, s) => unionisedAmmoniaBand(t, s, ph.low, phScale, error).low,
    (t, s) => unionisedAmmoniaBand(t, s, ph.high, phScale, error).high,
  );
}

const opened = (by: number, { low, central, high }: Spread): Spread => ({
  low: low - by,
  central,
  high: high + by,
});

const product = (a: Spread, b: Spread): Spread => ({
  low: a.low * b.low,
  central: a.central * b.central,
  high: a.high * b.high,
});
