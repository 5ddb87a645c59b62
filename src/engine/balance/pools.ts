/**
 * What the balance keeps count of: pools inside the tank, and places outside it.
 * Every pool is in mg of its element in the whole tank; XA and XN are capacities in mg N a day.
 * A run's state is one flat array: pools first, then heads, reserve carbon and hazard of each kind of animal.
 */

export const POOLS = [
  "TAN", // total ammonia nitrogen
  "NO2", // nitrite
  "NO3", // nitrate
  "PO4", // phosphate
  "XA", // capacity of ammonia oxidisers, mg N/d
  "XN", // capacity of nitrite oxidisers, mg N/d
  "FG", // film on glass, mg C
  "FR", // film on rock, mg C
  "FS", // film on sand, mg C
  "FF", // filaments (hair algae) on rock, mg C
  "MA", // macroalgae in the refugium, mg C
  "WC", // uneaten feed
  "WN",
  "WP",
  "KC", // carrion
  "KN",
  "KP",
  "SC", // suspended detritus
  "SN",
  "SP",
  "DC", // detritus on open sand
  "DN",
  "DP",
  "QC", // detritus in crevices
  "QN",
  "QP",
  "RC", // refractory detritus
  "RN",
  "RP",
  "MC", // held in the mechanical filter
  "MN",
  "MP",
  "OC", // dissolved organic matter, labile
  "ON",
  "OP",
  "PSB", // phosphorus on the sorbent
  "PRK", // phosphorus on rock and sand
] as const;

export type Pool = (typeof POOLS)[number];
export const POOL_COUNT = POOLS.length;

export const TAN = 0;
export const NO2 = 1;
export const NO3 = 2;
export const PO4 = 3;
export const XA = 4;
export const XN = 5;
export const FG = 6;
export const FR = 7;
export const FS = 8;
export const FF = 9;
export const MA = 10;
/** First of three (C, N, P) for each stuff that holds all three elements. */
export const W = 11;
export const K = 14;
export const S = 17;
export const D = 20;
export const Q = 23;
export const R = 26;
export const M = 29;
export const O = 32;
export const PSB = 35;
export const PRK = 36;

/** Index of a pool by its name. */
export const POOL_INDEX: Readonly<Record<Pool, number>> = Object.fromEntries(
  POOLS.map((pool, index) => [pool, index]),
) as Record<Pool, number>;

/** Places outside the tank: where the ledger says that matter came from or went to. */
export const OUTSIDE = [
  "feed",
  "fish",
  "co2",
  "n2",
  "fix",
  "skim",
  "inoc",
  "dead",
  "waterIn",
  "waterOut",
  "filterWaste",
  "harvest",
  "siphoned",
  "wiped",
  "sorbentOut",
  "stocked",
  "removed",
  "dosed",
] as const;

export type Outside = (typeof OUTSIDE)[number];
export type Element = "C" | "N" | "P";

/** Niches that the crew eats from, in the order of the feeding arrays. */
export const NICHES = [
  "film_glass",
  "film_rock",
  "film_sand",
  "hair_algae",
  "detritus_sand",
  "detritus_crevice",
  "uneaten_feed",
  "carrion",
] as const;
export type Niche = (typeof NICHES)[number];
export const NICHE_COUNT = NICHES.length;

/** Carbon pool that each niche is. */
export const NICHE_POOL: readonly number[] = [FG, FR, FS, FF, D, Q, W, K];

/** Position of a kind's heads, reserve and hazard in the state. */
export const headsAt = (species: number): number => POOL_COUNT + species;
export const reserveAt = (species: number, speciesCount: number): number =>
  POOL_COUNT + speciesCount + species;
export const hazardAt = (species: number, speciesCount: number): number =>
  POOL_COUNT + 2 * speciesCount + species;
export const stateSize = (speciesCount: number): number => POOL_COUNT + 3 * speciesCount;
