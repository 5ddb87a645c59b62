/** What an outside check is: printed or recorded values beside ours, at the tolerance their source deserves. */
import { readFileSync } from "node:fs";
import { join } from "node:path";

export interface Pair {
  readonly at: string;
  readonly theirs: number;
  readonly ours: number;
}

export interface Comparison {
  /** Block of the check file the values stand in. */
  readonly block: string;
  readonly quantity: string;
  readonly unit: string;
  readonly source: string;
  readonly tolerance: number;
  /** True where the tolerance is a share of the value. */
  readonly relative: boolean;
  readonly pairs: readonly Pair[];
}

/** A block, or a part of one, that no check reads, and why. */
export interface LeftOut {
  readonly block: string;
  readonly what: string;
  readonly why: string;
}

export function difference(relative: boolean, { theirs, ours }: Pair): number {
  return Math.abs(ours - theirs) / (relative ? Math.abs(theirs) : 1);
}

export function worst({ relative, pairs }: Comparison): number {
  return Math.max(...pairs.map((pair) => difference(relative, pair)));
}

/** Blocks of a check file in this folder, as the file holds them. */
export function readBlocks(file: string): Readonly<Record<string, { points: unknown[] }>> {
  return JSON.parse(readFileSync(join(import.meta.dirname, file), "utf8")).blocks;
}
