/** What the reader of a move must know of the tanks beside its own. */
import type { Choice, Message } from "../quantity/outcome.ts";

export interface OtherTank {
  readonly id: string;
  readonly name: string;
  /** First day of seawater, ISO date; null where unknown. */
  readonly notBefore: string | null;
  /** Heads of a kind on its record at the end of a day, ISO date. */
  readonly onRecord: (animal: string, on: string) => number;
  /** What it knows heads to be that were called so on a day; the same where nothing was found out since. */
  readonly knownAs: (animal: string, on: string) => string | null;
  /** Day on which it was told what lives there, ISO date; null: never. */
  readonly toldOn: (animal: string | null) => string | null;
}

/** Heads that went to another tank: what is found out of their kind later holds there too, and is logged there. */
export interface MovedOut {
  readonly tank: string;
  readonly count: number;
  /** ISO date. */
  readonly on: string;
}

/** What the tank that receives them says of newcomers. */
export interface Receiving {
  /** Worth saying before they go in: acclimation, quarantine, medicines, the first three days. */
  readonly said: (animal: string | null) => readonly Message[];
  /** Why its gate is not met, one sentence; null where it is, can't be told, or nobody judged it. */
  readonly gateNotMet: string | null;
}

export type FoundTank =
  | { readonly kind: "one"; readonly tank: OtherTank; readonly receiving: Receiving }
  | { readonly kind: "itself" }
  | { readonly kind: "several"; readonly choices: readonly Choice[] }
  /** None of the store; whose a tank elsewhere is, nobody is told. */
  | { readonly kind: "none"; readonly choices: readonly Choice[] };

/** A tank by its id or name, as typed. */
export type FindTank = (text: string) => FoundTank;
