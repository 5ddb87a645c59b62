import type { KeeperLevel } from "./animal.ts";
import type { Estimate, Known, Spread } from "./estimate.ts";
import type { Learned } from "./learned.ts";

/** A reading in canonical unit. Below or above what the kit can tell: `censored`. */
export interface Reading {
  readonly quantity:
    | "tan_mg_n_per_l"
    | "no2_mg_n_per_l"
    | "no3_mg_n_per_l"
    | "po4_mg_p_per_l"
    | "salinity_psu"
    | "temperature_c"
    | "ph"
    | "alkalinity_meq_per_l"
    | "calcium_mg_per_l"
    | "magnesium_mg_per_l";
  readonly value: Spread;
  readonly censored: "below" | "above" | null;
  /** ISO date; null where nobody said: taken as today's. */
  readonly on: string | null;
}

/** How much of a described growth is seen. */
export type Cover = "none" | "trace" | "patches" | "covered";

export const GROWTHS = [
  "film_glass",
  "film_rock",
  "film_sand",
  "diatoms",
  "hair_algae",
  "bubble_algae",
  "cyanobacteria",
  "dinoflagellates",
  "detritus_sand",
  "detritus_crevice",
  "leftovers",
] as const;
export type Growth = (typeof GROWTHS)[number];

export interface AnimalCount {
  readonly id: string;
  readonly count: number;
  /** ISO date of arrival (present) or planned arrival (planned); null where unknown. */
  readonly on: string | null;
}

/** How the keeper's shop sells and sends; null where it was not said. */
export interface ShopTerms {
  /** Days from asking to coming. */
  readonly leadDays: number | null;
  readonly leastHeads: number | null;
  readonly packs: readonly { readonly animal: string; readonly heads: number }[];
  /** Air outside, C: colder or warmer than that, it sends nothing. */
  readonly holdsBelowC: number | null;
  readonly holdsAboveC: number | null;
}

/** A time in which the keeper is away from home: days of leaving and of coming back, ISO dates. */
export interface Absence {
  readonly from: string;
  readonly to: string;
  readonly fedBy: "nobody" | "sitter" | "feeder";
  /** Of a sitter: feeds on every so many days, not on the day of leaving unless daily. */
  readonly everyDays: number;
}

/** A tank as the engine sees it: every quantity in one unit, with its spread and where it comes from. */
export interface TankFacts {
  readonly name: string;
  /** The day the plan is made, ISO date. */
  readonly asOf: string;
  /** Water only: display, sump and rear chamber, less rock and sand. */
  readonly waterL: Estimate;
  /** Water of the display alone: what spacing and swimming room are judged by. */
  readonly displayL: Estimate;
  /** Days since it first held seawater; negative for a tank not yet filled. */
  readonly ageDays: Estimate;
  readonly rockStart: Known<"live" | "dry" | "mixed" | "none">;
  readonly glassM2: Estimate;
  readonly litRockM2: Estimate;
  readonly sandM2: Estimate;
  readonly rockKg: Estimate;
  readonly sandDepthMm: Estimate;
  readonly sandGrain: Known<"none" | "fine" | "medium" | "coarse" | "rubble" | "unknown">;
  /** Daytime light at the surfaces, µmol photons m-2 s-1. */
  readonly parGlass: Estimate;
  readonly parRock: Estimate;
  readonly parSand: Estimate;
  readonly lightHours: Estimate;
  readonly temperatureC: Estimate;
  readonly salinityPsu: Estimate;
  /** As read, on its own scale. */
  readonly ph: Estimate;
  readonly phScale: "nbs" | "total";
  /** Feed as fed, g a day, and what a gram of it holds. */
  readonly feedGPerDay: Estimate;
  readonly feedCMgPerG: Estimate;
  readonly feedNMgPerG: Estimate;
  readonly feedPMgPerG: Estimate;
  /** Share of the feed not eaten by fish, 0 to 1. */
  readonly uneatenShare: Estimate;
  /** Food given by hand to the crew (wafers, seaweed, target feeding), mg C a day. */
  readonly handFedMgCPerDay: Estimate;
  readonly fishWetG: Estimate;
  readonly filterChangeDays: number | null;
  readonly skimmer: Known<boolean>;
  /** Refugium: light share 0 to 1 and the most macroalgae it holds, mg C; null without one. */
  readonly refugium: { readonly light: number; readonly maxMgC: number } | null;
  readonly phosphateSorbentMgP: number | null;
  readonly waterChangeFraction: Estimate;
  readonly waterChangeEveryDays: Estimate;
  readonly wipeGlassEveryDays: Estimate;
  readonly newWaterNo3NMgPerL: Estimate;
  readonly newWaterPo4PMgPerL: Estimate;
  readonly sourceWater: Known<"tap" | "conditioned" | "purified">;
  readonly keeperLevel: Known<KeeperLevel>;
  readonly lid: Known<boolean>;
  readonly pumpGuards: Known<boolean>;
  readonly rockCaves: Known<boolean>;
  readonly rockSecured: Known<boolean>;
  readonly corals: Known<boolean>;
  /** Copper or a medicine in the water now, by active ingredient; empty where none. */
  readonly medicines: readonly string[];
  /** Something is dead, gasping or wrong now, in the keeper's words; null where nothing is. */
  readonly trouble: string | null;
  readonly sightings: Readonly<Partial<Record<Growth, Cover>>>;
  readonly readings: readonly Reading[];
  readonly present: readonly AnimalCount[];
  readonly planned: readonly AnimalCount[];
  /** Animals the catalogue does not know, as typed: they count for nothing, and the output says so. */
  readonly unknownAnimals: readonly string[];
  readonly wishes: readonly string[];
  readonly exclusions: readonly string[];
  /** Absent where nothing was said of a shop. */
  readonly shop?: ShopTerms;
  /** Absent where nobody said that they will be away, or are. */
  readonly absences?: readonly Absence[];
  /** Animal ids the shop has; null where any. */
  readonly stockList: readonly string[] | null;
  readonly priceBandMax: 1 | 2 | 3 | 4;
  /** Estimates that were assumed because nothing was said, by field name. */
  readonly assumed: readonly string[];
  /** What its daybook has taught; absent where nothing was learned. */
  readonly learned?: Learned;
}
