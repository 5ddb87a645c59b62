/** The daily dose that meets a demand of alkalinity and calcium, dry or as a solution, and the salt that it leaves behind. */
import { convertible } from "../../contract/quantity/plain.ts";
import { CALCIUM_PER_MEQ, doseEffect, doseFor, salinityRise } from "../../engine/seawater/dosing.ts";
import type { Reagent } from "../../engine/seawater/reagents.ts";
import type { Figure } from "../../engine/types/figure.ts";
import {
  cautionsOf,
  DKH,
  MIXED_NOTE,
  PURITY,
  purityOf,
  RAISED,
  reagentField,
  reagentInput,
  reagentOf,
} from "./dose-fields.ts";
import { figuresOf, linkTo, middle, refusal, row, stated, times } from "./parts.ts";
import { independently } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { SALINITY, TEMPERATURE, WATER } from "./tank-fields.ts";
import { readWith, waterOf } from "./water-fields.ts";

const DAYS_A_YEAR = 365;

const perDay = (what: "alkalinity" | "calcium", example: string): AmountField => ({
  ...{
    name: `${what}_a_day`,
    label: `${what === "calcium" ? "Calcium" : "Alkalinity"} it takes a day`,
    hint: "",
  },
  ...{ input: "amount", empty: "optional", read: RAISED[what].readChange, example },
  units: what === "alkalinity" ? ["dKH", "meq/L", "mg/L as CaCO3"] : ["mg/L"],
});

const strengthField = (what: "alkalinity" | "calcium"): AmountField => ({
  ...{ name: `${what}_strength`, label: `Salt in a litre of your ${what} solution`, input: "amount" },
  ...{ hint: "Empty: dosed dry.", empty: "optional", example: "100 g", units: ["g"] },
  read: readWith(
    convertible({
      label: "Strength",
      quantity: "mass",
      unit: "g",
      hard: { min: 0.01, max: 2000 },
      example: "100",
    }),
  ),
});

const figure = figuresOf("daily-dose");

interface Part {
  readonly of: Reagent;
  readonly grams: Figure;
  readonly volume: Figure | null;
  /** mg/L a day that stays for good. */
  readonly lastingMgPerL: number;
}

function partOf(given: Given, what: "alkalinity" | "calcium"): Part | null {
  const demand = given.maybe(`${what}_a_day`);
  if (demand === null) return null;
  const of = reagentOf(given, `${what}_salt`);
  const purity = purityOf(given, `${what}_purity`);
  const litres = given.amount("water");
  const { unit, factor } = RAISED[what];
  const grams = figure({
    ...{ name: what, label: `${of.label} a day`, unit: "g", at: "demand", sources: ["iupac-weights"] },
    spread: independently([demand, purity, litres], ([rise = 0, share = 1, l = 1]) =>
      doseFor(of, what, rise, share, l),
    ),
    formula: "litres times the demand, times molar mass over what a mole brings, over purity",
    inputs: [
      stated(`${what} taken a day`, times(demand, factor), unit),
      stated("water", litres, "L"),
      reagentInput(of),
      stated("purity", given.amount(`${what}_purity`), "%"),
    ],
    wouldChange: ["the demand", "the volume of water"],
  });
  const strength = given.maybe(`${what}_strength`);
  const volume =
    strength === null
      ? null
      : figure({
          ...{ name: `${what}_ml`, label: `of the ${what} solution a day`, unit: "mL", at: "demand" },
          spread: independently([grams.spread, strength], ([g = 0, perL = 1]) => (1000 * g) / perL),
          ...{
            formula: "grams over the solution's strength",
            inputs: [linkTo(grams), stated("strength", strength, "g/L")],
          },
        });
  const { lastingMgPerL } = doseEffect(of, grams.spread.central, purity.central, litres.central);
  return { of, grams, volume, lastingMgPerL };
}

