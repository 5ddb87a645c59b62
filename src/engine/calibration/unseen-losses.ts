/**
 * Deaths that nobody saw: of the heads on the keeper's list, how many live no longer, by the head counts. A forecast that
 * began with the list would begin with the dead. docs/model/calibration.md, "Heads".
 */
import type { CrewKind } from "../ahead/crew.ts";
import { headsOfKind } from "../heads/kind.ts";
import { cameTo, isFollowed, lifeOf, MOST_FOLLOWED } from "../heads/life.ts";
import type { HeadRates } from "../heads/rates.ts";
import type { TankRecord } from "../types/record.ts";
import type { TankFacts } from "../types/tank.ts";

/** Chances are kept to so much: they travel with the facts. */
const KEPT_TO = 1e-4;

/** By animal, the chance that none, one, two ... of the listed heads are gone; kinds not counted by the head have none. */
export function unseenLossesToday(
  facts: TankFacts,
  record: TankRecord,
  kinds: readonly CrewKind[],
  rates: HeadRates,
): Record<string, readonly number[]> {
  return Object.fromEntries(
    kinds.flatMap(({ animal, residents }): [string, readonly number[]][] => {
      if (residents <= 0 || !isFollowed(animal)) return [];
      const life = lifeOf(animal, facts, record, rates);
      if (cameTo(life) > MOST_FOLLOWED) return [];
      return [[animal.id, gone(headsOfKind(life, rates).living, residents)]];
    }),
  );
}

/** @param living chance of each number of living heads; more than are listed count as all of them */
function gone(living: readonly number[], listed: number): readonly number[] {
  const chances = Array.from({ length: listed + 1 }, () => 0);
  living.forEach((chance, alive) => {
    chances[Math.max(0, listed - alive)]! += chance;
  });
  const kept = chances.map((chance) => (chance < KEPT_TO ? 0 : chance));
  const all = kept.reduce((sum, chance) => sum + chance, 0);
  return kept.slice(0, kept.findLastIndex((chance) => chance > 0) + 1).map((chance) => chance / all);
}
