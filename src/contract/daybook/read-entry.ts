/**
 * An entry as a keeper types it, at any door, to the entry as it is kept, or every doubt about it at once.
 * Field names are those of the body without `_text`: `animal`, `seen`, `count`, `observed`, `amount`.
 */
import type { Choice, Message } from "../quantity/outcome.ts";
import type { EntryBody, EntryKind } from "./kinds.ts";
import type { ReadingContext } from "./read-reading.ts";

/** Texts by field, as typed; an absent one is an empty field. `trait.ID`: "yes", "no". */
export type EntryText = Readonly<Record<string, string>>;

/** What an animal's name leads to. */
export type AnimalFound =
  | { readonly kind: "one"; readonly id: string; readonly name: string }
  /** Several may be meant: the keeper is asked. */
  | { readonly kind: "several"; readonly of: readonly { readonly id: string; readonly name: string }[] }
  | { readonly kind: "none"; readonly near: readonly { readonly id: string; readonly name: string }[] };

export interface EntryContext extends ReadingContext {
  readonly findAnimal: (name: string) => AnimalFound;
  /** Heads of a kind that the record holds on a day: what a loss or a count is held against. */
  readonly onRecord: (animal: string, on: string) => number;
  /** Water of the tank, L: what "20 L changed" is a share of; null where unknown. */
  readonly waterL: number | null;
}

export interface EntryDoubt {
  readonly field: string;
  readonly label: string;
  readonly typed: string;
  readonly message: Message;
  /** `text` is what to put into the field instead. */
  readonly choices: readonly Choice[];
}

export type ReadEntry<Kind extends EntryKind = EntryKind> =
  | {
      readonly ok: true;
      readonly kind: Kind;
      readonly body: EntryBody<Kind>;
      readonly on: string;
      readonly said: readonly Message[];
    }
  | { readonly ok: false; readonly doubts: readonly EntryDoubt[] };
