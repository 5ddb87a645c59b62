/** What the daybook has taught, as plain data: the page's, and the API's. */
import type { Spread } from "../../engine/types/estimate.ts";

export interface LearnedOutput {
  /** Observations that could teach; fewer than `least` teach nothing. */
  readonly observations: number;
  readonly least: number;
  /** Null where nothing was learned. */
  readonly taught: {
    readonly from: string;
    readonly to: string;
    readonly members: number;
    readonly quantities: readonly LearnedQuantity[];
    readonly groups: readonly LearnedGroup[];
    readonly readings: readonly LearnedReading[];
  } | null;
}

export interface LearnedQuantity {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly before: Spread;
  readonly after: Spread;
  /** Spread after over before: 1 is nothing learned. */
  readonly spread_left: number;
  readonly seen: "well" | "partly" | "hardly";
  /** The group of observations that pulled most, and which way; null where none pulled. */
  readonly pulled_by: { readonly group: string; readonly label: string; readonly way: "up" | "down" } | null;
  readonly figure: string;
}

export interface LearnedGroup {
  readonly group: string;
  readonly label: string;
  readonly observations: number;
  /** Of all that was learned, what would be missing without it, 0 to 1. */
  readonly share: number;
  readonly figure: string;
}

export interface LearnedReading {
  readonly entry: string;
  readonly on: string;
  readonly group: string;
  readonly label: string;
  /** Label of the quantity that it moved most. */
  readonly moved: string;
  readonly way: "up" | "down";
  readonly pull: "much" | "some" | "little";
  /** Lies off every run: it counts for less, and is still what it says. */
  readonly outlying: boolean;
}
