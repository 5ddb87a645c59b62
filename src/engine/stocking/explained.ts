/** Why a plan keeps a kind that the forecast loses. */
import { ALIVE_RUNS, type KindCheck } from "./check.ts";
import type { FedByHand } from "./plan-shape.ts";

/** A kind that the plan keeps although fewer than 15 of 20 runs have it alive, with the reason. */
export function explained(kind: KindCheck, fedByHand: readonly FedByHand[]): string | null {
  if (kind.aliveOf20 >= ALIVE_RUNS) return null;
  if (!kind.resident && fedByHand.some(({ animal }) => animal.id === kind.id)) {
    return "it lives on what you feed it by hand; the runs feed nobody";
  }
  if (kind.fedShare * 20 >= ALIVE_RUNS) {
    return `age alone would leave it in ${kind.agedOf20} of 20: so few animals are soon gone by chance`;
  }
  return kind.resident
    ? "it does not find enough here: feed it by hand, give some away, or expect to lose them"
    : "it may starve in the leaner runs: feed by hand if the glass stays bare";
}
