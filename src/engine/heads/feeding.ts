/**
 * How far the shelves feed those that live there: each shelf shared out by what each kind wants of it. Of 1: all it
 * needs. The forecast, with reserves and competition, is ahead's; this is quick, and leans on what the larder says today.
 */
import { bandOf, quantile } from "../numeric/quantile.ts";
import { isCrew } from "../stocking/waves.ts";
import type { Animal } from "../types/animal.ts";
import type { Spread } from "../types/estimate.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";

/** What the tank grows, in each run of the ensemble, mg C a day. */
export type SupplyRuns = readonly Readonly<Record<ShelfId, number>>[];

export interface FedKind {
  readonly animal: Animal;
  readonly heads: number;
  /** What all its heads need to keep their weight, mg C a day. */
  readonly needMgC: number;
  /** Share of that which the shelves give. */
  readonly fed: Spread;
  /** Of twenty runs, how many leave it short: under four fifths of its need. */
  readonly shortOf20: number;
  /** Shelf that it misses most of. */
  readonly scarcest: ShelfId | null;
}

/** Below this share a kind is short. Judgement: food of one's own choice shifts by about as much. */
export const SHORT_SHARE = 0.8;

export interface Fed {
  readonly kinds: readonly FedKind[];
  /** What all want of a shelf, mg C a day. */
  readonly wanted: Readonly<Record<ShelfId, number>>;
}

/** @param handFedMgC food given by hand to the crew, mg C a day: it goes to those that lack most */
export function feedingOf(
  crew: readonly { readonly animal: Animal; readonly heads: number }[],
  supply: SupplyRuns,
  warmth: number,
  handFedMgC: number,
): Fed {
  const eaters = crew
    .filter(({ animal, heads }) => heads > 0 && isCrew(animal))
    .map((one) => ({ ...one, needMgC: one.heads * one.animal.breakEvenIntakeMgCPerDay * warmth }));
  const wanted = Object.fromEntries(
    SHELVES.map((shelf) => [
      shelf,
      eaters.reduce((sum, { animal, needMgC }) => sum + needMgC * animal.diet[shelf], 0),
    ]),
  ) as Record<ShelfId, number>;
  const shares = supply.map((run) => {
    const given = eaters.map(({ animal, needMgC }) => {
      const share = SHELVES.reduce(
        (sum, shelf) => sum + animal.diet[shelf] * coverOf(run[shelf], wanted[shelf]),
        animal.dietOther,
      );
      return { share, lacks: needMgC * (1 - share) };
    });
    const lacking = given.reduce((sum, { lacks }) => sum + lacks, 0);
    const byHand = lacking > 0 ? Math.min(1, handFedMgC / lacking) : 0;
    return given.map(({ share }) => share + (1 - share) * byHand);
  });
  const kinds = eaters.map(({ animal, heads, needMgC }, i): FedKind => {
    const runs = shares.map((run) => run[i]!);
    const short = runs.filter((share) => share < SHORT_SHARE).length / Math.max(1, runs.length);
    const missing = SHELVES.map((shelf) => {
      const middle = quantile(
        supply.map((run) => coverOf(run[shelf], wanted[shelf])),
        0.5,
      );
      return { shelf, lacks: animal.diet[shelf] * (1 - middle) };
    }).reduce((most, one) => (one.lacks > most.lacks ? one : most));
    return {
      ...{ animal, heads, needMgC, fed: bandOf(runs), shortOf20: Math.round(20 * short) },
      scarcest: missing.lacks > 0.02 ? missing.shelf : null,
    };
  });
  return { kinds, wanted };
}

const coverOf = (supply: number, wanted: number): number => (wanted <= 0 ? 1 : Math.min(1, supply / wanted));
