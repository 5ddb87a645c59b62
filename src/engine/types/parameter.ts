import type { Spread } from "./estimate.ts";

export type Evidence = "read" | "computed" | "memory" | "judgement" | "backfitted";

/** A number of the science with its range, unit, evidence and source. */
export interface Parameter {
  /** Key: a symbol of docs/model/balance.md (`kapFilm`) or a dotted id of the supply table (`feed.pellet.protein`). */
  readonly id: string;
  readonly meaning: string;
  readonly unit: string;
  readonly spread: Spread;
  readonly evidence: Evidence;
  /** Keys of facts/sources.yaml. */
  readonly sources: readonly string[];
  /** Id of the supply row whose range this model symbol takes, when it has one. */
  readonly range?: string;
  /** Other values found, not chosen. */
  readonly rivals?: readonly { readonly value: number; readonly source: string; readonly note?: string }[];
  readonly note?: string;
}
