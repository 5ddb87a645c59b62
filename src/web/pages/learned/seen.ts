/**
 * As much of what a daybook has taught as is compared when it is learned again: each quantity's band, before the daybook
 * and after it. Made by the server for the page and by the browser's engine beside it. Pure.
 */
import type { LearnedOutput, LearnedQuantity } from "../../../answers/learned/output.ts";

export type SeenQuantity = Pick<
  LearnedQuantity,
  "id" | "label" | "unit" | "before" | "after" | "seen" | "figure"
>;

export interface LearnedSeen {
  readonly observations: number;
  readonly least: number;
  /** Null where nothing was learned. */
  readonly taught: {
    readonly from: string;
    readonly to: string;
    readonly quantities: readonly SeenQuantity[];
  } | null;
}

export const learnedSeen = ({ observations, least, taught }: LearnedOutput): LearnedSeen => ({
  ...{ observations, least },
  taught:
    taught === null
      ? null
      : {
          ...{ from: taught.from, to: taught.to },
          quantities: taught.quantities.map(({ id, label, unit, before, after, seen, figure }) => ({
            ...{ id, label, unit, before, after, seen, figure },
          })),
        },
});

/** A quantity that is held otherwise now; `was` is what the daybook had taught, or the band before any daybook. */
export interface Moved {
  readonly now: SeenQuantity;
  readonly was: SeenQuantity["after"];
}

/** Of the wider band's width, by how much an end or the middle must have moved to be told of. Judgement. */
const TOLD = 0.05;

/** `was`: null where nothing had been learned. */
export function movedBetween(was: LearnedSeen["taught"], now: readonly SeenQuantity[]): Moved[] {
  const before = new Map(was?.quantities.map((quantity) => [quantity.id, quantity.after]));
  return now
    .map((quantity) => ({ now: quantity, was: before.get(quantity.id) ?? quantity.before }))
    .map((moved) => ({ moved, by: apart(moved) }))
    .filter(({ by }) => by >= TOLD)
    .sort((a, b) => b.by - a.by)
    .map(({ moved }) => moved);
}

/** How far two bands differ, as a share of the wider one. */
function apart({ was, now: { after } }: Moved): number {
  const wider = Math.max(was.high - was.low, after.high - after.low);
  const most = Math.max(
    ...(["low", "central", "high"] as const).map((part) => Math.abs(after[part] - was[part])),
  );
  return wider > 0 ? most / wider : most > 0 ? 1 : 0;
}
