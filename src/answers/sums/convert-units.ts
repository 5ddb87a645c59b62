/**
 * Every unit that keepers use, by what it measures: the table of the engine, and those that need the water (by mass,
 * salinity scales, oxygen). To and from the canonical unit of each kind.
 */
import { spelled } from "../../contract/quantity/rule.ts";
import type { Water } from "../../engine/seawater/carbonate.ts";
import { gramsOfSaltPerKg, salinityOfGrams } from "../../engine/seawater/composition.ts";
import { density } from "../../engine/seawater/density.ts";
import { type Instrument, salinityShown, shownBy } from "../../engine/seawater/instruments.ts";
import { oxygenSaturation } from "../../engine/seawater/oxygen.ts";
import { GRAVITY_SCALES } from "../../engine/seawater/specific-gravity.ts";
import {
  fromCanonical,
  isUnitOf,
  type QuantityKey,
  toCanonical,
  unitsOf,
} from "../../engine/units/convert.ts";
import { ATOMIC_MASS, MOLAR_MASS } from "../../engine/units/masses.ts";
import { practicalSalinity } from "../../engine/units/quantity.ts";

export type Kind =
  | "alkalinity"
  | "calcium"
  | "magnesium"
  | "nitrate"
  | "nitrite"
  | "ammonia"
  | "phosphate"
  | "salinity"
  | "oxygen"
  | "volume"
  | "mass"
  | "length"
  | "area"
  | "temperature";

export interface ConvertUnit {
  readonly kind: Kind;
  readonly unit: string;
  /** Spellings beside its own, in the form of `spelled`. */
  readonly also: readonly string[];
  readonly to: (value: number, water: Water) => number;
  readonly from: (value: number, water: Water) => number;
  /** Depends on the water's temperature or salinity. */
  readonly ofWater: boolean;
}

const TABLE: Readonly<Partial<Record<Kind, QuantityKey>>> = {
  ...{
    alkalinity: "alkalinity",
    calcium: "calcium",
    magnesium: "magnesium",
    nitrate: "no3",
    nitrite: "nitrite",
  },
  ...{
    ammonia: "tan",
    phosphate: "phosphate",
    volume: "volume",
    mass: "mass",
    length: "length",
    area: "area",
  },
  temperature: "temperature",
};

/** What is also written for a unit of a kind. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  "meq/L": ["meq", "mval/l", "mmol/l"],
  dKH: ["kh"],
  "alkalinity mg/L as CaCO3": ["ppm", "mg/l", "ppmcaco3"],
  "calcium mg/L": ["ppm", "ppmca", "mg/lca"],
  "magnesium mg/L": ["ppm", "ppmmg", "mg/lmg"],
  "mg/L as NO3": ["no3", "ppmno3", "mg/l", "ppm"],
  "nitrate mg/L as N": ["no3-n", "no3n", "ppmn", "n", "ppmno3n"],
  "mg/L as NO2": ["no2", "ppmno2", "mg/l", "ppm"],
  "nitrite mg/L as N": ["no2n", "ppmn", "n", "ppmno2n"],
  "ammonia mg/L as N": ["tan", "nh3n", "nh4n", "ppmn", "n"],
  "mg/L as NH3": ["nh3", "ppmnh3"],
  "mg/L as NH4": ["nh4", "ppmnh4"],
  "mg/L as PO4": ["po4", "ppmpo4", "mg/l", "ppm"],
  "mg/L as P": ["p", "ppmp", "po4p"],
  "ug/L as PO4": ["ppbpo4"],
  "ug/L as P": ["ppb", "ppbp", "ppbphosphorus"],
  L: ["litre", "litres", "liter", "liters"],
  mL: ["ml"],
  "US gal": ["gal", "gallon", "gallons", "usgallons"],
  "imp gal": ["gal", "gallon", "gallons", "ukgal"],
  "US fl oz": ["floz"],
  in3: ["cubicinches"],
  g: ["gram", "grams"],
  lb: ["lbs", "pounds"],
  oz: ["ounces"],
  in: ["inch", "inches", '"'],
  ft: ["feet", "foot"],
  C: ["celsius"],
  F: ["fahrenheit"],
  K: ["kelvin"],
};

function ofTable(kind: Kind, quantity: QuantityKey): ConvertUnit[] {
  return unitsOf(quantity).map((unit) => ({
    ...{ kind, unit, also: ALSO[unit] ?? ALSO[`${kind} ${unit}`] ?? [], ofWater: false },
    to: (value) => (isUnitOf(quantity, unit) ? toCanonical(quantity, value, unit) : Number.NaN),
    from: (value) => (isUnitOf(quantity, unit) ? fromCanonical(quantity, value, unit) : Number.NaN),
  }));
}

/** Kilograms in a litre. */
const kgPerL = ({ temperature, salinity }: Water): number => density(temperature, salinity) / 1000;

