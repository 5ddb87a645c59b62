/** Which shelf of the larder a growth of the daybook is; those that nobody is fed by are not in it. */
import type { Effect } from "./diagnosis.ts";
import type { ShelfId } from "./shelf.ts";

export const SHELF_OF_GROWTH: Readonly<Partial<Record<Effect, ShelfId>>> = {
  film_glass: "film_glass",
  film_rock: "film_rock",
  film_sand: "film_sand",
  diatoms: "film_sand",
  hair_algae: "hair_algae",
  bubble_algae: "bubble_algae",
  detritus_sand: "detritus_sand",
  detritus_crevice: "detritus_crevice",
  leftovers: "uneaten_feed",
};
