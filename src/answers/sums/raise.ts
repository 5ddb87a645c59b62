/**
 * The mass of a pure salt that brings alkalinity, calcium or magnesium to a target, split into days within the most that a
 * day may change, with what it does to pH and salinity. One sum for each of the three.
 */
import type { Amount } from "../../contract/quantity/outcome.ts";
import { carbonateFrom } from "../../engine/seawater/carbonate.ts";
import { perKilogram } from "../../engine/seawater/composition.ts";
import {
  type DoseEffect,
  doseEffect,
  doseFor,
  phAfter,
  type Raised,
  salinityRise,
  stepsOf,
} from "../../engine/seawater/dosing.ts";
import { totalToNbs } from "../../engine/seawater/ph-scale.ts";
import type { Reagent, ReagentId } from "../../engine/seawater/reagents.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { exact } from "../../engine/types/link.ts";
import { phTotal } from "../../engine/units/quantity.ts";
import type { Sentence } from "../sentence.ts";
import { CARBONATE_SOURCES } from "./carbonate.ts";
import {
  cautionsOf,
  MIXED_NOTE,
  PURITY,
  purityInput,
  purityOf,
  RAISED,
  reagentField,
  reagentInput,
  reagentOf,
} from "./dose-fields.ts";
import { figuresOf, linkTo, middle, refusal, row, stated, times } from "./parts.ts";
import { independently } from "./spread.ts";
import type { AmountField, Given, Sum, SumAnswer, SumRefusal } from "./sum.ts";
import { PH, SALINITY, TEMPERATURE, WATER } from "./tank-fields.ts";
import {
  ALKALINITY,
  CALCIUM,
  MAGNESIUM,
  onTotal,
  PH_SCALE,
  phRead,
  testedAlkalinity,
  testedCalcium,
  testedMagnesium,
  waterOf,
} from "./water-fields.ts";

const FIELD: Readonly<Record<Raised, AmountField>> = {
  ...{ alkalinity: ALKALINITY, calcium: CALCIUM, magnesium: MAGNESIUM },
};
const USUAL: Readonly<Record<Raised, ReagentId | null>> = {
  ...{ alkalinity: "sodium_bicarbonate", calcium: null, magnesium: null },
};
/** What is there now, as sure as its test. */
const TESTED: Readonly<Record<Raised, (amount: Amount) => Amount>> = {
  ...{ alkalinity: testedAlkalinity, calcium: testedCalcium, magnesium: testedMagnesium },
};
/** Days of a plan that are listed; a longer one is cut, and says so. */
const LISTED_DAYS = 14;
/** A portion should not lift pH by more at once; judgement, from what a day and night do to a reef tank. */
const PH_STEP = 0.1;
const MOST_PORTIONS = 24;
const HIGH_PH_NBS = 8.6;

function raiseSum(what: Raised, examples: Sum["examples"]): Sum {
  const rule = RAISED[what];
  const id = `raise-${what}`;
  const figure = figuresOf(id);
  const { fromTank, ...bare } = FIELD[what];
  const fields: Sum["fields"] = [
    reagentField(what, USUAL[what]),
    PURITY,
    WATER,
    {
      ...bare,
      name: "now",
      label: `${FIELD[what].label} now`,
      ...(fromTank === undefined ? {} : { fromTank }),
    },
    { ...bare, name: "target", label: `${FIELD[what].label} wanted` },
    {
      ...bare,
      name: "most_a_day",
      label: "Most a day",
      hint: rule.mostWords,
      empty: rule.most,
      read: rule.readChange,
      example: rule.most.text,
    },
    ...(what === "alkalinity"
      ? [
          { ...PH, label: "pH now", hint: "For what the dose does to pH.", empty: "optional" } as const,
          PH_SCALE,
        ]
      : []),
    { ...SALINITY, empty: { text: "35 psu", how: "taken where nothing is said" } },
    { ...TEMPERATURE, empty: { text: "25 C", how: "taken where nothing is said" } },
  ];
  return {
    ...{ id, group: "dosing", name: `Raise ${what}`, fields, examples },
    question: `How much salt brings ${what} where I want it, over how many days?`,
    work: (given) => work(given, what, figure),
  };
}

