/** The rates of the head count, taken from the table of parameters (family `heads`). All judgement: docs/model/heads.md. */
import type { Spread } from "../types/estimate.ts";
import type { Parameter } from "../types/parameter.ts";

export const RATE_IDS = {
  seenOpen: "heads.seen_open",
  seenCrevice: "heads.seen_crevice",
  seenBuried: "heads.seen_buried",
  foodOdds: "heads.seen_food_odds",
  noTorchOdds: "heads.seen_no_torch_odds",
  offHoursOdds: "heads.seen_off_hours_odds",
  earlyOdds: "heads.seen_early_odds",
  seenAlike: "heads.seen_alike",
  arrivalLively: "heads.arrival_lively",
  arrivalUsual: "heads.arrival_usual",
  arrivalWeak: "heads.arrival_weak",
  badBagShare: "heads.bad_bag_share",
  badBagLoss: "heads.bad_bag_loss",
  found: "heads.found",
  foundLate: "heads.found_late",
  fearedOdds: "heads.feared_odds",
  ageMost: "heads.age_most",
  troubleSetsIn: "heads.trouble_sets_in",
  troubleEnds: "heads.trouble_ends",
  troubleLoss: "heads.trouble_loss",
  troubleShare: "heads.trouble_share",
} as const;

export type HeadRates = { readonly [Rate in keyof typeof RATE_IDS]: Spread };

/** @throws RangeError where the table lacks one */
export function headRates(table: ReadonlyMap<string, Parameter>): HeadRates {
  return Object.fromEntries(
    Object.entries(RATE_IDS).map(([rate, id]): [string, Spread] => {
      const parameter = table.get(id);
      if (parameter === undefined) throw new RangeError(`Cannot follow heads: no parameter "${id}"`);
      return [rate, parameter.spread];
    }),
  ) as HeadRates;
}
