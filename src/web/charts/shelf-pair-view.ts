/** Supply over mouths, shelf by shelf, in grains of one size. Pure. */
import { type GrainCounts, grainCounts, grainFor, grainsDrawn, RUNS } from "./grain-row-view.ts";
import { isBare, leaning, type ShelfFacts } from "./shelf.ts";

/** Longest row that fits a phone with the bracket's words beside it. */
const MOST_GRAINS = 16;

export interface ShelfPairView {
  readonly shelf: ShelfFacts;
  readonly grown: GrainCounts;
  readonly wanted: GrainCounts;
  /** There is something, but it fills no grain. */
  readonly tooLittle: { readonly grown: boolean; readonly wanted: boolean };
  /** Grains from the start line at which the difference begins and ends; null where even or nobody eats. */
  readonly bracket: { readonly from: number; readonly to: number; readonly words: string } | null;
}

export interface ShelfPairsView {
  readonly grain: string;
  readonly pairs: readonly ShelfPairView[];
  readonly bare: readonly string[];
}

export function shelfPairsView(shelves: readonly ShelfFacts[]): ShelfPairsView {
  const drawn = shelves.filter((shelf) => !isBare(shelf));
  const grain = grainFor(
    drawn.flatMap(({ runs, wanted }) => [wanted, [...runs].sort((a, b) => b - a)[1] ?? 0]),
    MOST_GRAINS,
  );
  return {
    grain: grain.words,
    pairs: drawn.map((shelf) => pairView(shelf, grain.mgC)),
    bare: shelves.filter(isBare).map(({ name }) => name),
  };
}

function pairView(shelf: ShelfFacts, grainMgC: number): ShelfPairView {
  const grown = grainCounts(shelf.runs, grainMgC);
  const wanted = grainCounts(
    Array.from({ length: RUNS }, () => shelf.wanted),
    grainMgC,
  );
  const { kind, words } = leaning(shelf);
  const [a, b] = [grown.sure + grown.likely, grainsDrawn(wanted)];
  const bracket =
    kind === "even" || shelf.wanted === 0 || a === b
      ? null
      : { from: Math.min(a, b), to: Math.max(a, b), words };
  const tooLittle = {
    grown: grainsDrawn(grown) === 0 && shelf.supply.central > 0,
    wanted: grainsDrawn(wanted) === 0 && shelf.wanted > 0,
  };
  return { shelf, grown, wanted, tooLittle, bracket };
}
