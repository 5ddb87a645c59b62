/** Portions as keepers take them, and what each holds. */
import { FOODS, type FoodKind } from "../../contract/tank-file/assumptions.ts";
import type { Spread } from "../../engine/types/estimate.ts";

interface Portion {
  readonly food: FoodKind;
  readonly words: string;
  /** As fed, g; common practice, no source. */
  readonly g: Spread;
}

const PINCH_G: Spread = { low: 0.05, central: 0.12, high: 0.3 };
const CUBE_G: Spread = { low: 2, central: 3.2, high: 5 };
/** A quarter of a sheet of about 21 by 19 cm, which weighs 2.5 to 3 g. */
const QUARTER_SHEET_G: Spread = { low: 0.55, central: 0.7, high: 0.85 };

export const PORTIONS: readonly Portion[] = [
  { food: "dry_pellet", words: "a pinch of dry pellet", g: PINCH_G },
  { food: "dry_flake", words: "a pinch of dry flake", g: PINCH_G },
  { food: "frozen_artemia", words: "a thawed cube of artemia", g: CUBE_G },
  { food: "frozen_mysis", words: "a thawed cube of mysis", g: CUBE_G },
  { food: "seafood_mix", words: "a thawed cube of seafood mix", g: CUBE_G },
  { food: "nori", words: "a quarter of a sheet of nori", g: QUARTER_SHEET_G },
];

/** Supply rows that a food's contents rest on; docs/model/feeding.md, "Foods". */
export const FOOD_PARAMETERS: Readonly<Record<FoodKind, readonly string[]>> = {
  dry_pellet: ["feed.pellet.protein", "feed.pellet.P"],
  dry_flake: ["feed.pellet.protein", "feed.pellet.P"],
  frozen_artemia: ["feed.artemia.N_wet", "feed.frozen.P_dm", "feed.artemia.moisture"],
  frozen_mysis: ["feed.mysid.N_wet", "feed.frozen.P_dm", "feed.mysid.moisture"],
  seafood_mix: ["feed.krill.protein_wet", "feed.frozen.P_dm"],
  nori: ["feed.nori.N", "feed.nori.P"],
};

export const FOOD_CHOICES = (Object.keys(FOODS) as FoodKind[]).map((text) => ({
  text,
  label: FOODS[text].label,
}));
