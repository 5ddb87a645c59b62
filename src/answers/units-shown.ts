/**
 * Quantities of a tank in the units its keeper reads: volume, length, temperature, salinity, alkalinity, nitrate and
 * phosphate, each chosen on its own. For what pages show; what was typed is shown as typed.
 */
import type { Measured } from "../contract/daybook/reading.ts";
import { figure } from "../contract/quantity/show.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";
import type { ShownIn, ShownQuantity } from "../contract/tank-file/shown-in.ts";
import { GRAVITY_SCALES, gravityOf } from "../engine/seawater/specific-gravity.ts";
import { fromCanonical, toCanonical } from "../engine/units/convert.ts";
import { practicalSalinity } from "../engine/units/quantity.ts";
import { OutOfRange } from "../engine/units/range.ts";

const METRIC: ShownIn = {
  volume: "L",
  length: "cm",
  temperature: "C",
  salinity: "psu",
  alkalinity: "dKH",
  nitrate: "NO3",
  phosphate: "PO4",
};

/** Measured quantities that a keeper chooses a unit for. */
export const MEASURED_AS: Readonly<Partial<Record<Measured, ShownQuantity>>> = {
  temperature_c: "temperature",
  salinity_psu: "salinity",
  alkalinity_dkh: "alkalinity",
  no3_mg_per_l: "nitrate",
  po4_mg_per_l: "phosphate",
};

/** The keeper's choice; where there is none, the gallon or inch that they write in, and metric. */
export function shownIn(preferences: TankFile["preferences"]): ShownIn {
  const { gallon, length, shown_in = {} } = preferences ?? {};
  const chosen = Object.fromEntries(Object.entries(shown_in).filter(([, unit]) => unit !== undefined));
  return {
    ...METRIC,
    ...(gallon === undefined ? {} : { volume: gallon === "us" ? "US gal" : "imp gal" }),
    ...(length === undefined ? {} : { length }),
    ...chosen,
  };
}

/** Value in the unit a tank file's names have: L, cm, C, psu, dKH, mg/L as NO3, mg/L as PO4. */
export function shownValue(quantity: ShownQuantity, value: number, units: ShownIn): string {
  switch (quantity) {
    case "volume":
      return `${round(fromCanonical("volume", value, units.volume))} ${units.volume}`;
    case "length":
      return `${round(fromCanonical("length", value, units.length))} ${units.length}`;
    case "temperature":
      return `${round(fromCanonical("temperature", value, units.temperature))} °${units.temperature}`;
    case "salinity":
      return units.salinity === "psu" ? `${round(value)} psu` : gravityWords(value);
    case "alkalinity": {
      const meq = toCanonical("alkalinity", value, "dKH");
      const words = units.alkalinity === "mg/L as CaCO3" ? "ppm as CaCO3" : units.alkalinity;
      return `${round(fromCanonical("alkalinity", meq, units.alkalinity))} ${words}`;
    }
    case "nitrate":
      return units.nitrate === "NO3"
        ? `${round(value)} mg/L NO3`
        : `${round(fromCanonical("no3", value, "mg/L as N"))} mg/L NO3-N`;
    case "phosphate":
      return units.phosphate === "PO4"
        ? `${round(value)} mg/L PO4`
        : `${round(fromCanonical("phosphate", value, "mg/L as P"))} mg/L PO4-P`;
  }
}

/** Three figures say what a kit can tell. */
const round = (value: number): string => figure(Number(value.toPrecision(3)));

/** A gravity that the density equation is not held to is left as psu. */
function gravityWords(psu: number): string {
  try {
    return `specific gravity ${gravityOf(practicalSalinity(psu), GRAVITY_SCALES["25/25"]).toFixed(4)} (25/25 °C)`;
  } catch (error) {
    if (error instanceof OutOfRange) return `${round(psu)} psu`;
    throw error;
  }
}
