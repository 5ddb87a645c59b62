/**
 * What a tank's daybook had taught when its page was last drawn: shown, with what came since, while the engine learns
 * anew. Held for a store while the program runs.
 */
import type { LearnedOutput } from "../../answers/learned/output.ts";
import { teachingPart } from "../../answers/learned/teaching-part.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { Store } from "../../store/store.ts";

interface Kept {
  readonly output: LearnedOutput;
  /** Entries that could have taught. */
  readonly entries: ReadonlySet<string>;
}

const byStore = new WeakMap<Store, Map<string, Kept>>();

export function keepLearning(store: Store, tank: string, record: TankRecord, output: LearnedOutput): void {
  const kept = byStore.get(store) ?? new Map<string, Kept>();
  byStore.set(store, kept);
  kept.set(tank, { output, entries: entriesOf(record) });
}

/** Null where the program has not seen it learned from; `since`: a sentence of what came after it. */
export function keptLearning(
  store: Store,
  tank: string,
  record: TankRecord,
): { readonly output: LearnedOutput; readonly since: string } | null {
  const kept = byStore.get(store)?.get(tank);
  if (kept === undefined) return null;
  return { output: kept.output, since: sinceWords(kept.entries, entriesOf(record)) };
}

const entriesOf = (record: TankRecord): ReadonlySet<string> => {
  const { observations, happenings } = teachingPart(record);
  return new Set([...observations, ...happenings].map(({ entry }) => entry));
};

export function sinceWords(then: ReadonlySet<string>, now: ReadonlySet<string>): string {
  const came = [...now].filter((entry) => !then.has(entry)).length;
  if (came === 0) return "The daybook or the answers have changed since this was learned.";
  return `${came === 1 ? "1 entry has" : `${came} entries have`} come in since this was learned.`;
}
