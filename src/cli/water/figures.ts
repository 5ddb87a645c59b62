/** From readings to every figure of `grazewell water`, each with its range, confidence and sources. */
import { ammoniaLimits } from "../../answers/water/ammonia-limits.ts";
import {
  ammoniaShareBand,
  conductivityBand,
  densityBand,
  gravityBand,
  oxygenBand,
  product,
} from "../../answers/water/bands.ts";
import type { WaterOutput } from "../../contract/output/water.ts";
import { phOnTotalScale } from "../../engine/seawater/ammonia.ts";
import { pressureAtAltitude } from "../../engine/seawater/pressure.ts";
import { SEAWATER_SOURCES } from "../../engine/seawater/sources.ts";
import { fitConfidence } from "../../engine/seawater/validity.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import { exact } from "../../engine/types/link.ts";
import { nToAmmonia } from "../../engine/units/nutrients.ts";
import { celsius, metre, practicalSalinity } from "../../engine/units/quantity.ts";
import { notesOn } from "./notes.ts";
import type { WaterReadings } from "./read.ts";
import { FIGURES, type FigureKey, type FigureRule } from "./rules.ts";

export function waterOutput(readings: WaterReadings): WaterOutput {
  const { salinity, temperature, ph, phScale, phScaleStated, tan, altitude } = readings;
  const t = celsius(temperature.central);
  const s = practicalSalinity(salinity.central);
  const pressure = pressureAtAltitude(metre(altitude?.central ?? 0));
  const always = {
    density_kg_per_m3: densityBand(readings),
    specific_gravity_25_25: gravityBand(readings, "25/25"),
    specific_gravity_20_20: gravityBand(readings, "20/20"),
    conductivity_mS_per_cm: conductivityBand(readings, "own"),
    conductivity_at_25_c_mS_per_cm: conductivityBand(readings, "25"),
    oxygen_saturation_mg_per_l: oxygenBand(readings, altitude ?? exact(0)),
  };
  const share =
    ph === null ? null : ammoniaShareBand(readings, { ph, scale: phScale, stated: phScaleStated });
  const ammonia = share === null || tan === null ? null : product(share, tan);
  const limits = ammonia === null ? null : ammoniaLimits(ammonia);
  const spreads: Readonly<Record<FigureKey, Spread | null>> = {
    ...always,
    unionised_ammonia_fraction: share,
    unionised_ammonia_mg_n_per_l: ammonia,
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
    oxygen_saturation_mg_per_l: always.oxygen_saturation_mg_per_l.central,
    unionised_ammonia_fraction: share?.central ?? null,
    tan_mg_n_per_l: tan?.central ?? null,
    unionised_ammonia_mg_n_per_l: ammonia?.central ?? null,
    unionised_ammonia_mg_nh3_per_l: ammonia === null ? null : nToAmmonia(ammonia.central),
    ammonia_limits: limits,
    bands: Object.fromEntries(
      known.map((key) => [key, { low: spreads[key]?.low ?? 0, high: spreads[key]?.high ?? 0 }]),
    ),
    confidence: perFigure((rule) => (isLow(rule) ? "low" : "fitted")),
    sources: perFigure(({ sources }) => sources.map((key) => SEAWATER_SOURCES[key])),
    notes: notesOn(readings, known.map((key) => FIGURES[key]).filter(isLow), limits),
  };
}
