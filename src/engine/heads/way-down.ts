/**
 * The way down: fewer mouths than live there could be fed. Food by hand, or fewer heads, in numbers; never into the wild.
 * Asked where a kind is short in most runs, or the glass has been bare for a week, or film comes back at half its pace.
 */
import type { Animal } from "../types/animal.ts";
import type { ShelfId } from "../types/shelf.ts";
import { type Fed, SHORT_SHARE } from "./feeding.ts";

export interface LessFood {
  readonly animal: Animal;
  readonly heads: number;
  readonly shelf: ShelfId | null;
  /** Share of its need that it gets, and of 20 runs those that leave it short. */
  readonly fedShare: number;
  readonly shortOf20: number;
  /** What it lacks, mg C a day: by hand. */
  readonly lacksMgC: number;
  /** Or so many fewer; 0 where one fewer would be all. */
  readonly fewer: number;
}

/** Runs of 20 that must leave a kind short before it is told on the larder's word alone. */
const TOLD_OF_20 = 15;
/** Food by hand under this is a crumb, as in the plan, mg C a day. */
const CRUMB_MG_C = 1;

export function lessFood(fed: Fed, filmGone: boolean): LessFood[] {
  return fed.kinds.flatMap((kind): LessFood[] => {
    const { animal, heads, needMgC, fed: share, shortOf20, scarcest } = kind;
    const ofFilm = animal.diet.film_glass;
    // Seen is seen: where the glass is bare, film on glass feeds nobody, whatever the larder reckons.
    const gone = filmGone && ofFilm >= 1 - SHORT_SHARE;
    const fedShare = gone ? Math.min(share.central, 1 - ofFilm) : share.central;
    const lacksMgC = needMgC * (1 - fedShare);
    if (lacksMgC < CRUMB_MG_C || (shortOf20 < TOLD_OF_20 && !gone)) return [];
    return [
      {
        ...{
          animal,
          heads,
          fedShare,
          shortOf20,
          lacksMgC,
        },
        shelf: gone ? "film_glass" : scarcest,
        fewer: Math.min(heads - 1, Math.max(0, Math.round(heads * (1 - fedShare)))),
      },
    ];
  });
}
