/** Entries oldest first; those of one day in the order they were kept, which their ids count (server/new-id.ts). */
import type { DaybookEntry } from "./kinds.ts";

export function byDay(entries: readonly DaybookEntry[]): DaybookEntry[] {
  return entries.toSorted((a, b) => order(a.on, b.on) || order(a.id, b.id));
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