function work(given: Given): SumAnswer | SumRefusal {
  for (const name of ["alkalinity_purity", "calcium_purity"])
    if (purityOf(given, name).low <= 0) return refusal(["A purity of nought holds no salt."], name);
  const parts = (["alkalinity", "calcium"] as const).flatMap((what) => partOf(given, what) ?? []);
  const [first, second] = parts;
  if (first === undefined)
    return refusal(["Enter what the tank takes a day, of alkalinity or of calcium."], "alkalinity_a_day");
  const water = waterOf(given.amount("temperature").central, given.amount("salinity").central);
  const left = parts.reduce((sum, part) => sum + part.lastingMgPerL, 0);
  const doses = parts.flatMap(({ grams, volume }) => [grams, ...(volume === null ? [] : [volume])]);
  const year = figure({
    ...{
      name: "salinity_a_year",
      label: "salinity left behind in a year, were no water changed",
      unit: "psu",
      at: "demand",
    },
    spread: independently(
      parts.map(({ grams }) => grams.spread),
      (grams) => {
        const share = grams.reduce((sum, g, i) => {
          const central = parts[i]?.grams.spread.central ?? 0;
          return sum + (central === 0 ? 0 : (g / central) * (parts[i]?.lastingMgPerL ?? 0));
        }, 0);
        return DAYS_A_YEAR * salinityRise(share, water);
      },
    ),
    formula: "sodium, chloride, sulfate and magnesium of a day, 365 times, over the density of the water",
    ...{ inputs: parts.map(({ grams }) => linkTo(grams)), sources: ["millero-2008", "iupac-weights"] },
    wouldChange: ["changing water", "another salt"],
  });
  const alkalinity = given.maybe("alkalinity_a_day");
  const expected =
    alkalinity === null
      ? []
      : [
          figure({
            ...{
              name: "calcium_expected",
              label: "calcium that goes with that alkalinity",
              unit: "mg/L",
              at: "demand",
            },
            spread: times(alkalinity, CALCIUM_PER_MEQ),
            formula: "an atom of calcium for two equivalents, as chalk is made of",
            ...{
              inputs: [stated("alkalinity taken a day", times(alkalinity, DKH), "dKH")],
              sources: ["iupac-weights"],
            },
          }),
        ];
  return {
    kind: "answer",
    lead: [
      "Dose ",
      middle(first.grams),
      ` of ${first.of.label}`,
      ...(second === undefined ? [] : [" and ", middle(second.grams), ` of ${second.of.label}`]),
      " a day.",
    ],
    rows: [...doses, ...expected, year].map((one) => row(one)),
    tables: [],
    cautions: [...cautionsOf(parts.map(({ of }) => of)), ...tooFast(given)],
    notes: [
      ...balance(given),
      ...(left > 0
        ? ["Changing water carries that salt out; topping up does not. Look at the salinity every week."]
        : []),
      ...(parts.some(({ of }) => of.id === "calcium_hydroxide")
        ? [
            "Calcium hydroxide brings calcium and alkalinity at once: do not dose the same again as another salt.",
          ]
        : []),
      MIXED_NOTE,
      "Begin with half, test after three days, then go by the tests: common practice, no source.",
    ],
    wouldChange: ["A demand measured over more days, and the true volume of water."],
    figures: [...doses, ...expected, year],
  };
}

function tooFast(given: Given): readonly string[] {
  return (["alkalinity", "calcium"] as const).flatMap((what) => {
    const demand = given.maybe(`${what}_a_day`);
    const { factor, most, mostWords } = RAISED[what];
    return demand !== null && demand.central * factor > 2 * Number.parseFloat(most.text)
      ? [`So much ${what} a day goes in several portions. ${mostWords}`]
      : [];
  });
}

/** Where both are told: do they go together as chalk does? */
function balance(given: Given): readonly string[] {
  const [alkalinity, calcium] = [given.maybe("alkalinity_a_day"), given.maybe("calcium_a_day")];
  if (alkalinity === null || calcium === null) return [];
  const wanted = times(alkalinity, CALCIUM_PER_MEQ);
  if (calcium.high < 0.7 * wanted.low)
    return [
      "Alkalinity is taken faster than building takes it: nitrifying, or chalk falling out on heaters and pumps.",
    ];
  return calcium.low > 1.4 * wanted.high
    ? ["Calcium is taken faster than building takes it: test both again, that is rarely so."]
    : [];
}

const saltOf = (what: "alkalinity" | "calcium") =>
  reagentField(
    what,
    what === "alkalinity" ? "sodium_bicarbonate" : "calcium_chloride_2",
    `${what}_salt`,
    `Salt for ${what}`,
  );
const purity = (what: "alkalinity" | "calcium"): AmountField => ({
  ...PURITY,
  ...{ name: `${what}_purity`, label: `Purity of the salt for ${what}` },
});

export const DAILY_DOSE: Sum = {
  id: "daily-dose",
  group: "dosing",
  name: "Daily dose",
  question: "What do I dose a day to keep pace with what the tank takes?",
  fields: [
    WATER,
    ...[
      perDay("alkalinity", "0.4 dKH"),
      saltOf("alkalinity"),
      purity("alkalinity"),
      strengthField("alkalinity"),
    ],
    ...[perDay("calcium", "3 mg/L"), saltOf("calcium"), purity("calcium"), strengthField("calcium")],
    { ...SALINITY, empty: { text: "35 psu", how: "taken where nothing is said" } },
    { ...TEMPERATURE, empty: { text: "25 C", how: "taken where nothing is said" } },
  ],
  examples: [
    { water: "200 L", alkalinity_a_day: "0.5 dKH", calcium_a_day: "3.6 mg/L" },
    {
      ...{ water: "60 US gal", alkalinity_a_day: "0.8-1.2 dKH", alkalinity_salt: "sodium_carbonate" },
      ...{ alkalinity_strength: "100 g", calcium_a_day: "7 mg/L", calcium_strength: "150 g" },
    },
    { water: "100 L", calcium_a_day: "5 mg/L", calcium_salt: "calcium_chloride", calcium_purity: "94 %" },
  ],
  work,
};
