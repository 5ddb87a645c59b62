/** How soon a quantity's trend wants to be read: the greater the sooner. A danger goes before all that is well. */
import type { QuantityTrend } from "../../contract/output/trends.ts";

export function pressing({ danger, limits, usual, way, changes, latest }: QuantityTrend): number {
  const nearest = Math.max(0, ...limits.map(({ of_20, already_of_20 }) => (already_of_20 >= 8 ? 20 : of_20)));
  return (
    (danger?.stands === true ? 10_000 : 0) +
    (danger !== null ? 2000 : 0) +
    nearest * 40 +
    (usual !== null && usual.latest !== "within" ? 400 : 0) +
    changes.length * 20 +
    (way === "rising" || way === "falling" ? 100 : way === "not_enough" ? -200 : 0) -
    Math.min(100, latest.age_days)
  );
}
