/** Animals as `animals --json` prints them. */
import { sources } from "../../catalogue/index.ts";
import type { AnimalsOutput } from "../../contract/output/animals.ts";
import type { Animal } from "../../engine/types/animal.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { RATION_MG_C } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { factsShown } from "../figures/animal-facts.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { cautionsOf } from "./cautions.ts";
import type { Fit } from "./fit.ts";

export function animalsOutputOf(
  rows: readonly { readonly animal: Animal; readonly fit: Fit | null }[],
  facts: TankFacts | null,
): AnimalsOutput {
  return {
    schema: "grazewell.animals/1",
    engine: ENGINE_VERSION,
    ration_mg_c: RATION_MG_C,
    tank: facts === null ? null : { name: facts.name, as_of: facts.asOf },
    animals: rows.map(({ animal, fit }) => animalJson(animal, fit)),
    statement: STATEMENT,
  };
}

function animalJson(animal: Animal, fit: Fit | null): AnimalsOutput["animals"][number] {
  return {
    id: animal.id,
    name: animal.commonName,
    also_sold_as: [...animal.alsoSoldAs],
    scientific_name: animal.scientificName,
    group: animal.group,
    role: animal.role,
    keeper_level: animal.keeperLevel,
    eats: { ...animal.diet },
    eats_other_share: animal.dietOther,
    eats_other: animal.otherFoods,
    intake_mg_c_per_day: { ...animal.intakeMgCPerDay },
    keeps_weight_on_mg_c_per_day: animal.breakEvenIntakeMgCPerDay,
    without_food_days: { ...animal.starvationToleranceDays },
    spacing_l_per_animal: { ...animal.spacingLitresPerAnimal },
    min_tank_l: animal.minTankLitres,
    min_tank_age_days: animal.minTankAgeDays,
    adult_size_mm: { ...animal.adultSizeMm },
    lifespan_years: { ...animal.lifespanYears },
    eaten_by: animal.predatorsOfIt.map(({ id, likelihood }) => ({ id, likelihood })),
    eats_animals: animal.preysOn.map(({ id, likelihood }) => ({ id, likelihood })),
    group_min: animal.groupMin,
    max_per_tank: animal.maxPerTank,
    only_if: [...animal.onlyIf],
    cautions: cautionsOf(animal),
    law_check: animal.lawCheck,
    notes: animal.notes,
    basis: { ...animal.basis },
    sources: animal.sources.map((key) => {
      const source = sources.get(key);
      return { key, title: source?.title ?? source?.about ?? "", opened: source?.opened ?? "none" };
    }),
    figures: Object.fromEntries(factsShown(animal).map((fact) => [fact, figureId.animal(animal.id, fact)])),
    fit: fit === null ? null : fitJson(animal.id, fit),
  };
}

function fitJson(id: string, fit: Fit): NonNullable<AnimalsOutput["animals"][number]["fit"]> {
  const { status, headsHere, planned, reasons, binding, notNeeded, aliveOf20, shortMgC } = fit;
  return {
    status,
    heads_here: headsHere,
    planned: planned.map((row) => ({ ...row, figure: figureId.waveCount(row.wave, id) })),
    reasons: reasons.map(({ code, text, until, figure }) => ({ code, text, until, figure: figure ?? null })),
    binding: binding === null ? null : { kind: binding.kind, text: binding.text, figure: binding.figure },
    not_needed: notNeeded,
    alive_of_20: aliveOf20,
    short_by_mg_c_per_day: shortMgC,
    figures: {
      heads_here: headsHere > 0 ? figureId.present(id) : null,
      alive: aliveOf20 === null ? null : figureId.checkAlive(id),
      short_by: shortMgC > 0 ? figureId.fedByHand(id) : null,
    },
  };
}
