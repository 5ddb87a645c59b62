/** Mouths: what the animals of a tank need from each shelf and could eat, mg C a day at the tank's warmth. */
import type { Animal } from "../types/animal.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";

export interface Mouth {
  readonly animal: Animal;
  readonly heads: number;
  /** Intake at which they neither gain nor lose. */
  readonly needMgC: number;
  /** Most they eat with plenty on offer. */
  readonly mostMgC: number;
  /** The need, split by the diet; food outside the larder is left out. */
  readonly byShelfMgC: Readonly<Record<ShelfId, number>>;
}

/** @param warmth how much faster animals burn than at 25 °C */
export function mouthsOf(residents: readonly { animal: Animal; heads: number }[], warmth: number): Mouth[] {
  return residents.map(({ animal, heads }) => {
    const needMgC = heads * animal.breakEvenIntakeMgCPerDay * warmth;
    return {
      animal,
      heads,
      needMgC,
      mostMgC: heads * animal.intakeMgCPerDay.high * warmth,
      byShelfMgC: Object.fromEntries(SHELVES.map((shelf) => [shelf, needMgC * animal.diet[shelf]])) as Record<
        ShelfId,
        number
      >,
    };
  });
}

/** What all mouths together need of one shelf, mg C a day. */
export const wantedFrom = (mouths: readonly Mouth[], shelf: ShelfId): number =>
  mouths.reduce((sum, mouth) => sum + mouth.byShelfMgC[shelf], 0);
