/** Kinds of crew ready to be run, the world of a member with them, and what a member stands as. */
import { type CrewSpecies, speciesFrom } from "../balance/species.ts";
import { type UnionisedShare, World } from "../balance/world.ts";
import type { Member } from "../larder/members.ts";
import { unionisedAmmoniaFraction } from "../seawater/ammonia.ts";
import type { Animal } from "../types/animal.ts";

export interface CrewKind {
  readonly animal: Animal;
  readonly species: CrewSpecies;
  /** Heads in the tank on the day of the plan. */
  readonly residents: number;
}

export const crewKind = (animal: Animal, residents: number): CrewKind => ({
  animal,
  species: speciesFrom(animal),
  residents,
});

/** The seawater layer's un-ionised share, kept within the range that its equation serves. */
export function unionisedShareOn(scale: "nbs" | "total"): UnionisedShare {
  return (temperatureC, salinityPsu, ph) =>
    unionisedAmmoniaFraction(clamp(temperatureC, 0, 40), clamp(salinityPsu, 0, 45), clamp(ph, 5, 10), scale);
}

/** A world for a member with the kinds that live there or will. */
export function worldOf(
  member: Member,
  kinds: readonly CrewKind[],
  scale: "nbs" | "total",
  mortality: "expected" | "drawn",
): World {
  return new World({
    inputs: member.inputs,
    parameters: member.parameters,
    species: kinds.map(({ species }) => species),
    unionisedShare: unionisedShareOn(scale),
    mortality,
  });
}

/** A member on the day of the plan: its state, and itself with the export that its readings show it to have. */
export interface Standing {
  readonly member: Member;
  readonly state: Float64Array;
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
