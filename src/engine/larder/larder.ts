/**
 * The larder of a tank: every shelf's supply with its spread over the ensemble, on a given day.
 * Pessimistic is what at least 15 of 20 members reach.
 */
import { bandOf, quantile } from "../numeric/quantile.ts";
import type { Spread } from "../types/estimate.ts";
import { SHELVES, type ShelfId } from "../types/shelf.ts";
import type { Member } from "./members.ts";
import { type SupplyParts, type SupplyScene, supplyOf } from "./supply.ts";

/** Share of members that may fall short of the pessimistic supply: 5 of 20. */
const PESSIMISTIC_SHARE = 0.25;

export interface Shelf {
  readonly id: ShelfId;
  /** 90 % band and median, mg C/d. */
  readonly supply: Spread;
  /** What at least 15 of 20 members reach, mg C/d. */
  readonly pessimistic: number;
}

export interface Larder {
  readonly daysAhead: number;
  readonly shelves: Readonly<Record<ShelfId, Shelf>>;
  /** All shelves together, member by member: their bands do not add up to this. */
  readonly total: Spread;
  /** One member's parts each, for workings and cross-checks. */
  readonly parts: readonly SupplyParts[];
}

export function larderOf(members: readonly Member[], scene: SupplyScene): Larder {
  const parts = members.map((member) => supplyOf(member, scene));
  const shelves = Object.fromEntries(
    SHELVES.map((id): [ShelfId, Shelf] => {
      const sample = parts.map(({ supply }) => supply[id]);
      return [id, { id, supply: bandOf(sample), pessimistic: quantile(sample, PESSIMISTIC_SHARE) }];
    }),
  ) as Record<ShelfId, Shelf>;
  const totals = parts.map(({ supply }) => SHELVES.reduce((sum, id) => sum + supply[id], 0));
  return { daysAhead: scene.daysAhead, shelves, total: bandOf(totals), parts };
}