interface Dose {
  readonly of: Reagent;
  readonly purity: Spread;
  readonly litres: Spread;
  readonly rise: Spread;
  /** All of it, in grams. */
  readonly whole: Spread;
  readonly days: number;
}

function work(given: Given, what: Raised, figure: ReturnType<typeof figuresOf>): SumAnswer | SumRefusal {
  const rule = RAISED[what];
  const [typed, target, most, litres] = ["now", "target", "most_a_day", "water"].map((name) =>
    given.amount(name),
  ) as [Amount, Amount, Amount, Amount];
  const now = TESTED[what](typed);
  if (target.central <= now.central)
    return refusal(
      [`There is nothing to add: ${what} is at its target or above. Water changes bring it down.`],
      "target",
    );
  if (most.central <= 0) return refusal(["A day must be allowed some change."], "most_a_day");
  const of = reagentOf(given);
  const purity = purityOf(given);
  if (purity.low <= 0) return refusal(["A purity of nought holds no salt."], "purity");
  const dose: Dose = {
    ...{ of, purity, litres, days: stepsOf(target.central - now.central, most.central).length },
    rise: independently([now, target], ([from = 0, to = 0]) => to - from),
    whole: independently([now, target, purity, litres], ([from = 0, to = 0, share = 1, l = 1]) =>
      doseFor(of, what, Math.max(0, to - from), share, l),
    ),
  };
  const told = (value: Spread) => times(value, rule.factor);
  const inputs = [
    stated(`${what} now`, told(now), rule.unit),
    stated(`${what} wanted`, told(target), rule.unit),
    stated("water", litres, "L"),
    reagentInput(of),
    purityInput(given),
  ];
  const whole = figure({
    ...{ name: "whole", label: `${of.label} in all`, unit: "g", at: "reagents", spread: floored(dose.whole) },
    formula: "litres times the rise, times molar mass over what a mole brings, over purity",
    ...{ inputs, sources: ["iupac-weights"], wouldChange: ["the test", "the volume of water"] },
  });
  const days = figure({
    ...{ name: "days", label: "days", unit: "1", at: "reagents", spread: exact(dose.days) },
    formula: "the rise over the most that a day may change, rounded up",
    inputs: [stated("rise", told(dose.rise), rule.unit), stated("most a day", told(most), rule.unit)],
  });
  const step = figure({
    ...{
      name: "step",
      label: "a day",
      unit: "g",
      at: "reagents",
      spread: times(whole.spread, 1 / dose.days),
    },
    ...{ formula: "all of it over the days", inputs: [linkTo(whole), linkTo(days)] },
  });
  const levels = levelsOf(figure, dose, {
    now: told(now).central,
    unit: rule.unit,
    step,
    factor: rule.factor,
  });
  const effect = doseEffect(of, dose.whole.central, purity.central, litres.central);
  const sides = [...saltFigures(figure, effect, given, whole), ...phFigures(figure, dose, given, now)];
  const portions = sides.find(({ id }) => id.endsWith(".portions"))?.spread.central ?? 1;
  return {
    kind: "answer",
    lead: [
      "Add ",
      middle(step),
      ` of ${of.label.split(",")[0]} a day for `,
      middle(days),
      dose.days === 1 ? " day, " : " days, ",
      middle(whole),
      " in all.",
    ],
    rows: [whole, days, step, ...sides].map((one) => row(one)),
    tables: [
      {
        title: "Day by day",
        columns: ["Day", "Add", `${FIELD[what].label} after it`],
        rows: levels.map(({ day, level }): Sentence[] => [[String(day)], [middle(step)], [middle(level)]]),
      },
    ],
    cautions: [
      ...cautionsOf([of]),
      ...(told(target).central > rule.high
        ? [
            `${told(target).central.toPrecision(3)} ${rule.unit} is more than keepers hold (${rule.high}; common practice, no source).`,
          ]
        : []),
      ...highPh(sides),
    ],
    notes: [
      rule.mostWords,
      ...(portions > 1
        ? [
            `Each day's share goes in ${portions} portions, hours apart: no portion then moves pH by more than ${PH_STEP}.`,
          ]
        : []),
      ...(dose.days > LISTED_DAYS ? [`Listed are the first ${LISTED_DAYS} of ${dose.days} days.`] : []),
      ...saltyNote(sides),
      MIXED_NOTE,
      "What the tank takes meanwhile is not in it: test after the first day, and go by the test.",
    ],
    wouldChange: ["A second test now, and the true volume of water, would change it most."],
    figures: [whole, days, step, ...levels.map(({ level }) => level), ...sides],
  };
}

