/** What the contract asks of an animal catalogue: which animal a name means. */
import type { AnimalGroup, EaterLink } from "../../engine/types/animal.ts";
import type { Spread } from "../../engine/types/estimate.ts";

/** The part of a catalogue's animal that the reader uses. */
export interface FoundAnimal {
  readonly id: string;
  readonly commonName: string;
  readonly scientificName?: string;
  readonly group?: AnimalGroup;
  readonly liveWetMassG?: Spread;
  readonly adultSizeMm?: Spread;
  readonly preysOn?: readonly EaterLink[];
  readonly needs?: { readonly sandDepthMmMin: number };
}

type AnimalSearch =
  | { readonly kind: "one"; readonly animal: FoundAnimal }
  | { readonly kind: "several"; readonly animals: readonly FoundAnimal[] }
  | { readonly kind: "near"; readonly animals: readonly FoundAnimal[] }
  | { readonly kind: "none" };

export type FindAnimal = (name: string) => AnimalSearch;
