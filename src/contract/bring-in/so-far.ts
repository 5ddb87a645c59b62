/**
 * Heads on the record while a file is read: those of the daybook, and those that earlier rows of the file add or take.
 * So a sheet that holds a tank's whole life is not asked about each loss. Limits: rows in the order of their days.
 */
import { isComing, isGoing } from "../daybook/comings.ts";
import type { DaybookEntry } from "../daybook/kinds.ts";
import type { EntryContext } from "../daybook/read-entry.ts";
import type { FileEntry } from "./read.ts";

/** What an entry adds to the heads on record; 0 for one that changes none. */
function gainOf({ kind, on, body }: FileEntry): number {
  const entry = { id: "", kind, on, body } as DaybookEntry;
  if (isComing(entry)) return entry.body.count;
  return isGoing(entry) ? -entry.body.count : 0;
}

export class SoFar {
  readonly #base: EntryContext["onRecord"];
  readonly #changes = new Map<string, { readonly on: string; readonly heads: number }[]>();

  constructor(base: EntryContext["onRecord"]) {
    this.#base = base;
  }

  note(entries: readonly FileEntry[]): void {
    for (const entry of entries) {
      const { on, body } = entry;
      const heads = gainOf(entry);
      if (heads === 0 || !("animal" in body) || body.animal === null) continue;
      const list = this.#changes.get(body.animal) ?? [];
      list.push({ on, heads });
      this.#changes.set(body.animal, list);
    }
  }

  readonly onRecord = (animal: string, on: string): number => {
    const changes = this.#changes.get(animal) ?? [];
    return changes.reduce((sum, one) => (one.on <= on ? sum + one.heads : sum), this.#base(animal, on));
  };
}
