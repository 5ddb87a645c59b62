/**
 * The arithmetic of stocking rates, as range managers do it: leave a residue, take a share of the rest, divide by what
 * a head eats. Works in any unit of forage, as long as all its inputs share it and span the same time.
 * @source white-mcginty-b5036
 */
import type { Animal } from "../types/animal.ts";

export interface Growth {
  /** What grew: lb per acre and season on a range, mg C a day on a shelf. */
  readonly grown: number;
  /** What must be left of it: a range's threshold residue, the losses that keep a film's grazed crop standing. */
  readonly residue: number;
  /** Share of the rest that ends up eaten, 0 to 1; what is left is trampled, loosened, wiped away. */
  readonly usableShare: number;
}

/** What may be eaten, in the unit of `grown`; nothing where less grew than must stay. */
export function usableGrowth({ grown, residue, usableShare }: Growth): number {
  return Math.max(0, grown - residue) * usableShare;
}

/** Heads that the growth bears, not rounded. @param growth with what one head eats, in its unit and time */
export function stockingRate({
  demandPerHead,
  ...growth
}: Growth & { readonly demandPerHead: number }): number {
  return usableGrowth(growth) / demandPerHead;
}

/**
 * Whole heads of one kind that a shelf by itself would keep at their weight, if they could live on it alone.
 * @param supplyMgC of the shelf, mg C a day: residue and usable share are already taken off
 * @param warmth how much faster animals burn than at 25 °C
 */
export function headsShelfAloneFeeds(
  supplyMgC: number,
  { breakEvenIntakeMgCPerDay }: Pick<Animal, "breakEvenIntakeMgCPerDay">,
  warmth: number,
): number {
  const demandPerHead = breakEvenIntakeMgCPerDay * warmth;
  return Math.floor(stockingRate({ grown: supplyMgC, residue: 0, usableShare: 1, demandPerHead }));
}
