/**
 * Facts of the catalogue about one animal as figures: what a page shows of it, each with how it is known. They belong
 * to no tank, so they are made when asked for. Limits: numbers only; who eats whom is told in words.
 */
import type { Animal } from "../../engine/types/animal.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Confidence, Figure, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, linkTo } from "../../engine/types/link.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";

interface FactOfAnimal {
  readonly label: string;
  readonly unit: string;
  /** Null where the animal has no such number. */
  readonly of: (animal: Animal) => Spread | number | null;
  /** Field of the animal's `basis`; null where only its notes could say. */
  readonly basis: string | null;
  /** How it was worked out, or what it is. */
  readonly formula: string;
}

const PER_YEAR = "1/a";
const CARBON_A_DAY = "mg C/d";
const STATED = "as the catalogue states it";

const FACTS: Readonly<Record<string, FactOfAnimal>> = {
  intake: {
    ...{ label: "food one eats a day with plenty on offer, at 25 C", unit: CARBON_A_DAY },
    ...{ of: (a) => a.intakeMgCPerDay, basis: "intakeMgCPerDay" },
    formula: "what one eats at its middle weight and 25 C, by the method that the catalogue names",
  },
  break_even: {
    ...{ label: "food on which one keeps its weight, at 25 C", unit: CARBON_A_DAY },
    ...{ of: (a) => a.breakEvenIntakeMgCPerDay, basis: "breakEvenIntakeMgCPerDay" },
    formula: "carbon it respires / share of its food that it absorbs",
  },
  respired: {
    ...{ label: "carbon one respires a day, at 25 C", unit: CARBON_A_DAY },
    ...{ of: (a) => a.maintenanceMgCPerDay, basis: "maintenanceMgCPerDay" },
    formula: "respiration at its middle weight and 25 C, by the method that the catalogue names",
  },
  absorbed: {
    ...{ label: "share of its food that it absorbs", unit: "of 1" },
    ...{ of: (a) => a.absorptionEfficiency, basis: "absorptionEfficiency", formula: STATED },
  },
  without_food: {
    ...{ label: "days that a full reserve lasts without food", unit: "d" },
    ...{ of: (a) => a.starvationToleranceDays, basis: "starvationToleranceDays" },
    formula: "carbon in its reserve / carbon it respires a day, by the method that the catalogue names",
  },
  size: {
    ...{ label: "size of a grown one", unit: "mm", of: (a) => a.adultSizeMm },
    ...{ basis: "adultSizeMm", formula: STATED },
  },
  weight: {
    ...{ label: "live weight", unit: "g", of: (a) => a.liveWetMassG },
    ...{ basis: "liveWetMassG", formula: STATED },
  },
  lifespan: {
    ...{ label: "how long it lives", unit: "a", of: (a) => a.lifespanYears },
    ...{ basis: "lifespanYears", formula: STATED },
  },
  yearly_loss: {
    ...{ label: "share that age takes in a year", unit: PER_YEAR, of: (a) => a.annualLossFraction },
    ...{ basis: "annualLossFraction", formula: "worked out from its lifespan" },
  },
  temperature: {
    ...{ label: "warmth it lives in", unit: "C", basis: "temperatureC", formula: STATED },
    of: ({ temperatureC: t }) => ({
      ...{ low: t.min, central: (t.optimumLow + t.optimumHigh) / 2, high: t.max },
    }),
  },
  salinity: {
    ...{ label: "salinity it lives in", unit: "psu", basis: "salinityPsu", formula: STATED },
    of: ({ salinityPsu: { low, high } }) => ({ low, central: (low + high) / 2, high }),
  },
  min_tank: {
    ...{ label: "least display it wants", unit: "L", of: (a) => a.minTankLitres },
    ...{ basis: "minTankLitres", formula: STATED },
  },
  min_tank_age: {
    ...{ label: "least age of a tank for it", unit: "d", of: (a) => a.minTankAgeDays },
    ...{ basis: "minTankAgeDays", formula: STATED },
  },
  spacing: {
    ...{ label: "water for each", unit: "L", of: (a) => a.spacingLitresPerAnimal },
    ...{ basis: "spacingLitresPerAnimal", formula: "habit of the trade, not measured" },
  },
  group_min: {
    ...{ label: "least group to bring", unit: "heads", of: (a) => a.groupMin },
    ...{ basis: "groupMin", formula: STATED },
  },
  max_per_tank: {
    ...{ label: "most that get on in one tank", unit: "heads", of: (a) => a.maxPerTank },
    ...{ basis: "maxPerTank", formula: STATED },
  },
  price_band: {
    ...{ label: "price band, 1 cheap to 4 dear", unit: "of 4", of: (a) => a.priceBand },
    ...{ basis: "priceBand", formula: "cheap or dear beside the others of the catalogue" },
  },
  sand_depth: {
    ...{ label: "least depth of sand", unit: "mm", basis: null, formula: STATED },
    of: (a) => (a.needs.sandDepthMmMin > 0 ? a.needs.sandDepthMmMin : null),
  },
  sand_area: {
    ...{ label: "least open sand", unit: "cm2", basis: null, formula: STATED },
    of: (a) => (a.needs.sandAreaCm2Min > 0 ? a.needs.sandAreaCm2Min : null),
  },
  empty_shells: {
    ...{ label: "empty shells to keep for each", unit: "shells", basis: null, formula: STATED },
    of: (a) => a.needs.emptyShellsPerAnimal,
  },
  eats_other: {
    ...{ label: "share of its food from outside the shelves", unit: "of 1", basis: "diet" },
    ...{ formula: "shares of its food that the catalogue states, which sum to one" },
    of: (a) => (a.dietOther > 0 ? a.dietOther : null),
  },
  ...Object.fromEntries(
    SHELVES.map((shelf): [string, FactOfAnimal] => [
      `eats_${shelf}`,
      {
        ...{ label: `share of its food from ${SHELF_NAME[shelf]}`, unit: "of 1", basis: "diet" },
        ...{ formula: "shares of its food that the catalogue states, which sum to one" },
        of: (a) => (a.diet[shelf] > 0 ? a.diet[shelf] : null),
      },
    ]),
  ),
};

