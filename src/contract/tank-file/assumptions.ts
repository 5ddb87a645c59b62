/**
 * What is taken for true where nobody said: every default of a tank file, with the band that is honest about it.
 * Given for 113 L of water; `grows` says how it changes with the tank. docs/tank-file.md lists the same table.
 */
import type { Spread } from "../../engine/types/estimate.ts";
import { scaled, spread } from "./bands.ts";

const REFERENCE_L = 113;

export interface Assumption {
  readonly label: string;
  readonly at113L: Spread;
  readonly unit: string;
  /** With the volume, with the surfaces (volume to the power 2/3), or not at all. */
  readonly grows: "volume" | "surface" | "not";
  readonly why: string;
}

const row = (
  label: string,
  band: readonly [number, number, number],
  unit: string,
  grows: Assumption["grows"],
  why: string,
): Assumption => ({ label, at113L: spread(...band), unit, grows, why });

const HABIT = "common practice, no source";

/** Field of the facts → its assumption. */
export const ASSUMPTIONS = {
  ageDays: row("Age since first seawater", [7, 60, 400], "d", "not", HABIT),
  glassM2: row(
    "Lit glass",
    [0.5, 0.8, 1.2],
    "m2",
    "surface",
    "four walls of a box of this volume, less the parts above water or covered",
  ),
  rockKg: row("Rock", [3, 11, 22], "kg", "volume", "about 0.1 kg a litre; common practice, no source"),
  litRockM2: row(
    "Lit rock",
    [0.12, 0.4, 1],
    "m2",
    "surface",
    "0.04 m2 a kg of rock (nic.lit_rock_area), a guess from geometry",
  ),
  sandM2: row(
    "Open sand",
    [0, 0.25, 0.4],
    "m2",
    "surface",
    "three quarters of the floor; nought where the floor is bare",
  ),
  sandDepthMm: row("Sand depth", [0, 30, 80], "mm", "not", HABIT),
  parGlass: row(
    "Light at the glass",
    [20, 60, 150],
    "umol m-2 s-1",
    "not",
    "wall light of the supply table; common practice, no source",
  ),
  parRock: row("Light at the rock", [35, 100, 250], "umol m-2 s-1", "not", HABIT),
  parSand: row("Light at the sand", [30, 90, 220], "umol m-2 s-1", "not", HABIT),
  lightHours: row("Light", [6, 9, 12], "h a day", "not", HABIT),
  temperatureC: row("Temperature", [23.5, 25.5, 27.5], "C", "not", HABIT),
  salinityPsu: row("Salinity", [33.5, 35, 36], "psu", "not", HABIT),
  ph: row("pH", [7.9, 8.1, 8.3], "NBS scale", "not", HABIT),
  fishWetG: row("Fish", [0.5, 8, 40], "g wet", "volume", HABIT),
  feedGPerDay: row("Feed", [0.05, 0.2, 0.8], "g dry a day", "volume", HABIT),
  feedCMgPerG: row("Carbon in the feed", [380, 420, 460], "mg/g", "not", "dry pellet or flake"),
  feedNMgPerG: row(
    "Nitrogen in the feed",
    [61, 77, 90],
    "mg/g",
    "not",
    "dry pellet or flake (feed.pellet.protein)",
  ),
  feedPMgPerG: row(
    "Phosphorus in the feed",
    [8, 10.5, 18],
    "mg/g",
    "not",
    "between the 12 of feed.pellet.P and the 9 that feed.NtoP_mass gives",
  ),
  uneatenShare: row(
    "Share of the feed not eaten",
    [0.03, 0.08, 0.35],
    "of 1",
    "not",
    "between careful and overfed (feed.uneaten)",
  ),
  filterChangeDays: row(
    "Change of the mechanical filter",
    [3, 5, 14],
    "d",
    "not",
    "a sock or floss; say none where there is none",
  ),
  waterChangeFraction: row(
    "Share of water changed",
    [0.05, 0.1, 0.2],
    "of 1",
    "not",
    "exp.water_change_weekly",
  ),
  waterChangeEveryDays: row("Days between water changes", [5, 7, 28], "d", "not", HABIT),
  wipeGlassEveryDays: row("Days between wiping the glass", [3, 7, 21], "d", "not", HABIT),
  newWaterNo3NMgPerL: row(
    "Nitrate nitrogen in new water",
    [0, 0.1, 5],
    "mg/L as N",
    "not",
    "purified water and salt, tap water at the upper end",
  ),
  newWaterPo4PMgPerL: row(
    "Phosphate phosphorus in new water",
    [0, 0.005, 0.3],
    "mg/L as P",
    "not",
    "purified water and salt, tap water at the upper end",
  ),
} as const satisfies Readonly<Record<string, Assumption>>;

export type AssumedField = keyof typeof ASSUMPTIONS;

/** The band of an assumption in a tank of `waterL`. */
export function assumedBand(field: AssumedField, waterL: number): Spread {
  const { at113L, grows }: Assumption = ASSUMPTIONS[field];
  const size = waterL / REFERENCE_L;
  return scaled(at113L, grows === "volume" ? size : grows === "surface" ? size ** (2 / 3) : 1);
}

