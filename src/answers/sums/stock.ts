/** Strength of a solution made of a pure salt, and what a millilitre of it does in the tank. */
import { convertible } from "../../contract/quantity/plain.ts";
import { type DoseEffect, doseEffect, type Raised, raises } from "../../engine/seawater/dosing.ts";
import { dryMass, molarMass, type Reagent } from "../../engine/seawater/reagents.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import {
  cautionsOf,
  GRAMS,
  PURITY,
  purityInput,
  purityOf,
  RAISED,
  reagentField,
  reagentInput,
  reagentOf,
} from "./dose-fields.ts";
import { figuresOf, linkTo, middle, refusal, row, stated } from "./parts.ts";
import { independently } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { WATER } from "./tank-fields.ts";
import { readWith } from "./water-fields.ts";

const VOLUME = convertible({
  ...{ label: "Made up to", quantity: "volume", unit: "L", example: "1 L" },
  hard: { min: 0, max: 1000, open: true },
});
const SOLUTION: AmountField = {
  ...{
    name: "solution",
    label: "Made up to",
    hint: "Volume of the finished solution.",
    input: "amount",
    empty: "needed",
  },
  ...{ read: readWith(VOLUME), example: "1 L", units: ["L", "mL", "US gal"] },
};

const EFFECT: Readonly<Record<Raised, (effect: DoseEffect) => number>> = {
  alkalinity: ({ alkalinityMeqPerL }) => alkalinityMeqPerL,
  calcium: ({ calciumMgPerL }) => calciumMgPerL,
  magnesium: ({ magnesiumMgPerL }) => magnesiumMgPerL,
};
const WHOLE: Readonly<Record<Raised, string>> = { alkalinity: "meq", calcium: "mg", magnesium: "mg" };

const figure = figuresOf("stock");

function work(given: Given): SumAnswer | SumRefusal {
  const of = reagentOf(given);
  const [grams, solution] = [given.amount("grams"), given.amount("solution")];
  const tank = given.maybe("water");
  const purity = purityOf(given);
  if (purity.low <= 0) return refusal(["A purity of nought holds no salt."], "purity");
  const brings = (["alkalinity", "calcium", "magnesium"] as const).filter((what) => raises(of, what));
  const inputs = [
    reagentInput(of),
    stated("weight", grams, "g"),
    purityInput(given),
    stated("solution", solution, "L"),
  ];
  const perMl = brings.map((what) =>
    figure({
      ...{ name: `per_ml_${what}`, label: `${what} in a mL`, unit: WHOLE[what], at: "reagents", inputs },
      spread: independently(
        [grams, purity, solution],
        ([g = 0, share = 1, l = 1]) => EFFECT[what](doseEffect(of, g, share, l)) / 1000,
      ),
      formula: "grams times purity over molar mass, times what a mole brings, over the solution",
      ...{ sources: ["iupac-weights"], wouldChange: ["the purity", "how true the scale is"] },
    }),
  );
  const gramsPerMl = figure({
    ...{ name: "grams", label: "salt in a mL, as weighed", unit: "g", at: "reagents", inputs },
    spread: independently([grams, solution], ([g = 0, l = 1]) => g / l / 1000),
    formula: "grams over the solution",
  });
  const inTank =
    tank === null
      ? []
      : brings.map((what, i) => ofTank({ of, what, perMl: perMl[i] as Figure, gramsPerMl, purity, tank }));
  const [first] = perMl;
  if (first === undefined || grams.central === 0)
    return refusal(["Enter a weight: without salt it has no strength."], "grams");
  return {
    kind: "answer",
    lead: ["A mL of it holds ", middle(first), ` of ${brings[0]}, in `, middle(gramsPerMl), " of salt."],
    rows: [...perMl, gramsPerMl, ...inTank].map((one) => row(one)),
    tables: [],
    cautions: [...tooStrong(of, grams.central, purity.central, solution.central), ...cautionsOf([of])],
    notes: [
      "Put the salt into part of the water and fill up to the mark: the salt takes room of its own.",
      "Write salt, strength and date on the bottle, and never keep it in one that people drink from.",
      ...(of.id === "calcium_hydroxide"
        ? ["Air turns it into chalk: keep it closed, and pour off the clear part only."]
        : []),
    ],
    wouldChange: ["The purity on the label, and damp that the salt has drawn."],
    figures: [...perMl, gramsPerMl, ...inTank],
  };
}

interface InTank {
  readonly of: Reagent;
  readonly what: Raised;
  readonly perMl: Figure;
  readonly gramsPerMl: Figure;
  readonly purity: Spread;
  readonly tank: Spread;
}

function ofTank({ of, what, perMl, gramsPerMl, purity, tank }: InTank): Figure {
  const { unit, factor } = RAISED[what];
  return figure({
    ...{ name: `tank_${what}`, label: `10 mL raise the tank's ${what} by`, unit, at: "reagents" },
    spread: independently(
      [gramsPerMl.spread, purity, tank],
      ([g = 0, share = 1, l = 1]) => factor * EFFECT[what](doseEffect(of, 10 * g, share, l)),
    ),
    formula: "ten times what a mL holds, over the tank's water",
    inputs: [linkTo(perMl), stated("water", tank, "L")],
    wouldChange: ["the volume of water"],
  });
}

/** How much dissolves goes by 100 g of water; of a solution it is taken as its volume: a little too strict. */
function tooStrong(of: Reagent, grams: number, purity: number, litres: number): readonly string[] {
  const dry = (grams * purity * dryMass(of)) / molarMass(of) / litres / 10;
  if (dry <= of.dissolves) return [];
  const most = (10 * of.dissolves * molarMass(of)) / dryMass(of);
  return [
    `More than dissolves: at 20 °C a litre takes about ${Number(most.toPrecision(2))} g of it (tables of solubility, in a copy). What lies at the bottom is not in the dose.`,
  ];
}

export const STOCK: Sum = {
  id: "stock",
  group: "dosing",
  name: "Strength of a solution",
  question: "How strong is the solution I make of this salt?",
  fields: [reagentField(null, null), GRAMS, PURITY, SOLUTION, { ...WATER, empty: "optional" }],
  examples: [
    { reagent: "sodium_carbonate", grams: "100 g", solution: "1 L", water: "200 L" },
    { reagent: "calcium_chloride_2", grams: "1 lb", purity: "97 %", solution: "1 US gal" },
    { reagent: "calcium_hydroxide", grams: "5 g", solution: "1 L", water: "100 L" },
  ],
  work,
};
