/** Who cannot share a tank with whom: one would surely eat the other. */
import type { Animal } from "../types/animal.ts";

/** Whether one of two different kinds is likely to eat the other. */
export function wouldEat(one: Animal, other: Animal): boolean {
  if (one.id === other.id) return false;
  const likely = (eater: Animal, eaten: Animal): boolean =>
    eater.preysOn.some(({ id, likelihood }) => id === eaten.id && likelihood === "likely") ||
    eaten.predatorsOfIt.some(({ id, likelihood }) => id === eater.id && likelihood === "likely");
  return likely(one, other) || likely(other, one);
}