/** What a gram of each food holds, as fed (thawed where frozen), mg. Water and protein: docs/model/supply.md, feeds. */
export const FOODS = {
  dry_pellet: {
    label: "dry pellet",
    c: spread(380, 420, 460),
    n: spread(61, 77, 90),
    p: spread(8, 10.5, 18),
  },
  dry_flake: { label: "dry flake", c: spread(370, 410, 460), n: spread(55, 75, 90), p: spread(7, 10, 17) },
  frozen_artemia: {
    label: "frozen artemia",
    c: spread(28, 42, 60),
    n: spread(5, 8.5, 14),
    p: spread(0.6, 1.2, 2.2),
  },
  frozen_mysis: {
    label: "frozen mysis",
    c: spread(48, 67, 88),
    n: spread(11, 16, 22),
    p: spread(1, 1.9, 3.2),
  },
  seafood_mix: {
    label: "seafood mix",
    c: spread(60, 88, 115),
    n: spread(14, 21, 27),
    p: spread(1.4, 2.4, 3.6),
  },
  nori: { label: "nori", c: spread(330, 380, 420), n: spread(40, 54, 62), p: spread(3, 6, 8) },
} as const;

export type FoodKind = keyof typeof FOODS;

/** Share not eaten, by what is left after two minutes. @source supply table, feed.uneaten */
export const UNEATEN = {
  none: spread(0.003, 0.02, 0.05),
  some: spread(0.05, 0.12, 0.25),
  a_lot: spread(0.1, 0.25, 0.4),
} as const;

/** Daytime light at glass, rock and sand by a keeper's word for the lamp; common practice, no source. */
export const STRENGTH = {
  low: { glass: spread(10, 25, 60), rock: spread(20, 45, 90), sand: spread(15, 35, 80) },
  medium: { glass: spread(30, 60, 120), rock: spread(55, 100, 180), sand: spread(45, 90, 160) },
  high: { glass: spread(60, 120, 250), rock: spread(120, 220, 400), sand: spread(90, 170, 330) },
} as const;

/** Light elsewhere as a share of that measured at the rock; judgement (supply table, section 15). */
export const LIGHT_SHARE = {
  glass: spread(0.3, 0.6, 1),
  rock: spread(0.7, 1, 1.4),
  sand: spread(0.5, 0.9, 1.3),
} as const;

/** A fish of each size, g wet; common practice, no source. */
export const FISH_SIZE_G = {
  small: spread(1, 2.5, 6),
  medium: spread(5, 12, 30),
  large: spread(30, 80, 300),
} as const;

/** A fish of which nothing is known, g wet; common practice, no source. */
export const ANY_FISH_G = spread(1, 8, 60);

/** Food given to the crew by hand, where its weight was not said, g a day; common practice, no source. */
export const HAND_FED_G = spread(0.01, 0.05, 0.3);

/** A refugium of which nothing else is known. */
export const REFUGIUM = { lightHours: 12, mostG: 200 };

/** More doubt about a pH whose scale was not said. @source seawater notes, NBS pH and the total scale */
export const PH_SCALE_DOUBT = 0.05;

/** Weight in g of a fish of length L cm is this times L cubed: deep-bodied and slender fish at the ends. */
export const FISH_FORM = spread(0.009, 0.016, 0.028);

/** Dry feed a day for each gram of fish, g; common practice, no source. */
export const FEED_PER_FISH = spread(0.01, 0.025, 0.06);

export const NEW_WATER = {
  purified: { n: spread(0, 0.05, 0.3), p: spread(0, 0.004, 0.02) },
  conditioned: { n: spread(0.2, 3, 11), p: spread(0.01, 0.15, 1) },
  tap: { n: spread(0.2, 3, 11), p: spread(0.01, 0.15, 1) },
} as const;

/** How sure a single figure is, of instruments and kits that keepers have. @source supply table, section 12 */
export const READING_DOUBT = {
  temperature_c: 0.5,
  salinity_psu: 1,
  ph: 0.2,
  alkalinity_meq_per_l: 0.14,
  calcium_mg_per_l: 20,
  magnesium_mg_per_l: 60,
  tan_mg_n_per_l: 0.2,
  no2_mg_n_per_l: 0.03,
  no3_mg_n_per_l: 0.45,
  po4_mg_p_per_l: 0.01,
} as const;

/** Kits for nitrate miss by a share of what is there. @source supply table, section 12 */
export const NITRATE_SHARE_DOUBT = 0.35;
/** Mean of the phosphorus a gram of sorbent still takes at a tank's level, mg. @source exp.gfo_capacity_tank */
export const SORBENT_MG_P_PER_G = 4;
/** Carbon in a gram of wet macroalgae, mg: 12 % dry, 30 % of that carbon; from memory. */
export const MACROALGAE_MG_C_PER_G = 36;