/** Facts of an animal that have a figure. */
export const factsShown = (animal: Animal): string[] =>
  Object.keys(FACTS).filter((fact) => FACTS[fact]!.of(animal) !== null);

/** How sure a fact of the catalogue is, by what its basis begins with. */
export function confidenceOfBasis(basis: string | undefined): Confidence {
  if (basis?.startsWith("read") === true) return "read";
  return basis?.startsWith("computed") === true ? "computed" : "judgement";
}

export function animalFigure(animal: Animal, fact: string): Figure | null {
  const told = FACTS[fact];
  const value = told?.of(animal) ?? null;
  if (told === undefined || value === null) return null;
  const { label, unit, basis, formula } = told;
  const known = basis === null ? undefined : animal.basis[basis];
  return {
    id: figureId.animal(animal.id, fact),
    label: `${animal.commonName}: ${label}`,
    spread: typeof value === "number" ? exact(value) : { ...value },
    unit,
    working: {
      formulaKey: "stocking.md#facts-of-an-animal",
      formula,
      inputs: [
        { label: "how it is known", value: known ?? "stated, its source not told", origin: "stated" },
        ...partsOf(animal, fact),
      ],
      parameters: [],
      animals: [animal.id],
      confidence: confidenceOfBasis(known),
      wouldChange: WOULD_CHANGE[fact] ?? ["a source that measured it", "your own count of this kind"],
    },
  };
}

/** Facts that another is worked out from. */
function partsOf(animal: Animal, fact: string): WorkingInput[] {
  const parts = fact === "break_even" ? ["respired", "absorbed"] : fact === "yearly_loss" ? ["lifespan"] : [];
  return parts.flatMap((part): WorkingInput[] => {
    const found = animalFigure(animal, part);
    return found === null ? [] : [linkTo(found, FACTS[part]!.label)];
  });
}

const WOULD_CHANGE: Readonly<Record<string, readonly string[]>> = {
  intake: ["the animal's size: those of one name differ several times in weight", "a feeding trial"],
  break_even: ["the animal's size: those of one name differ several times in weight", "a feeding trial"],
  respired: ["the animal's size: those of one name differ several times in weight", "warmth"],
  without_food: ["how well fed it arrives", "warmth"],
};
