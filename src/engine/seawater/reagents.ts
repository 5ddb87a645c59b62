/**
 * The pure salts that alkalinity, calcium and magnesium are raised with: what a mole of each brings and leaves behind,
 * from its formula alone. Molar masses are added up from atomic weights, hydrate water included.
 * What it is about: docs/model/seawater.md, "Reagents". Names of substances only; a product's label comes before any of it.
 */
import { ATOMIC_MASS } from "../units/masses.ts";

type Element = keyof typeof ATOMIC_MASS;
export type ReagentId =
  | "sodium_bicarbonate"
  | "sodium_carbonate"
  | "sodium_carbonate_1"
  | "sodium_carbonate_10"
  | "sodium_hydroxide"
  | "calcium_hydroxide"
  | "calcium_chloride"
  | "calcium_chloride_2"
  | "calcium_chloride_6"
  | "magnesium_chloride"
  | "magnesium_chloride_6"
  | "magnesium_sulfate"
  | "magnesium_sulfate_7";

/** What can hurt a person: strong alkali; an alkali that irritates; a salt that heats as it dissolves and dries skin. */
export type Hazard = "caustic" | "irritant" | "heats" | "mild";

export interface Reagent {
  readonly id: ReagentId;
  readonly label: string;
  /** As printed on a jar. */
  readonly formula: string;
  /** Atoms in one formula, without water of the crystal. */
  readonly atoms: Readonly<Partial<Record<Element, number>>>;
  /** Molecules of water in the crystal. */
  readonly water: number;
  /** Equivalents of alkalinity a mole. */
  readonly equivalents: number;
  /** Moles of inorganic carbon a mole. */
  readonly carbon: number;
  readonly hazard: Hazard;
  /** Grams of the salt without crystal water that dissolve in 100 g of water at 20 °C. @source solubility-table */
  readonly dissolves: number;
}

type Kind = Omit<Reagent, "id" | "label" | "formula" | "water"> & {
  readonly name: string;
  readonly base: string;
};

const BICARBONATE: Kind = {
  ...{ name: "sodium bicarbonate", base: "NaHCO3", atoms: { Na: 1, H: 1, C: 1, O: 3 } },
  ...{ equivalents: 1, carbon: 1, hazard: "mild", dissolves: 9.6 },
};
const CARBONATE: Kind = {
  ...{ name: "sodium carbonate", base: "Na2CO3", atoms: { Na: 2, C: 1, O: 3 } },
  ...{ equivalents: 2, carbon: 1, hazard: "irritant", dissolves: 21.5 },
};
const LYE: Kind = {
  ...{ name: "sodium hydroxide", base: "NaOH", atoms: { Na: 1, O: 1, H: 1 } },
  ...{ equivalents: 1, carbon: 0, hazard: "caustic", dissolves: 109 },
};
const LIME: Kind = {
  ...{ name: "calcium hydroxide", base: "Ca(OH)2", atoms: { Ca: 1, O: 2, H: 2 } },
  ...{ equivalents: 2, carbon: 0, hazard: "caustic", dissolves: 0.165 },
};
const CALCIUM_CHLORIDE: Kind = {
  ...{ name: "calcium chloride", base: "CaCl2", atoms: { Ca: 1, Cl: 2 } },
  ...{ equivalents: 0, carbon: 0, hazard: "heats", dissolves: 74.5 },
};
const MAGNESIUM_CHLORIDE: Kind = {
  ...{ name: "magnesium chloride", base: "MgCl2", atoms: { Mg: 1, Cl: 2 } },
  ...{ equivalents: 0, carbon: 0, hazard: "heats", dissolves: 54.6 },
};
const MAGNESIUM_SULFATE: Kind = {
  ...{ name: "magnesium sulfate", base: "MgSO4", atoms: { Mg: 1, S: 1, O: 4 } },
  ...{ equivalents: 0, carbon: 0, hazard: "mild", dissolves: 33.7 },
};

const HYDRATE = {
  0: "dry",
  1: "monohydrate",
  2: "dihydrate",
  6: "hexahydrate",
  7: "heptahydrate",
  10: "decahydrate",
};

/** @param dry said of the salt without crystal water, where the same is also sold with it */
function reagent(id: ReagentId, kind: Kind, water: keyof typeof HYDRATE, dry = true): Reagent {
  const { name, base, ...rest } = kind;
  const state = water === 0 && !dry ? "" : `, ${HYDRATE[water]}`;
  const crystal = water === 0 ? "" : water === 1 ? "·H2O" : `·${water}H2O`;
  return { id, label: `${name}${state}`, formula: `${base}${crystal}`, water, ...rest };
}

const ALL: readonly Reagent[] = [
  reagent("sodium_bicarbonate", BICARBONATE, 0, false),
  reagent("sodium_carbonate", CARBONATE, 0),
  reagent("sodium_carbonate_1", CARBONATE, 1),
  reagent("sodium_carbonate_10", CARBONATE, 10),
  reagent("sodium_hydroxide", LYE, 0, false),
  reagent("calcium_hydroxide", LIME, 0, false),
  reagent("calcium_chloride", CALCIUM_CHLORIDE, 0),
  reagent("calcium_chloride_2", CALCIUM_CHLORIDE, 2),
  reagent("calcium_chloride_6", CALCIUM_CHLORIDE, 6),
  reagent("magnesium_chloride", MAGNESIUM_CHLORIDE, 0),
  reagent("magnesium_chloride_6", MAGNESIUM_CHLORIDE, 6),
  reagent("magnesium_sulfate", MAGNESIUM_SULFATE, 0),
  reagent("magnesium_sulfate_7", MAGNESIUM_SULFATE, 7),
];

export const REAGENTS = Object.fromEntries(ALL.map((one) => [one.id, one])) as Readonly<
  Record<ReagentId, Reagent>
>;

const CRYSTAL_WATER = 2 * ATOMIC_MASS.H + ATOMIC_MASS.O;

/** g/mol of the salt without crystal water. @source iupac-weights */
export const dryMass = ({ atoms }: Reagent): number =>
  (Object.entries(atoms) as [Element, number][]).reduce(
    (sum, [element, count]) => sum + count * ATOMIC_MASS[element],
    0,
  );

/** g/mol as sold. @source iupac-weights */
export const molarMass = (of: Reagent): number => dryMass(of) + of.water * CRYSTAL_WATER;
