/** What is taken out of a daybook, and whose it is. */
import type { DaybookEntry } from "../daybook/kinds.ts";
import type { Preferences } from "../quantity/preferences.ts";

export type TakenEntry = DaybookEntry;

export interface TakenFrom {
  readonly tank: { readonly id: string; readonly name: string };
  /** Instant, UTC. */
  readonly at: string;
  readonly preferences: Preferences;
}

export const TAKE_OUT_FORMATS = ["csv", "json", "readings"] as const;
export type TakeOutFormat = (typeof TAKE_OUT_FORMATS)[number];
