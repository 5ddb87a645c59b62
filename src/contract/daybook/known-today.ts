/**
 * What animals of earlier entries are known to be today. An identification of all of a kind holds for every entry up to
 * its day: what was added as A and found to be B counts as B from the start. One of some heads takes the latest of those
 * that came, so that nowhere on the way fewer than none of A are left; head counts and losses before it stay with A, as
 * nobody knows which they were. The entries themselves stay as they are.
 */
import { type Coming, isComing, isGoing } from "./comings.ts";
import type { DaybookEntry } from "./kinds.ts";

/** Heads that came together; `animal` null where the catalogue does not know it. */
export interface Lot {
  readonly animal: string | null;
  readonly count: number;
}

/** Heads of the tank file, older than the daybook; `ref` tells its place there. */
export interface OlderLot extends Lot {
  readonly ref: number;
}

export interface KnownAs {
  /** The kind that an entry's animal is known to be; null for one that the catalogue does not know. */
  of(entry: Pick<DaybookEntry, "on">, animal: string | null): string | null;
  /** Heads that came by the kinds they are known to be; their counts add up to the entry's. */
  added(entry: Coming): readonly Lot[];
  /** The same of a place in the tank file. */
  older(ref: number): readonly Lot[];
}

interface Came {
  readonly from: DaybookEntry | number;
  /** ISO date; empty for heads of the tank file, which came first. */
  readonly on: string;
  animal: string | null;
  count: number;
}

type Identification = Extract<DaybookEntry, { kind: "identification" }>;

/** `dated`: oldest first. `older`: heads of the tank file; left out where they are not known. */
export function knownToday(
  dated: readonly DaybookEntry[],
  older: readonly OlderLot[] | null = null,
): KnownAs {
  const comings: Came[] = [
    ...(older ?? []).map(({ ref, animal, count }) => ({ from: ref, on: "", animal, count })),
    ...dated.flatMap((entry) =>
      isComing(entry)
        ? [{ from: entry, on: entry.on, animal: entry.body.animal, count: entry.body.count }]
        : [],
    ),
  ];
  const renamed: Identification[] = [];
  const of: KnownAs["of"] = (entry, animal) =>
    renamed.reduce((now, { on, body }) => (entry.on <= on && now === body.was ? body.animal : now), animal);

  for (const entry of dated) {
    // One that the catalogue does not know is told from others by its text alone, and counts for nothing yet.
    if (entry.kind !== "identification" || entry.body.was === null) continue;
    const { was, animal, count } = entry.body;
    const there = comings.filter((one) => one.on <= entry.on && one.animal === was);
    if (count === null) {
      for (const one of there) one.animal = animal;
      renamed.push(entry);
      continue;
    }
    const came = there.reduce((sum, one) => sum + one.count, 0);
    const alive = Math.max(0, came - goneBy(entry.on, was));
    let left = Math.min(count, older === null ? came : alive);
    for (const one of there.toReversed()) {
      const taken = Math.min(left, one.count);
      if (taken === 0) continue;
      one.count -= taken;
      left -= taken;
      comings.push({ from: one.from, on: one.on, animal, count: taken });
    }
    comings.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  }

  const lotsOf = (from: Came["from"]): Lot[] =>
    comings
      .filter((one) => one.from === from && one.count > 0)
      .map(({ animal, count }) => ({ animal, count }));
  return { of, added: lotsOf, older: lotsOf };

  /** Heads of a kind, as named so far, that had gone by the end of a day. */
  function goneBy(day: string, kind: string): number {
    return dated.reduce((sum, entry) => {
      if (entry.on > day || !isGoing(entry)) return sum;
      return of(entry, entry.body.animal) === kind ? sum + entry.body.count : sum;
    }, 0);
  }
}
