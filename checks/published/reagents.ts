/** Printed factors, trade rules and doses worked by hand, each beside what Grazewell's stoichiometry gives. */
import { CALCIUM_PER_MEQ, doseEffect, doseFor, type Raised } from "../../src/engine/seawater/dosing.ts";
import { molarMass, REAGENTS, type ReagentId } from "../../src/engine/seawater/reagents.ts";
import { fromCanonical, toCanonical } from "../../src/engine/units/convert.ts";
import { type Comparison, type LeftOut, readBlocks } from "../comparison.ts";

interface Point {
  readonly reagent: ReagentId;
}
export const blocks = readBlocks("published/reagents.json");
const points = <P>(block: string) => (blocks[block]?.points ?? []) as (Point & P)[];

const PPM = "mg/L as CaCO3";
const DKH = toCanonical("alkalinity", 1, "dKH");
/** What the printed table of alkalis gives for lye lies 2 % off its own formula: see the note there. */
const DOUBTED: ReagentId = "sodium_hydroxide";

export const comparisons: readonly Comparison[] = [
  {
    block: "alkalinity_per_alkali",
    quantity: "alkalinity for each mg/L of alkali",
    unit: PPM,
    source: "water treatment, table of key alkalis (in a quotation)",
    tolerance: 0.005,
    relative: false,
    pairs: points<{ value: number }>("alkalinity_per_alkali")
      .filter(({ reagent }) => reagent !== DOUBTED)
      .map(({ reagent, value }) => ({
        ...{ at: reagent, theirs: value },
        ours: fromCanonical("alkalinity", doseEffect(REAGENTS[reagent], 0.001, 1, 1).alkalinityMeqPerL, PPM),
      })),
  },
  {
    block: "pool_rule",
    quantity: "dose for alkalinity",
    unit: "lb",
    source: "trade rule for swimming pools",
    tolerance: 0.05,
    relative: false,
    pairs: points<{ pounds: number; us_gallons: number; rise_mg_per_l_caco3: number }>("pool_rule").map(
      ({ reagent, pounds, us_gallons, rise_mg_per_l_caco3 }) => {
        const rise = toCanonical("alkalinity", rise_mg_per_l_caco3, PPM);
        const litres = toCanonical("volume", us_gallons, "US gal");
        const grams = doseFor(REAGENTS[reagent], "alkalinity", rise, 1, litres);
        return { at: reagent, theirs: pounds, ours: fromCanonical("mass", grams, "lb") };
      },
    ),
  },
  {
    block: "kester_1967_molar_masses",
    quantity: "molar mass",
    unit: "g/mol",
    source: "Kester et al. 1967, recipe of artificial seawater (in a copy; weights of the 1960s)",
    tolerance: 0.04,
    relative: false,
    pairs: points<{ g_per_mol: number }>("kester_1967_molar_masses").map(({ reagent, g_per_mol }) => ({
      ...{ at: reagent, theirs: g_per_mol, ours: molarMass(REAGENTS[reagent]) },
    })),
  },
  {
    block: "worked_by_hand",
    quantity: "dose for 100 L",
    unit: "g",
    source: "worked by hand from IUPAC weights, steps in the file",
    tolerance: 6e-4,
    relative: false,
    pairs: points<{ what: Raised; rise: number; grams: number }>("worked_by_hand").map(
      ({ reagent, what, rise, grams }) => ({
        ...{ at: `${reagent}, ${what}`, theirs: grams },
        ours: doseFor(REAGENTS[reagent], what, rise, 1, 100),
      }),
    ),
  },
  {
    block: "salt_left_behind",
    quantity: "salt left of one dKH and its calcium",
    unit: "mg/L",
    source: "worked by hand from IUPAC weights",
    tolerance: 0.005,
    relative: false,
    pairs: points<{ mg_per_l: number }>("salt_left_behind").map(({ mg_per_l }) => {
      const left = (id: ReagentId, what: Raised, rise: number) =>
        doseEffect(REAGENTS[id], doseFor(REAGENTS[id], what, rise, 1, 100), 1, 100).lastingMgPerL;
      const ours =
        left("sodium_bicarbonate", "alkalinity", DKH) +
        left("calcium_chloride_2", "calcium", DKH * CALCIUM_PER_MEQ);
      return { at: "1 dKH", theirs: mg_per_l, ours };
    }),
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    block: "alkalinity_per_alkali",
    what: "sodium hydroxide",
    why: "printed 1.28; its formula gives 1.251, and the table's other three agree with theirs",
  },
];
