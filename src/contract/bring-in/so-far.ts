/**
 * Heads on the record while a file is read: those of the daybook, and those that earlier rows of the file add or take.
 * So a sheet that holds a tank's whole life is not asked about each loss. Limits: rows in the order of their days.
 */
import type { EntryContext } from "../daybook/read-entry.ts";
import type { FileEntry } from "./read.ts";

const GAINS: Readonly<Record<string, number>> = { addition: 1, loss: -1, departure: -1 };

export class SoFar {
  readonly #base: EntryContext["onRecord"];
  readonly #changes = new Map<string, { readonly on: string; readonly heads: number }[]>();

  constructor(base: EntryContext["onRecord"]) {
    this.#base = base;
  }

  note(entries: readonly FileEntry[]): void {
    for (const { kind, on, body } of entries) {
      const gain = GAINS[kind];
      if (gain === undefined || !("animal" in body) || !("count" in body) || body.animal === null) continue;
      const list = this.#changes.get(body.animal) ?? [];
      list.push({ on, heads: gain * (body.count ?? 0) });
      this.#changes.set(body.animal, list);
    }
  }

  readonly onRecord = (animal: string, on: string): number => {
    const changes = this.#changes.get(animal) ?? [];
    return changes.reduce((sum, one) => (one.on <= on ? sum + one.heads : sum), this.#base(animal, on));
  };
}
