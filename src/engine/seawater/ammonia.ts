/**
 * How much of total ammonia is the poisonous, un-ionised part.
 * The pH scale decides more than the equation does, so a pH comes with its scale and is turned to the total
 * scale first. Equations: docs/model/seawater.md, "Un-ionised ammonia".
 */
import { log10 } from "../numeric/elementary.ts";
import {
  type Celsius,
  celsius,
  type PhTotal,
  type PracticalSalinity,
  phNbs,
  phTotal,
  practicalSalinity,
} from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";
import { toKelvin } from "../units/temperature.ts";
import { nbsToTotal, type PhScale, waterShare } from "./ph-scale.ts";
import { requireWater } from "./validity.ts";

const PH: Range = {
  ...{ name: "pH", unit: "", min: 0, max: 14, source: "clegg-whitfield-1995" },
  wayOut: (value) => (value > 14 && value <= 140 ? `did you mean ${value / 10}?` : null),
};

/**
 * pKa of ammonium on the total hydrogen ion scale, for concentrations per kg of seawater: 9.2459 at salinity 35
 * and 25 °C.
 *
 * Fitted for salinity 0 to 40, -2 to 40 °C; its authors give the constant within 5 %.
 * @throws OutOfRange beyond salinity 0 to 45, -2 to 45 °C
 * @source clegg-whitfield-1995, equation 18
 */
export function ammoniumPKa(temperature: Celsius, salinity: PracticalSalinity): number {
  return ammoniumPKaPerWater(temperature, salinity) - log10(waterShare(salinity));
}

/** The same per kg of water, as the equation is printed: 0.016 lower at salinity 35. */
export function ammoniumPKaPerWater(temperature: Celsius, salinity: PracticalSalinity): number {
  requireWater("work out un-ionised ammonia", "ammonia", temperature, salinity);
  const t = toKelvin(temperature);
  const root = Math.sqrt(t);
  const s = salinity;
  return (
    9.244605 -
    2729.33 * (1 / 298.15 - 1 / t) +
    (0.04203362 - 11.24742 / t) * s ** 0.25 +
    (-13.6416 + 1.176949 * root - 0.02860785 * t + 545.4834 / t) * s ** 0.5 +
    (-0.1462507 + 0.0090226468 * root - 0.0001471361 * t + 10.5425 / t) * s ** 1.5 +
    (0.004669309 - 0.0001691742 * root - 0.5677934 / t) * s ** 2 +
    (-2.354039e-5 + 0.009698623 / t) * s ** 2.5
  );
}

/**
 * Share of total ammonia that is un-ionised, 0 to 1, in plain numbers with their units in the names: the runs of
 * the balance ask for it at every step.
 *
 * @param ph as read, on `scale`
 * @throws OutOfRange beyond salinity 0 to 45, -2 to 45 °C, pH 0 to 14
 * @source clegg-whitfield-1995; NBS readings by way of takahashi-1982. Error: `unionisedAmmoniaBand`
 */
export function unionisedAmmoniaFraction(
  temperatureC: number,
  salinityPsu: number,
  ph: number,
  scale: PhScale,
): number {
  requireRange("work out un-ionised ammonia", [PH, ph]);
  const temperature = celsius(temperatureC);
  const salinity = practicalSalinity(salinityPsu);
  const onTotal = phOnTotalScale(ph, scale, temperature, salinity);
  return 1 / (1 + 10 ** (ammoniumPKa(temperature, salinity) - onTotal));
}

/** A pH as read, on the total scale. */
export function phOnTotalScale(
  ph: number,
  scale: PhScale,
  temperature: Celsius,
  salinity: PracticalSalinity,
): PhTotal {
  return scale === "total" ? phTotal(ph) : nbsToTotal(phNbs(ph), temperature, salinity);
}

/** Relative error of the equation, from how far published equations lie apart at one and the same reading. */
const EQUATION_ERROR = 0.15;
/** What a keeper's pH reading is good for at best. */
const PH_READING_ERROR = 0.1;

/**
 * The share with its band: 15 % for the equation on top of what a pH reading may be off by (0.1 unless told).
 * The two are stacked, not averaged out: on the poisonous side a band should rather be wide.
 * @throws OutOfRange as `unionisedAmmoniaFraction`
 * @source clegg-whitfield-1995, bower-bidwell-1978 and epa-1989 compared: docs/model/seawater.md
 */
export function unionisedAmmoniaBand(
  temperatureC: number,
  salinityPsu: number,
  ph: number,
  scale: PhScale,
  phError: number = PH_READING_ERROR,
): { readonly low: number; readonly central: number; readonly high: number } {
  const at = (reading: number) =>
    unionisedAmmoniaFraction(temperatureC, salinityPsu, Math.min(14, Math.max(0, reading)), scale);
  return {
    low: at(ph - phError) * (1 - EQUATION_ERROR),
    central: at(ph),
    high: Math.min(1, at(ph + phError) * (1 + EQUATION_ERROR)),
  };
}

/**
 * Second opinion on the share, for pH as commonly measured (NBS buffers): 10 to 16 % higher than ours there in reef water.
 * For scale of disagreement only.
 * @throws OutOfRange beyond salinity 0 to 45, -2 to 45 °C, pH 0 to 14
 * @source epa-1989
 */
export function unionisedAmmoniaSecondOpinion(
  temperatureC: number,
  salinityPsu: number,
  phAsMeasured: number,
): number {
  const task = "work out un-ionised ammonia";
  requireRange(task, [PH, phAsMeasured]);
  requireWater(task, "ammonia", celsius(temperatureC), practicalSalinity(salinityPsu));
  const ionicStrength = (19.9273 * salinityPsu) / (1000 - 1.005109 * salinityPsu);
  const t = temperatureC + 273;
  const pKa = 9.245 + 0.116 * ionicStrength + 0.0324 * (298 - t) + 0.0415 / t;
  return 1 / (1 + 10 ** (pKa - phAsMeasured));
}

/**
 * Limits for animals of salt water as un-ionised NH3, mg/L: acute over an hour, chronic over four days (those two
 * spans from memory).
 * @source epa-1989, read in copies of its equation, not in the document
 */
export const SALTWATER_NH3_LIMITS = { acuteMgPerL: 0.233, chronicMgPerL: 0.035 } as const;
