/**
 * Who lives there already, judged by the same rules as newcomers: kept animals are not bought, so what stands against
 * buying is left out, and what stands against keeping is a warning. No advice to take anybody out: that is the keeper's.
 */
import type { Animal } from "../types/animal.ts";
import { figureId } from "../types/figure-id.ts";
import type { TankFacts } from "../types/tank.ts";
import { type Company, type Reason, type ReasonCode, suitabilityOf } from "./suitability.ts";

export interface Resident {
  readonly animal: Animal;
  readonly heads: number;
  /** What stands against keeping it here; empty where nothing does. */
  readonly warnings: readonly Reason[];
}

/** Reasons against buying, or told once for the whole tank. */
const OF_BUYING: ReadonlySet<ReasonCode> = new Set([
  "role",
  "excluded",
  "stock_list",
  "price",
  "same_kind",
  "toxin",
  "medicine",
  "trouble",
]);

/** Each kind of the catalogue that lives in the tank, in the order of the catalogue's rows there. */
export function residentsOf(facts: TankFacts, company: readonly Company[]): Resident[] {
  const heads = new Map<Animal, number>();
  for (const { animal, count, planned } of company) {
    if (!planned) heads.set(animal, (heads.get(animal) ?? 0) + count);
  }
  return [...heads].map(([animal, count]) => ({
    animal,
    heads: count,
    warnings: [
      ...keepingReasons(animal, facts, company),
      ...(animal.maxPerTank !== null && count > animal.maxPerTank ? [crowded(animal, count)] : []),
    ],
  }));
}

/** What stands against keeping a kind that lives there, today. */
const keepingReasons = (animal: Animal, facts: TankFacts, company: readonly Company[]): Reason[] =>
  suitabilityOf(animal, { facts, company, daysAhead: 0 }).reasons.filter(({ code }) => !OF_BUYING.has(code));

const crowded = ({ id, maxPerTank }: Animal, count: number): Reason => ({
  code: "same_kind",
  text: `The tank holds ${count}; more than ${maxPerTank} do not get on.`,
  until: `once no more than ${maxPerTank} live here`,
  figure: figureId.animal(id, "max_per_tank"),
});
