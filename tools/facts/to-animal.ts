/** From the file of an animal to the `Animal` the engine uses. */
import type { Animal, AnimalRisk, EaterLink } from "../../src/engine/types/animal.ts";
import type { Spread } from "../../src/engine/types/estimate.ts";
import { SHELVES, type ShelfId } from "../../src/engine/types/shelf.ts";
import { EVIDENCE, type Provenance } from "./fact.ts";
import type { AnimalFile } from "./schema.ts";

const spread = ({ low, central, high }: Spread): Spread => ({ low, central, high });

const links = (table: AnimalFile["eaten_by"]): EaterLink[] =>
  Object.entries(table).map(([id, { value }]) => ({ id, likelihood: value }));

/** The values of facts that stand under one heading. */
function values<Key extends string, Value>(facts: Record<Key, { value: Value }>): Record<Key, Value> {
  const entries = Object.entries<{ value: Value }>(facts).map(([key, fact]) => [key, fact.value]);
  return Object.fromEntries(entries) as Record<Key, Value>;
}

const inWords = ({ evidence, note }: Provenance): string =>
  note === undefined ? evidence : `${evidence}: ${note}`;

/** How a group of facts is known: the weakest of its parts, with every note once. */
function weakest(facts: readonly Provenance[]): string {
  const worst = Math.max(...facts.map(({ evidence }) => EVIDENCE.indexOf(evidence)));
  const notes = [...new Set(facts.flatMap(({ note }) => (note === undefined ? [] : [note])))];
  return [EVIDENCE[worst], ...notes].join(": ");
}

/** Every source key of the file, sorted. */
function sourcesOf(value: unknown, found = new Set<string>()): string[] {
  if (typeof value === "object" && value !== null) {
    for (const [field, inner] of Object.entries(value)) {
      if (field === "source" && Array.isArray(inner)) for (const key of inner) found.add(key);
      else sourcesOf(inner, found);
    }
  }
  return [...found].sort();
}

function basisOf({ names, kind, diet, body, carbon, life, water, tank, company, ...rest }: AnimalFile) {
  const { other_foods: _, ...shares } = diet;
  const eaters = Object.values(rest.eaten_by);
  return {
    scientificName: inWords(names.scientific),
    diet: weakest(Object.values(shares)),
    adultSizeMm: inWords(body.adult_size),
    liveWetMassG: inWords(body.live_mass),
    ...(body.soft_tissue === null ? {} : { softTissueG: inWords(body.soft_tissue) }),
    intakeMgCPerDay: inWords(carbon.intake),
    intakeMassExponent: inWords(carbon.intake_mass_exponent),
    maintenanceMgCPerDay: inWords(carbon.maintenance),
    absorptionEfficiency: inWords(carbon.absorption),
    breakEvenIntakeMgCPerDay: inWords(carbon.break_even),
    starvationToleranceDays: inWords(carbon.starvation_tolerance),
    lifespanYears: inWords(life.lifespan),
    annualLossFraction: inWords(life.annual_loss),
    temperatureC: inWords(water.temperature),
    salinityPsu: inWords(water.salinity),
    minTankLitres: inWords(tank.min_volume),
    minTankAgeDays: inWords(tank.min_age),
    spacingLitresPerAnimal: inWords(tank.spacing),
    groupMin: inWords(company.group_min),
    maxPerTank: inWords(company.max_per_tank),
    ...(eaters.length === 0 ? {} : { predatorsOfIt: weakest(eaters) }),
    services: weakest(Object.values(rest.services)),
    priceBand: inWords(kind.price_band),
  };
}

