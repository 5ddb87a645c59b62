/**
 * Shelves ranked from most over to most short against one line, grown = wanted. Each side is counted in grains of its
 * own: a run that grows 3 rations more than is wanted has three grains over. Pure.
 */
import { maybeTold, type Sentence } from "../../answers/sentence.ts";
import { rations, rationsADay } from "../../answers/words.ts";
import { type GrainCounts, grainCounts, grainFor } from "./grain-row-view.ts";
import { isBare, type Leaning, leaning, type ShelfFacts } from "./shelf.ts";

/** Longest ear on one side. */
const MOST_GRAINS = 14;

export interface WedgeColumn {
  readonly shelf: ShelfFacts;
  readonly over: GrainCounts;
  readonly short: GrainCounts;
  readonly kind: Leaning;
  /** "2 over" */
  readonly words: string;
}

export interface TankWedgeView {
  readonly grain: string;
  readonly columns: readonly WedgeColumn[];
  readonly bare: readonly string[];
}

export function tankWedgeView(shelves: readonly ShelfFacts[]): TankWedgeView {
  const drawn = shelves.filter((shelf) => !isBare(shelf));
  const balances = drawn.map(({ runs, wanted }) => runs.map((supply) => supply - wanted));
  // What two runs of twenty reach is the farthest that is drawn.
  const farthest = balances.flatMap((runs) => {
    const sorted = [...runs].sort((a, b) => a - b);
    return [sorted.at(-2) ?? 0, -(sorted[1] ?? 0)];
  });
  const grain = grainFor(farthest, MOST_GRAINS);
  const columns = drawn.map((shelf, i) => {
    const { kind, words } = leaning(shelf);
    const runs = balances[i]!;
    return {
      shelf,
      over: grainCounts(runs, grain.mgC),
      short: grainCounts(
        runs.map((value) => -value),
        grain.mgC,
      ),
      kind,
      words,
    };
  });
  return {
    grain: grain.words,
    columns: columns.toSorted((a, b) => leaning(b.shelf).mgC - leaning(a.shelf).mgC),
    bare: shelves.filter(isBare).map(({ name }) => name),
  };
}

/** "detritus on sand is 4.9 rations a day over, hair algae 1.1 short"; `balanceOf`: the figure of a shelf's balance. */
export function wedgeFinding(
  { columns }: TankWedgeView,
  balanceOf: (shelf: string) => string | null = () => null,
): Sentence {
  const ends = [
    columns.find(({ kind }) => kind === "over"),
    columns.findLast(({ kind }) => kind === "short"),
  ].filter((column) => column !== undefined);
  if (ends.length === 0) return ["each shelf grows about what is eaten"];
  return ends.flatMap(({ shelf, kind }, i) => {
    const mgC = Math.abs(leaning(shelf).mgC);
    const [before, amount] =
      i === 0 ? [`${shelf.name} is `, rationsADay(mgC)] : [`, ${shelf.name} `, rations(mgC)];
    return [before, maybeTold(`${amount} ${kind}`, balanceOf(shelf.id))];
  });
}
