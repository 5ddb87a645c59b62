/**
 * What the engine asked for when a tank's bench was last drawn with its plan: the round does not wait for the engine,
 * and shows this meanwhile. Held for a store while the program runs; a week old, it says too little.
 */
import type { Advice } from "../../answers/advice.ts";
import { daysBetween } from "../../contract/quantity/calendar.ts";
import type { Store } from "../../store/store.ts";

const WEEK = 7;

interface Kept {
  readonly on: string;
  readonly advice: readonly Advice[];
}
const byStore = new WeakMap<Store, Map<string, Kept>>();

/** Matters that only the engine knows of, or that took its time. */
const OF_ENGINE: ReadonlySet<Advice["about"]> = new Set([
  ...(["wave", "nothing_yet", "hungry", "hand_work", "top_up", "way_down"] as const),
]);

export function keepAdvice(store: Store, tank: string, on: string, standing: readonly Advice[]): void {
  const kept = byStore.get(store) ?? new Map<string, Kept>();
  byStore.set(store, kept);
  kept.set(tank, { on, advice: standing.filter(({ about, weight }) => OF_ENGINE.has(about) && weight > 0) });
}

export function keptAdvice(store: Store, tank: string, today: string): readonly Advice[] {
  const kept = byStore.get(store)?.get(tank);
  return kept === undefined || daysBetween(kept.on, today) > WEEK ? [] : kept.advice;
}