/** @param perL one of the unit per kg as canonical per kg */
const byMass = (kind: Kind, unit: string, canonicalPer: number): ConvertUnit => ({
  ...{ kind, unit, also: [], ofWater: true },
  to: (value, water) => value * canonicalPer * kgPerL(water),
  from: (value, water) => value / canonicalPer / kgPerL(water),
});

/** A scale of salinity that an instrument shows. */
function shownAs(unit: string, instrument: Instrument, also: readonly string[], factor = 1): ConvertUnit {
  return {
    ...{ kind: "salinity", unit, also, ofWater: true },
    to: (value, { temperature }) => salinityShown(instrument, value * factor, temperature),
    from: (value, { temperature }) => shownBy(instrument, practicalSalinity(value), temperature) / factor,
  };
}

const salinity = (
  unit: string,
  also: readonly string[],
  of: Pick<ConvertUnit, "to" | "from">,
  ofWater = false,
): ConvertUnit => ({ kind: "salinity", unit, also, ofWater, ...of });

/** g/L of water of that salinity itself, whatever the water beside it is. */
const gramsPerL = (psu: number, { temperature }: Water): number =>
  gramsOfSaltPerKg(practicalSalinity(psu)) * kgPerL({ temperature, salinity: practicalSalinity(psu) });

const SALINITY: readonly ConvertUnit[] = [
  salinity("psu", ["ppt", "‰", "permille"], { to: (value) => value, from: (value) => value }),
  salinity("%", ["percent"], { to: (value) => 10 * value, from: (value) => value / 10 }),
  salinity("g/kg", [], {
    to: (value) => salinityOfGrams(value),
    from: (value) => gramsOfSaltPerKg(practicalSalinity(value)),
  }),
  salinity(
    "g/L",
    [],
    {
      // Density moves little with salinity: three rounds are exact to the tenth digit.
      to: (value, water) => {
        let psu = value;
        for (let round = 0; round < 12; round += 1) psu = (psu * value) / gramsPerL(psu, water);
        return psu;
      },
      from: gramsPerL,
    },
    true,
  ),
  ...Object.entries(GRAVITY_SCALES).map(([name, scale]) =>
    shownAs(`sg ${name}`, { kind: "gravity", scale }, [name]),
  ),
  shownAs("mS/cm at 25 C", { kind: "conductivity_25" }, ["ms/cm", "ms"]),
  shownAs("uS/cm at 25 C", { kind: "conductivity_25" }, ["us/cm", "us"], 0.001),
  shownAs("mS/cm uncorrected", { kind: "conductivity" }, []),
];

/** mL of the gas at 0 °C and one atmosphere weigh so many mg. @source benson-krause-1984, from memory */
const OXYGEN_MG_PER_ML = 1.429;
const OXYGEN: readonly ConvertUnit[] = [
  {
    kind: "oxygen",
    unit: "mg/L O2",
    also: ["mg/l", "ppm"],
    ofWater: false,
    to: (value) => value,
    from: (value) => value,
  },
  {
    ...{ kind: "oxygen", unit: "mL/L O2", also: ["ml/l"], ofWater: false },
    to: (value) => value * OXYGEN_MG_PER_ML,
    from: (value) => value / OXYGEN_MG_PER_ML,
  },
  {
    ...{ kind: "oxygen", unit: "% of saturation", also: ["%saturation", "%"], ofWater: true },
    to: (value, { temperature, salinity: s }) => (value / 100) * oxygenSaturation(temperature, s),
    from: (value, { temperature, salinity: s }) => (100 * value) / oxygenSaturation(temperature, s),
  },
  byMass("oxygen", "umol/kg O2", MOLAR_MASS.oxygen / 1000),
];

export const CONVERT_UNITS: readonly ConvertUnit[] = [
  ...Object.entries(TABLE).flatMap(([kind, quantity]) => ofTable(kind as Kind, quantity)),
  ...[byMass("alkalinity", "meq/kg", 1), byMass("alkalinity", "umol/kg", 0.001)],
  ...[byMass("calcium", "mg/kg", 1), byMass("calcium", "mmol/kg", ATOMIC_MASS.Ca)],
  ...[byMass("magnesium", "mg/kg", 1), byMass("magnesium", "mmol/kg", ATOMIC_MASS.Mg)],
  ...SALINITY,
  ...OXYGEN,
];

const KIND_LIST: readonly Kind[] = [...new Set(CONVERT_UNITS.map(({ kind }) => kind))];

/** Units that a spelling can mean, of one kind or of any. Within a kind a unit's own name goes before what it is also called. */
export const unitsSpelled = (spelling: string, kind: Kind | null): readonly ConvertUnit[] =>
  (kind === null ? KIND_LIST : [kind]).flatMap((one) => {
    const of = CONVERT_UNITS.filter((unit) => unit.kind === one);
    const own = of.filter(({ unit }) => spelled(unit) === spelling);
    return own.length > 0 ? own : of.filter(({ also }) => also.some((word) => spelled(word) === spelling));
  });
