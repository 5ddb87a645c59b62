/** The nine shelves of the larder: one kind of food in one kind of place. Wire names, used everywhere. */
export const SHELVES = [
  "film_glass",
  "film_rock",
  "film_sand",
  "hair_algae",
  "bubble_algae",
  "detritus_sand",
  "detritus_crevice",
  "uneaten_feed",
  "carrion",
] as const;

export type ShelfId = (typeof SHELVES)[number];

/** mg C a day in one ration: about what one 22 mm trochus eats. */
export const RATION_MG_C = 10;

/** Plain name of each shelf, for sentences. */
export const SHELF_NAME: Readonly<Record<ShelfId, string>> = {
  film_glass: "film on glass",
  film_rock: "film on rock",
  film_sand: "film on sand",
  hair_algae: "hair algae",
  bubble_algae: "bubble algae",
  detritus_sand: "detritus on sand",
  detritus_crevice: "detritus in crevices",
  uneaten_feed: "leftovers",
  carrion: "carrion",
};
