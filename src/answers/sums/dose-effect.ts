/** The reverse of a dose: what a weighed mass of a salt would do to the tank. */
import { carbonateFrom } from "../../engine/seawater/carbonate.ts";
import { perKilogram } from "../../engine/seawater/composition.ts";
import { type DoseEffect, doseEffect, phAfter, salinityRise } from "../../engine/seawater/dosing.ts";
import { totalToNbs } from "../../engine/seawater/ph-scale.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { exact } from "../../engine/types/link.ts";
import { phTotal } from "../../engine/units/quantity.ts";
import { CARBONATE_SOURCES } from "./carbonate.ts";
import {
  cautionsOf,
  DKH,
  GRAMS,
  MIXED_NOTE,
  PURITY,
  purityInput,
  purityOf,
  RAISED,
  reagentField,
  reagentInput,
  reagentOf,
} from "./dose-fields.ts";
import { figuresOf, middle, refusal, row, stated } from "./parts.ts";
import { independently } from "./spread.ts";
import type { Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { PH, SALINITY, TEMPERATURE, WATER } from "./tank-fields.ts";
import { ALKALINITY, onTotal, PH_SCALE, phRead, waterOf } from "./water-fields.ts";

interface Shown {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly of: (effect: DoseEffect) => number;
}
const SHOWN: readonly Shown[] = [
  {
    name: "alkalinity",
    label: "alkalinity rises by",
    unit: "dKH",
    of: (effect) => DKH * effect.alkalinityMeqPerL,
  },
  { name: "calcium", label: "calcium rises by", unit: "mg/L", of: (effect) => effect.calciumMgPerL },
  { name: "magnesium", label: "magnesium rises by", unit: "mg/L", of: (effect) => effect.magnesiumMgPerL },
  { name: "sodium", label: "sodium comes along", unit: "mg/L", of: (effect) => effect.sodiumMgPerL },
  { name: "chloride", label: "chloride comes along", unit: "mg/L", of: (effect) => effect.chlorideMgPerL },
  { name: "sulfate", label: "sulfate comes along", unit: "mg/L", of: (effect) => effect.sulfateMgPerL },
];

const figure = figuresOf("dose-effect");

function work(given: Given): SumAnswer | SumRefusal {
  const of = reagentOf(given);
  const [grams, litres] = [given.amount("grams"), given.amount("water")];
  const purity = purityOf(given);
  if (purity.low <= 0) return refusal(["A purity of nought holds no salt."], "purity");
  const water = waterOf(given.amount("temperature").central, given.amount("salinity").central);
  const inputs = [
    reagentInput(of),
    stated("weight", grams, "g"),
    purityInput(given),
    stated("water", litres, "L"),
  ];
  const spreadOf = (what: (effect: DoseEffect) => number): Spread =>
    independently([grams, purity, litres], ([g = 0, share = 1, l = 1]) => what(doseEffect(of, g, share, l)));
  const changes = SHOWN.map(({ name, label, unit, of: what }) =>
    figure({
      ...{ name, label, unit, at: "reagents", spread: spreadOf(what), inputs, sources: ["iupac-weights"] },
      formula: "grams times purity over molar mass, times what a mole brings, over the water",
      wouldChange: ["the volume of water", "the purity"],
    }),
  ).filter(({ spread }) => spread.central > 0);
  const salt = figure({
    ...{ name: "salinity", label: "salinity rises by", unit: "psu", at: "reagents", inputs },
    spread: spreadOf((effect) => salinityRise(effect.saltMgPerL, water)),
    ...{ formula: "dissolved salt over the density of the water", sources: ["millero-2008"] },
  });
  const ph = phOf(given, doseEffect(of, grams.central, purity.central, litres.central));
  const [first] = changes;
  if (first === undefined) return refusal(["No salt, no change: enter a weight."], "grams");
  return {
    kind: "answer",
    lead: [`${first.label.charAt(0).toUpperCase()}${first.label.slice(1)} `, middle(first), "."],
    rows: [...changes, salt, ...ph].map((one) => row(one)),
    tables: [],
    cautions: [...cautionsOf([of]), ...tooFast(changes)],
    notes: [
      MIXED_NOTE,
      ...(of.equivalents > 0 && ph.length === 0
        ? ["With alkalinity and pH entered too, it tells what pH does."]
        : []),
    ],
    wouldChange: ["The true volume of water, less rock and sand."],
    figures: [...changes, salt, ...ph],
  };
}

/** More at once than keepers let a day change. */
function tooFast(changes: readonly Figure[]): readonly string[] {
  return Object.values(RAISED).flatMap(({ what, most, unit, mostWords }) => {
    const change = changes.find(({ id }) => id.endsWith(`.${what}`));
    const limit = Number.parseFloat(most.text);
    return change !== undefined && change.spread.central > 2 * limit
      ? [`That is more than ${2 * limit} ${unit} of ${what} at once: split it over days. ${mostWords}`]
      : [];
  });
}

function phOf(given: Given, effect: DoseEffect): readonly Figure[] {
  const alkalinity = given.maybe("alkalinity");
  if (effect.alkalinityMeqPerL === 0 || alkalinity === null || given.maybe("ph") === null) return [];
  const read = phRead(given);
  const water = waterOf(given.amount("temperature").central, given.amount("salinity").central);
  const before = carbonateFrom(
    { alkalinity: perKilogram(alkalinity.central, water), ph: onTotal(read.ph.central, read.scale, water) },
    water,
  );
  const { atOnce, settled } = phAfter(before, effect, water);
  const shown = (ph: number) =>
    read.scale === "total" ? ph : totalToNbs(phTotal(ph), water.temperature, water.salinity);
  const inputs = [stated("pH now", read.ph, ""), stated("alkalinity now", alkalinity, "meq/L")];
  const common = { unit: "", at: "reagents", inputs, sources: CARBONATE_SOURCES };
  return [
    figure({
      ...{ ...common, name: "ph_at_once", label: "pH at once", spread: exact(shown(atOnce)) },
      formula: "alkalinity and carbon of the dose added, no CO2 come or gone yet",
    }),
    figure({
      ...{ ...common, name: "ph_settled", label: "pH once CO2 is as before", spread: exact(shown(settled)) },
      formula: "the new alkalinity with the CO2 of before",
    }),
  ];
}

export const DOSE_EFFECT: Sum = {
  id: "dose-effect",
  group: "dosing",
  name: "What a dose would do",
  question: "What would this much of this salt do to my tank?",
  fields: [
    reagentField(null, null),
    GRAMS,
    PURITY,
    WATER,
    { ...ALKALINITY, label: "Alkalinity now", hint: "For what the dose does to pH.", empty: "optional" },
    { ...PH, label: "pH now", empty: "optional" },
    PH_SCALE,
    { ...SALINITY, empty: { text: "35 psu", how: "taken where nothing is said" } },
    { ...TEMPERATURE, empty: { text: "25 C", how: "taken where nothing is said" } },
  ],
  examples: [
    {
      reagent: "sodium_carbonate",
      grams: "5 g",
      water: "200 L",
      alkalinity: "7 dKH",
      ph: "8.1",
      ph_scale: "nbs",
    },
    { reagent: "magnesium_sulfate_7", grams: "2 oz", purity: "99 %", water: "40 US gal" },
    { reagent: "calcium_hydroxide", grams: "20 g", water: "100 L", alkalinity: "7 dKH", ph: "8.1" },
  ],
  work,
};
