/**
 * What each reader of the daybook (trends, heads, growths and signs) is given and gives back: its answer as plain data,
 * every number in it as a figure with its working, and the advice that follows. Quick work: a page waits for it.
 */
import type { Figure } from "../engine/types/figure.ts";
import type { TankRecord } from "../engine/types/record.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import type { Advice } from "./advice.ts";

export interface RecordScene {
  /** As of today: the daybook's additions, losses and changes are in them. */
  readonly facts: TankFacts;
  readonly record: TankRecord;
  /** ISO date. */
  readonly today: string;
}

export interface Said<Output> {
  readonly output: Output;
  readonly figures: readonly Figure[];
  readonly advice: readonly Advice[];
}
