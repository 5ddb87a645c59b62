/**
 * What the plan trades against what: heads, kinds, food left uneaten, services missing. The unit is our own and
 * relative: one is about what a first animal of a further kind is worth avoiding. Judgement; docs/model/stocking.md
 * says what changes when they are halved and doubled.
 */
import type { ShelfId } from "../types/shelf.ts";

export interface Prices {
  /** For every head bought, and for every step of its price band. */
  readonly perHead: number;
  readonly perPriceBand: number;
  /** For every kind bought. */
  readonly perKind: number;
  /** For every mg C a day of a shelf's supply that nobody eats. */
  readonly uneaten: Readonly<Record<ShelfId, number>>;
  /** For a shelf that has fewer than two kinds on it, each missing. */
  readonly lonelyShelf: number;
  /** For a crew without an animal that finds carrion. */
  readonly noCarrionFinder: number;
  /** For every mg C a day fed by hand to keep an animal alive. */
  readonly handFed: number;
}

export const PRICES: Prices = {
  perHead: 0.35,
  perPriceBand: 0.25,
  perKind: 1,
  uneaten: {
    film_glass: 1,
    film_rock: 1,
    film_sand: 0.8,
    hair_algae: 1.5,
    bubble_algae: 1.5,
    detritus_sand: 0.8,
    detritus_crevice: 0.6,
    uneaten_feed: 1.2,
    carrion: 1.5,
  },
  lonelyShelf: 4,
  noCarrionFinder: 4,
  handFed: 6,
};
