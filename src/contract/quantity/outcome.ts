/**
 * What became of a piece of text at the border: one shape for every quantity and every door.
 * A choice or a likely fix is itself text, so picking one is the same as typing it.
 */
import type { Spread } from "../../engine/types/estimate.ts";

export type MessageKind =
  | "ECHO"
  | "MISSING"
  | "FORMAT"
  | "RANGE"
  | "UNIT"
  | "AMBIG"
  | "CONFLICT"
  | "DUPLICATE"
  | "FUTURE"
  | "UNUSUAL"
  | "DANGER"
  | "NOTFOUND"
  | "TOOBIG";

export interface Message {
  readonly kind: MessageKind;
  readonly text: string;
}

/** A reading on offer. `text` is what to type for it; null where it opens another question instead. */
export interface Choice {
  readonly label: string;
  readonly text: string | null;
}

/** As it came, so that it can be shown again and taken back. */
export interface Original {
  readonly text: string;
  readonly unit: string | null;
}

export interface Kept<T> {
  readonly verdict: "accept" | "convert" | "flag";
  readonly value: T;
  readonly original: Original;
  readonly message: Message | null;
}

export interface NotKept {
  /** `ask`: there are readings to choose from. `refuse`: there are none, though a fix may be on offer. */
  readonly verdict: "ask" | "refuse";
  readonly original: Original;
  readonly message: Message;
  readonly choices: readonly Choice[];
}

export type Outcome<T> = Kept<T> | NotKept;

/** A measured or stated amount in its canonical unit. */
export interface Amount extends Spread {
  readonly unit: string;
  /** Below or above what the kit can tell; `high` (below) or `low` (above) is then the limit. */
  readonly censored: "below" | "above" | null;
}

export function isKept<T>(outcome: Outcome<T>): outcome is Kept<T> {
  return outcome.verdict === "accept" || outcome.verdict === "convert" || outcome.verdict === "flag";
}

export function kept<T>(
  verdict: Kept<T>["verdict"],
  value: T,
  original: Original,
  message: Message | null = null,
): Kept<T> {
  return { verdict, value, original, message };
}

export function asked(original: Original, message: Message, choices: readonly Choice[]): NotKept {
  return { verdict: "ask", original, message, choices };
}

export function refused(original: Original, message: Message, choices: readonly Choice[] = []): NotKept {
  return { verdict: "refuse", original, message, choices };
}