const floored = ({ low, central, high }: Spread): Spread => ({ low: Math.max(0, low), central, high });

interface Level {
  readonly now: number;
  readonly unit: string;
  readonly step: Figure;
  readonly factor: number;
}

/** Where it stands after each day, were nothing taken. */
function levelsOf(
  figure: ReturnType<typeof figuresOf>,
  { rise, days }: Dose,
  { now, unit, step, factor }: Level,
): readonly { readonly day: number; readonly level: Figure }[] {
  return Array.from({ length: Math.min(days, LISTED_DAYS) }, (_, i) => {
    const value = now + ((i + 1) * rise.central * factor) / days;
    const level = figure({
      ...{ name: `after_${i + 1}`, label: `after day ${i + 1}`, unit, at: "reagents", spread: exact(value) },
      ...{
        formula: "where it stands now and the days' shares of the rise",
        inputs: [linkTo(step)],
        sources: ["iupac-weights"],
      },
    });
    return { day: i + 1, level };
  });
}

/** Salt that comes with it, and what is left once animals have built their skeletons of it. */
function saltFigures(
  figure: ReturnType<typeof figuresOf>,
  effect: DoseEffect,
  given: Given,
  whole: Figure,
): readonly Figure[] {
  const water = waterOf(given.amount("temperature").central, given.amount("salinity").central);
  const ions = [
    ["sodium", effect.sodiumMgPerL],
    ["chloride", effect.chlorideMgPerL],
    ["sulfate", effect.sulfateMgPerL],
    ["calcium", effect.calciumMgPerL],
  ] as const;
  const reagent = reagentOf(given);
  return [
    figure({
      ...{ name: "salinity", label: "salinity rises by", unit: "psu", at: "reagents" },
      spread: exact(salinityRise(effect.saltMgPerL, water)),
      formula: "dissolved salt over the density of the water; other salts than the sea's conduct otherwise",
      ...{ inputs: [linkTo(whole)], sources: ["millero-2008"] },
    }),
    ...ions
      .filter(([name, mgPerL]) => mgPerL > 0 && !(name === "calcium" && reagent.equivalents === 0))
      .map(([name, mgPerL]) =>
        figure({
          ...{ name, label: `${name} comes along`, unit: "mg/L", at: "reagents", spread: exact(mgPerL) },
          ...{
            formula: "its mass in the formula over the water",
            inputs: [linkTo(whole)],
            sources: ["iupac-weights"],
          },
        }),
      ),
  ];
}

