/** Groups of observations in words. */
import type { Group } from "../../engine/calibration/observed.ts";

export const GROUP_LABEL: Readonly<Record<Group, string>> = {
  tan: "ammonia",
  no2: "nitrite",
  no3: "nitrate",
  po4: "phosphate",
  film_glass: "film on glass",
  film_rock: "film on rock",
  film_sand: "film on sand",
  hair_algae: "hair algae",
  detritus_sand: "detritus on sand",
  film_back: "days to wipe",
  heads: "head counts",
};
