import type { Spread } from "./estimate.ts";
import type { ShelfId } from "./shelf.ts";

export type AnimalGroup =
  | "snail"
  | "conch"
  | "hermit"
  | "crab"
  | "shrimp"
  | "star"
  | "urchin"
  | "cucumber"
  | "slug"
  | "pod"
  | "worm"
  | "fish";

/** Why the catalogue lists it. Only `crew` and `crew_with_caution` may be proposed. */
export type AnimalRole = "crew" | "crew_with_caution" | "hitchhiker" | "compatibility_only";

export type KeeperLevel = "first-tank" | "experienced" | "specialist";

export type Likelihood = "likely" | "possible";

export interface EaterLink {
  readonly id: string;
  readonly likelihood: Likelihood;
}

/** 0 cannot reach, 1 somewhat, 2 well. */
export type Reach = 0 | 1 | 2;

export interface AnimalNeeds {
  readonly emptyShellsPerAnimal: Spread | null;
  readonly shellKind: string | null;
  readonly sandDepthMmMin: number;
  readonly sandGrain: string | null;
  readonly sandAreaCm2Min: number;
  readonly rockCaves: boolean;
  readonly calciumAlkalinity: boolean;
  readonly lid: boolean;
  readonly swimmingRoom: boolean;
  readonly pumpGuard: boolean;
  readonly host: string | null;
}

export type AnimalRisk =
  | "may_starve"
  | "mis_sold"
  | "copper_sensitive"
  | "bulldozer"
  | "grows_too_large"
  | "falls_and_dies"
  | "escapes"
  | "jumps"
  | "cool_water"
  | "reproduces_in_tank"
  | "eats_coral_polyps"
  | "single_per_tank"
  | "eats_worms_pods"
  | "eats_snails"
  | "eats_hermits"
  | "eats_shrimp"
  | "eats_fish"
  | "eats_crabs"
  | "eats_urchins"
  | "eats_coralline"
  | "carries_objects"
  | "venomous_or_spiny"
  | "spine_hazard"
  | "toxic_if_eaten"
  | "releases_toxin_on_death"
  | "eggs_toxic"
  | "pump_intake_hazard"
  | "inks"
  | "needs_target_feeding"
  | "steals_food_from_corals"
  | "pair_only"
  | "territorial"
  | "undermines_rock"
  | "buries_corals";

/**
 * One animal of the catalogue: what it eats and needs, at 25 °C and its central mass.
 * Carbon figures are mg C per animal and day. Evidence of each figure: `basis`; sources by key.
 */
export interface Animal {
  readonly id: string;
  readonly commonName: string;
  readonly alsoSoldAs: readonly string[];
  readonly scientificName: string;
  readonly nameConfidence: string;
  readonly group: AnimalGroup;
  readonly role: AnimalRole;
  /** Share of the diet by shelf; with `dietOther` sums to 1. */
  readonly diet: Readonly<Record<ShelfId, number>>;
  readonly dietOther: number;
  readonly otherFoods: string | null;
  readonly adultSizeMm: Spread;
  readonly liveWetMassG: Spread;
  readonly softTissueG: Spread | null;
  readonly intakeMgCPerDay: Spread;
  readonly intakeMassExponent: number;
  /** Carbon respired. */
  readonly maintenanceMgCPerDay: number;
  readonly absorptionEfficiency: number;
  /** Intake at which it neither gains nor loses. */
  readonly breakEvenIntakeMgCPerDay: number;
  readonly starvationToleranceDays: Spread;
  readonly lifespanYears: Spread;
  readonly annualLossFraction: Spread;
  readonly temperatureC: {
    readonly min: number;
    readonly optimumLow: number;
    readonly optimumHigh: number;
    readonly max: number;
    readonly coolWaterSpecies: boolean;
  };
  readonly salinityPsu: {
    readonly low: number;
    readonly high: number;
    readonly sensitivity: "low" | "medium" | "high";
  };
  readonly minTankLitres: number;
  readonly minTankAgeDays: number;
  readonly minTankAgeReason: string;
  readonly spacingLitresPerAnimal: Spread;
  readonly phaseHint: string;
  readonly reach: {
    readonly glass: Reach;
    readonly rock: Reach;
    readonly crevices: Reach;
    readonly sandSurface: Reach;
    readonly insideSand: Reach;
  };
  readonly active: string;
  readonly canRightItself: "yes" | "poorly" | "no" | "disputed" | "not-applicable";
  readonly needs: AnimalNeeds;
  readonly risks: readonly AnimalRisk[];
  readonly keeperLevel: KeeperLevel;
  /** Social rule in words, and as numbers: smallest group to buy, most a tank can hold (null: no such limit). */
  readonly social: string;
  readonly groupMin: number;
  readonly maxPerTank: number | null;
  readonly predatorsOfIt: readonly EaterLink[];
  readonly preysOn: readonly EaterLink[];
  /** Scores 0 to 3. */
  readonly services: {
    readonly filmScraping: number;
    readonly hairAlgaeRemoval: number;
    readonly bubbleAlgaeRemoval: number;
    readonly detritusStirring: number;
    readonly sandTurning: number;
    readonly leftoverAndCarrionRemoval: number;
  };
  readonly sideEffects: { readonly bulldozing: number; readonly sandOnCorals: number };
  readonly supplementalFood: string | null;
  /** 1 cheap to 4 dear, relative only. */
  readonly priceBand: 1 | 2 | 3 | 4;
  /** Sentences that begin "Only if", "Only with" or "Only where". */
  readonly onlyIf: readonly string[];
  /** Why trade or local law may restrict it ("check"), or null. */
  readonly lawCheck: string | null;
  readonly notes: string;
  /** Field → how it is known (read, computed, memory, with words). */
  readonly basis: Readonly<Record<string, string>>;
  /** Keys of facts/sources.yaml. */
  readonly sources: readonly string[];
}