/** What one day's share does to pH; nothing where pH or alkalinity is not given. */
function phFigures(
  figure: ReturnType<typeof figuresOf>,
  { of, purity, litres, whole, days }: Dose,
  given: Given,
  now: Amount,
): readonly Figure[] {
  if (of.equivalents === 0 || given.maybe("ph") === null) return [];
  const read = phRead(given);
  const water = waterOf(given.amount("temperature").central, given.amount("salinity").central);
  const before = carbonateFrom(
    { alkalinity: perKilogram(now.central, water), ph: onTotal(read.ph.central, read.scale, water) },
    water,
  );
  const after = (parts: number) =>
    phAfter(before, doseEffect(of, whole.central / days / parts, purity.central, litres.central), water);
  const shown = (ph: number) =>
    read.scale === "total" ? ph : totalToNbs(phTotal(ph), water.temperature, water.salinity);
  const { atOnce, settled } = after(1);
  let portions = 1;
  while (portions < MOST_PORTIONS && Math.abs(after(portions).atOnce - before.ph) > PH_STEP) portions += 1;
  const inputs = [stated("pH now", read.ph, ""), stated("alkalinity now", now, "meq/L"), reagentInput(of)];
  return [
    figure({
      ...{ name: "ph_at_once", label: "pH after one day's share, at once", unit: "", at: "reagents" },
      spread: exact(shown(atOnce)),
      formula: "alkalinity and carbon of the dose added, no CO2 come or gone yet",
      ...{ inputs, sources: CARBONATE_SOURCES, wouldChange: ["another salt", "smaller portions"] },
    }),
    figure({
      ...{ name: "ph_settled", label: "pH after it, once CO2 is as before", unit: "", at: "reagents" },
      spread: exact(shown(settled)),
      ...{ formula: "the new alkalinity with the CO2 of before", inputs, sources: CARBONATE_SOURCES },
    }),
    figure({
      ...{ name: "portions", label: "portions a day, so that each moves pH by 0.1 at most", unit: "1" },
      ...{ at: "reagents", spread: exact(portions), formula: "the fewest equal parts that keep to it" },
      ...{ inputs, judged: true, wouldChange: ["another salt"] },
    }),
  ];
}

/** Psu that a dose may add before it is worth a word; judgement. */
const SALTY = 0.25;
function saltyNote(sides: readonly Figure[]): readonly string[] {
  const rise = sides.find(({ id }) => id.endsWith(".salinity"))?.spread.central ?? 0;
  return rise > SALTY
    ? [
        "So much salt moves the salinity: measure it afterwards, and change some water for fresh salt water of less.",
      ]
    : [];
}

function highPh(sides: readonly Figure[]): readonly string[] {
  const atOnce = sides.find(({ id }) => id.endsWith(".ph_at_once"))?.spread.central ?? 0;
  return atOnce > HIGH_PH_NBS
    ? [
        `One day's share at once would lift pH above ${HIGH_PH_NBS}, which animals don't bear for long: portions, or sodium bicarbonate.`,
      ]
    : [];
}

export const RAISE_SUMS: readonly Sum[] = [
  raiseSum("alkalinity", [
    {
      ...{ reagent: "sodium_bicarbonate", water: "200 L", now: "7 dKH", target: "8.5 dKH" },
      ...{ ph: "8.1", ph_scale: "nbs", salinity: "35 psu", temperature: "25 C" },
    },
    {
      reagent: "sodium_hydroxide",
      purity: "98 %",
      water: "50 US gal",
      now: "2.4 meq/L",
      target: "2.9 meq/L",
      ph: "8.0",
    },
    { reagent: "calcium_hydroxide", water: "100 L", now: "7 dKH", target: "8 dKH" },
  ]),
  raiseSum("calcium", [
    { reagent: "calcium_chloride_2", purity: "97 %", water: "200 L", now: "380 mg/L", target: "420 mg/L" },
    {
      reagent: "calcium_chloride",
      water: "60 US gal",
      now: "360-380 mg/L",
      target: "425 mg/L",
      most_a_day: "10 mg/L",
    },
  ]),
  raiseSum("magnesium", [
    {
      reagent: "magnesium_chloride_6",
      water: "200 L",
      now: "1150 mg/L",
      target: "1300 mg/L",
      salinity: "34 psu",
    },
    { reagent: "magnesium_sulfate_7", water: "100 L", now: "1200 mg/L", target: "1280 mg/L" },
  ]),
];