function needsOf({ needs }: AnimalFile): Animal["needs"] {
  return {
    emptyShellsPerAnimal: needs.empty_shells === null ? null : spread(needs.empty_shells),
    shellKind: needs.shell_kind?.value ?? null,
    sandDepthMmMin: needs.sand_depth.value,
    sandGrain: needs.sand_grain?.value ?? null,
    sandAreaCm2Min: needs.sand_area.value,
    rockCaves: needs.rock_caves.value,
    calciumAlkalinity: needs.calcium_alkalinity.value,
    lid: needs.lid.value,
    swimmingRoom: needs.swimming_room.value,
    pumpGuard: needs.pump_guard.value,
    host: needs.host?.value ?? null,
  };
}

export function toAnimal(file: AnimalFile): Animal {
  const { names, kind, diet, body, carbon, life, water, tank, company, habits } = file;
  const reach = values(file.reach);
  const service = values(file.services);
  return {
    id: file.id,
    commonName: names.common.value,
    alsoSoldAs: names.also_sold_as.value,
    scientificName: names.scientific.value,
    nameConfidence: names.certainty.value,
    group: kind.group.value,
    role: kind.role.value,
    diet: Object.fromEntries(SHELVES.map((shelf) => [shelf, diet[shelf].value])) as Record<ShelfId, number>,
    dietOther: diet.other.value,
    otherFoods: diet.other_foods?.value ?? null,
    adultSizeMm: spread(body.adult_size),
    liveWetMassG: spread(body.live_mass),
    softTissueG: body.soft_tissue === null ? null : spread(body.soft_tissue),
    intakeMgCPerDay: spread(carbon.intake),
    intakeMassExponent: carbon.intake_mass_exponent.value,
    maintenanceMgCPerDay: carbon.maintenance.value,
    absorptionEfficiency: carbon.absorption.value,
    breakEvenIntakeMgCPerDay: carbon.break_even.value,
    starvationToleranceDays: spread(carbon.starvation_tolerance),
    lifespanYears: spread(life.lifespan),
    annualLossFraction: spread(life.annual_loss),
    temperatureC: {
      min: water.temperature.min,
      optimumLow: water.temperature.optimum_low,
      optimumHigh: water.temperature.optimum_high,
      max: water.temperature.max,
      coolWaterSpecies: water.cool_water.value,
    },
    salinityPsu: {
      low: water.salinity.low,
      high: water.salinity.high,
      sensitivity: water.salinity_sensitivity.value,
    },
    minTankLitres: tank.min_volume.value,
    minTankAgeDays: tank.min_age.value,
    minTankAgeReason: tank.min_age_reason.value,
    spacingLitresPerAnimal: spread(tank.spacing),
    phaseHint: tank.phase.value,
    reach: {
      glass: reach.glass,
      rock: reach.rock,
      crevices: reach.crevices,
      sandSurface: reach.sand_surface,
      insideSand: reach.inside_sand,
    },
    active: habits.active.value,
    canRightItself: habits.can_right_itself.value,
    needs: needsOf(file),
    risks: Object.keys(file.risks) as AnimalRisk[],
    keeperLevel: kind.keeper_level.value,
    social: company.social.value,
    groupMin: company.group_min.value,
    maxPerTank: company.max_per_tank.value,
    predatorsOfIt: links(file.eaten_by),
    preysOn: links(file.eats_animals),
    services: {
      filmScraping: service.film_scraping,
      hairAlgaeRemoval: service.hair_algae_removal,
      bubbleAlgaeRemoval: service.bubble_algae_removal,
      detritusStirring: service.detritus_stirring,
      sandTurning: service.sand_turning,
      leftoverAndCarrionRemoval: service.leftover_and_carrion_removal,
    },
    sideEffects: {
      bulldozing: file.side_effects.bulldozing.value,
      sandOnCorals: file.side_effects.sand_on_corals.value,
    },
    supplementalFood: file.hand_feeding?.value ?? null,
    priceBand: kind.price_band.value,
    onlyIf: file.only_if,
    lawCheck: file.law_check?.text ?? null,
    notes: file.notes.text,
    basis: basisOf(file),
    sources: sourcesOf(file),
  };
}
