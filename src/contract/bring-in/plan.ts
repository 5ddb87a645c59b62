/** What a file would do to a daybook, with the keeper's answers: what is added, changed, brought back, and what is still open. */
import type { Answers } from "./asked.ts";
import type { Comparison, Pair } from "./compare.ts";
import type { FileEntry } from "./read.ts";

export const CLASH_ANSWERS = ["mine", "file", "both"] as const;
export type ClashAnswer = (typeof CLASH_ANSWERS)[number];
export const DELETED_ANSWERS = ["leave_out", "bring_back"] as const;
export type DeletedAnswer = (typeof DELETED_ANSWERS)[number];

/** To the question what becomes of entries that were changed after an act that is undone. */
export const UNDO_CHOICES = ["keep", "undo"] as const;

export interface Decided<Answer> extends Pair {
  /** Null where nobody said yet. */
  readonly answer: Answer | null;
}

export interface Plan {
  readonly add: readonly FileEntry[];
  /** Versions of entries that are there: the file's text, kept. */
  readonly change: readonly Pair[];
  readonly clashes: readonly Decided<ClashAnswer>[];
  readonly deleted: readonly Decided<DeletedAnswer>[];
  /** Clashes that nobody decided: left as they are in the daybook. */
  readonly undecided: number;
}

/** `clash`, `deleted`: for all; `clash.14`: for what stands there. What was deleted stays out where nobody says. */
export function planOf({ fresh, clashes, deleted }: Comparison, answers: Answers): Plan {
  const said = <A extends string>(name: string, place: string, allowed: readonly A[]): A | null => {
    const given = answers[`${name}.${place}`] ?? answers[name];
    return allowed.find((one) => one === given) ?? null;
  };
  const decided = clashes.map((pair) => ({
    ...pair,
    answer: said("clash", pair.entry.place, CLASH_ANSWERS),
  }));
  const back = deleted.map((pair) => ({
    ...pair,
    answer: said("deleted", pair.entry.place, DELETED_ANSWERS) ?? ("leave_out" as const),
  }));
  return {
    add: [...fresh, ...decided.filter(({ answer }) => answer === "both").map(({ entry }) => entry)],
    change: [
      ...decided.filter(({ answer }) => answer === "file"),
      ...back.filter(({ answer }) => answer === "bring_back"),
    ].map(({ entry, held }) => ({ entry, held })),
    clashes: decided,
    deleted: back,
    undecided: decided.filter(({ answer }) => answer === null).length,
  };
}
