/** What one answer becomes: entries of a tank file, or a reason why not with readings to choose from. */
import { type Choice, isKept, type Outcome } from "../../contract/quantity/outcome.ts";
import type { Preferences } from "../../contract/quantity/preferences.ts";

/** Entries of a tank file, as text is written there. */
export type Entries = Readonly<Record<string, unknown>>;

export type Answer =
  | { readonly kind: "entries"; readonly entries: Entries; readonly echo: readonly string[] }
  | {
      readonly kind: "again";
      readonly typed: string;
      readonly message: string;
      readonly choices: readonly Choice[];
    };

export interface AnswerContext {
  readonly preferences: Preferences;
  /** Today, ISO date. */
  readonly today: string;
}

/** `echo`: how something was read that the entries no longer show. */
export const entries = (of: Entries, echo: readonly string[] = []): Answer => ({
  kind: "entries",
  entries: of,
  echo,
});

export const again = (typed: string, message: string, choices: readonly Choice[] = []): Answer => ({
  kind: "again",
  typed,
  message,
  choices,
});

/** An outcome that was not kept, as an answer to give again; null where it was kept. */
export function doubtOf<T>(outcome: Outcome<T>): Answer | null {
  return isKept(outcome) ? null : again(outcome.original.text, outcome.message.text, outcome.choices);
}

/** Parts of a list: at line ends, semicolons, and commas that are no decimal sign. */
export const partsOf = (text: string): string[] =>
  text
    .split(/[;\n]|,(?=\s|$)/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
