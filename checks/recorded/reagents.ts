/** Molar masses and shares of elements by a general library of the elements, beside ours. */
import { doseEffect } from "../../src/engine/seawater/dosing.ts";
import { molarMass, REAGENTS, type Reagent, type ReagentId } from "../../src/engine/seawater/reagents.ts";
import { type Comparison, readBlocks } from "../comparison.ts";

interface Point {
  readonly input: { readonly reagent: ReagentId };
  readonly expected: Readonly<Record<string, number>>;
}
const BLOCK = "reagent_masses";
const points = (readBlocks("recorded/reagents.json")[BLOCK]?.points ?? []) as Point[];

const MASS = "molar_mass_g_per_mol";
const SOURCE = "periodictable 1.6.0 (Debian)";
/** A gram of it in a litre: mg/L over a thousand is the share by mass. */
const one = (of: Reagent) => doseEffect(of, 1, 1, 1);
const SHARES: readonly (readonly [key: string, quantity: string, of: (reagent: Reagent) => number])[] = [
  ["calcium_mass_share", "calcium in the salt, by mass", (of) => one(of).calciumMgPerL / 1000],
  ["magnesium_mass_share", "magnesium in the salt, by mass", (of) => one(of).magnesiumMgPerL / 1000],
  ["sodium_mass_share", "sodium in the salt, by mass", (of) => one(of).sodiumMgPerL / 1000],
  ["chlorine_mass_share", "chloride in the salt, by mass", (of) => one(of).chlorideMgPerL / 1000],
];

/** The library's atomic weights are of another year, and have more digits: 0.01 %, as the file says. */
const TOLERANCE = 1e-4;

export const comparisons: readonly Comparison[] = [
  {
    ...{ block: BLOCK, quantity: "molar mass", unit: "g/mol", source: SOURCE },
    ...{ tolerance: TOLERANCE, relative: true },
    pairs: points.map(({ input, expected }) => ({
      at: input.reagent,
      theirs: expected[MASS] ?? Number.NaN,
      ours: molarMass(REAGENTS[input.reagent]),
    })),
  },
  ...SHARES.map(([key, quantity, ours]) => ({
    ...{ block: BLOCK, quantity, unit: "", source: SOURCE, tolerance: TOLERANCE, relative: true },
    pairs: points.flatMap(({ input, expected }) => {
      const theirs = expected[key] ?? Number.NaN;
      return theirs === 0 ? [] : [{ at: input.reagent, theirs, ours: ours(REAGENTS[input.reagent]) }];
    }),
  })),
];
