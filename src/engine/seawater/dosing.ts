/**
 * What a mass of a pure salt does to a volume of water, the mass that does what is wanted, its split into steps, and what
 * it does to pH and salinity. Stoichiometry: exact but for purity, the volume and the water that the jar has drawn.
 * Equations: docs/model/seawater.md, "Reagents". Limits: everything is taken to dissolve and nothing to fall out.
 */
import { ATOMIC_MASS } from "../units/masses.ts";
import { micromolePerKilogram, type PhTotal } from "../units/quantity.ts";
import { type Range, requireRange } from "../units/range.ts";
import { type CarbonateState, carbonateFrom, type Water } from "./carbonate.ts";
import { perKilogram, salinityOfGrams } from "./composition.ts";
import { density } from "./density.ts";
import { dryMass, molarMass, type Reagent } from "./reagents.ts";

/** What is raised, each in the unit a dose is reckoned in: meq/L, mg/L, mg/L. */
export type Raised = "alkalinity" | "calcium" | "magnesium";

/** Changes in a tank, per litre. */
export interface DoseEffect {
  readonly alkalinityMeqPerL: number;
  readonly calciumMgPerL: number;
  readonly magnesiumMgPerL: number;
  /** Inorganic carbon, mmol/L. */
  readonly carbonMmolPerL: number;
  readonly sodiumMgPerL: number;
  readonly chlorideMgPerL: number;
  readonly sulfateMgPerL: number;
  /** All that dissolves, without crystal water. */
  readonly saltMgPerL: number;
  /** What is left of it once animals have built calcium carbonate of all its alkalinity and calcium. */
  readonly lastingMgPerL: number;
}

const GRAMS: Range = { name: "the mass", unit: "g", min: 0, max: 1e6, source: "iupac-weights" };
const LITRES: Range = { name: "the volume", unit: "L", min: 1e-3, max: 1e6, source: "iupac-weights" };
const PURITY: Range = { name: "purity as a share", unit: "", min: 1e-3, max: 1, source: "iupac-weights" };

const SULFATE = ATOMIC_MASS.S + 4 * ATOMIC_MASS.O;

/** mol of formula → change per mol. */
const bringsPerMole = (of: Reagent): Readonly<Record<Raised, number>> => ({
  alkalinity: of.equivalents,
  calcium: (of.atoms.Ca ?? 0) * ATOMIC_MASS.Ca,
  magnesium: (of.atoms.Mg ?? 0) * ATOMIC_MASS.Mg,
});

export const raises = (of: Reagent, what: Raised): boolean => bringsPerMole(of)[what] > 0;

/**
 * @param purity share by mass that is the salt as its formula says
 * @throws OutOfRange for masses, volumes and purities that nobody has
 * @source iupac-weights
 */
export function doseEffect(of: Reagent, grams: number, purity: number, litres: number): DoseEffect {
  requireRange("work out what a dose does", [GRAMS, grams], [PURITY, purity], [LITRES, litres]);
  const milli = ((grams * purity) / molarMass(of) / litres) * 1000;
  const brings = bringsPerMole(of);
  const sodium = milli * (of.atoms.Na ?? 0) * ATOMIC_MASS.Na;
  const chloride = milli * (of.atoms.Cl ?? 0) * ATOMIC_MASS.Cl;
  const sulfate = milli * (of.atoms.S ?? 0) * SULFATE;
  const magnesium = milli * brings.magnesium;
  return {
    ...{ alkalinityMeqPerL: milli * brings.alkalinity, calciumMgPerL: milli * brings.calcium },
    ...{ magnesiumMgPerL: magnesium, carbonMmolPerL: milli * of.carbon },
    ...{ sodiumMgPerL: sodium, chlorideMgPerL: chloride, sulfateMgPerL: sulfate },
    saltMgPerL: milli * dryMass(of),
    lastingMgPerL: sodium + chloride + sulfate + magnesium,
  };
}

/**
 * Grams that raise one quantity by so much (meq/L of alkalinity, mg/L of calcium or magnesium). Inverse of `doseEffect`.
 * @throws OutOfRange as `doseEffect`; TypeError for a salt that does not raise it
 * @source iupac-weights
 */
export function doseFor(of: Reagent, what: Raised, rise: number, purity: number, litres: number): number {
  requireRange("work out a dose", [PURITY, purity], [LITRES, litres]);
  const perMole = bringsPerMole(of)[what];
  if (perMole === 0) throw new TypeError(`Cannot dose ${what} with ${of.formula}: it brings none`);
  return (litres * rise * molarMass(of)) / perMole / 1000 / purity;
}

const STEPS: Range = {
  ...{ name: "the number of steps", unit: "", min: 0, max: 1000, source: "judgement" },
  wayOut: () => "allow a larger step",
};

/**
 * Equal steps that add up to the whole, none above `most`: as few as do.
 * @throws OutOfRange for more than a thousand
 */
export function stepsOf(whole: number, most: number): readonly number[] {
  requireRange("split a dose", [STEPS, whole / most]);
  const count = Math.max(1, Math.ceil(whole / most - 1e-9));
  return Array.from({ length: count }, () => whole / count);
}

/** Salinity that so many mg/L of salt add. Other salts than the sea's conduct otherwise: an estimate. */
export const salinityRise = (saltMgPerL: number, { temperature, salinity }: Water): number =>
  salinityOfGrams(saltMgPerL / density(temperature, salinity));

export interface PhAfter {
  /** Once it is mixed, before any CO2 has come or gone. */
  readonly atOnce: PhTotal;
  /** Once the water holds as much CO2 as before. */
  readonly settled: PhTotal;
}

/**
 * pH after a dose that is mixed into all of the water. Near the spot where it is poured pH is far higher.
 * @throws OutOfRange as `carbonateFrom`
 */
export function phAfter(before: CarbonateState, effect: DoseEffect, water: Water): PhAfter {
  const alkalinity = micromolePerKilogram(before.alkalinity + perKilogram(effect.alkalinityMeqPerL, water));
  const dic = micromolePerKilogram(before.dic + perKilogram(effect.carbonMmolPerL, water));
  return {
    atOnce: carbonateFrom({ alkalinity, dic }, water).ph,
    settled: carbonateFrom({ alkalinity, fco2: before.fco2 }, water).ph,
  };
}

/**
 * Calcium in mg/L that goes with a meq/L of alkalinity when shells and skeletons are built: two equivalents an atom.
 * @source iupac-weights
 */
export const CALCIUM_PER_MEQ = ATOMIC_MASS.Ca / 2;
