/** What must hold within one animal: sums, order, reach, temperatures; and, from check-keeping.ts, its keeping. */
import { SHELVES, type ShelfId } from "../../src/engine/types/shelf.ts";
import { keepingRules } from "./check-keeping.ts";
import type { Problem } from "./problem.ts";
import type { Rule } from "./rule.ts";
import type { AnimalFile } from "./schema.ts";

/** Reach, by place, that lets an animal eat from a shelf. Leftovers and carrion drift: a fish that swims takes them. */
const PLACES: Readonly<Partial<Record<ShelfId, readonly (keyof AnimalFile["reach"])[]>>> = {
  film_glass: ["glass"],
  film_rock: ["rock"],
  film_sand: ["sand_surface", "inside_sand"],
  hair_algae: ["rock", "glass"],
  bubble_algae: ["rock", "crevices"],
  detritus_sand: ["sand_surface", "inside_sand"],
  detritus_crevice: ["crevices"],
};

/** A reef tank runs near 25.5 °C: an animal that cannot stand 26 °C is a cool-water animal. */
const COOL_MAX_C = 26;

const dietSum: Rule = ({ diet }) => {
  const sum = [...SHELVES, "other" as const].reduce((total, shelf) => total + diet[shelf].value, 0);
  return Math.abs(sum - 1) > 1e-9 && ["diet", `shares sum to ${sum}, not 1`, "Correct a share."];
};

const reachable: Rule = ({ diet, reach }) => {
  for (const shelf of SHELVES) {
    const places = PLACES[shelf];
    if (diet[shelf].value > 0 && places?.every((place) => reach[place].value === 0))
      return [
        `diet.${shelf}`,
        "eaten, but out of reach",
        `Set its share to 0, or reach.${places[0]} above 0.`,
      ];
  }
  return;
};

const otherFoods: Rule = ({ diet }) =>
  diet.other.value > 0 !== (diet.other_foods !== null) && [
    "diet.other_foods",
    "must name other foods when diet.other is above 0, and only then",
    "Name them, or write null.",
  ];

const temperatureOrder: Rule = ({ water: { temperature: t } }) =>
  !(t.min <= t.optimum_low && t.optimum_low <= t.optimum_high && t.optimum_high <= t.max) && [
    "water.temperature",
    "min, optimum_low, optimum_high and max are out of order",
    "Write the smallest first.",
  ];

const coolFlag: Rule = ({ water, risks }) => {
  const cool = water.temperature.max < COOL_MAX_C;
  if (water.cool_water.value === cool && "cool_water" in risks === cool) return;
  return [
    "water.cool_water",
    `flag and risk must be ${cool ? "set" : "unset"} at a maximum of ${water.temperature.max} °C`,
    `An animal is cool-water when it cannot stand ${COOL_MAX_C} °C: correct the flag, the risk or the temperature.`,
  ];
};

const tissue: Rule = ({ body }) =>
  body.soft_tissue !== null &&
  body.soft_tissue.central > body.live_mass.central && [
    "body.soft_tissue",
    "heavier than the live animal",
    "Soft tissue is the body without shell.",
  ];

const carbonOrder: Rule = ({ carbon: { maintenance, break_even, intake } }) =>
  !(maintenance.value <= break_even.value && break_even.value <= intake.central) && [
    "carbon",
    "maintenance, break_even and central intake must not fall in this order",
    "Recompute them by the method of the note (facts/methods.md).",
  ];

/** The model turns the yearly loss into a rate by -ln(1 - loss): a loss of 1 would be an endless rate. */
const loss: Rule = ({ life: { annual_loss } }) =>
  annual_loss.high >= 1 && [
    "life.annual_loss",
    "reaches 1, which no rate gives",
    "Do not round it: 1 - exp(-1/lifespan) stays below 1.",
  ];

const RULES: readonly Rule[] = [
  dietSum,
  reachable,
  otherFoods,
  temperatureOrder,
  coolFlag,
  tissue,
  carbonOrder,
  loss,
  ...keepingRules,
];

export function checkAnimal(file: string, animal: AnimalFile): Problem[] {
  return RULES.flatMap((rule) => {
    const found = rule(animal);
    if (!found) return [];
    const [field, wrong, fix] = found;
    return [{ file, field, wrong, fix }];
  });
}
