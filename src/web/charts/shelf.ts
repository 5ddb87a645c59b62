/** A shelf as the larder's charts take it, and what is said of it in every one of them. Amounts in mg C a day. Pure. */
import { chance, rations, rationsADay } from "../../answers/words.ts";
import { RATION_MG_C } from "../../engine/types/shelf.ts";
import { RUNS } from "./grain-row-view.ts";

export interface ShelfFacts {
  readonly id: string;
  /** "film on glass" */
  readonly name: string;
  readonly supply: { readonly low: number; readonly central: number; readonly high: number };
  /** Twenty runs of the supply. */
  readonly runs: readonly number[];
  /** What those that eat from it want. */
  readonly wanted: number;
  /** As near that the shelf is called even; half a ration unless said. */
  readonly evenWithin?: number;
  /** Ids of the figures behind both; null where the engine has no working of one yet. */
  readonly figures: { readonly supply: string; readonly wanted: string | null };
}

export type Leaning = "over" | "short" | "even";

const EVEN_MG_C = RATION_MG_C / 2;
const EVEN_SHARE = 0.05;

/** Half a ration, or a twentieth of what all shelves grow where that is less: a small tank's shelves differ too. Judgement. */
export const evenWithin = (allMgC: number): number => Math.min(EVEN_MG_C, EVEN_SHARE * allMgC);

/** In the middle of the runs. */
export function leaning({ supply, wanted, evenWithin = EVEN_MG_C }: ShelfFacts): {
  kind: Leaning;
  words: string;
  mgC: number;
} {
  const mgC = supply.central - wanted;
  if (Math.abs(mgC) < evenWithin) return { kind: "even", words: "even", mgC };
  const kind = mgC > 0 ? "over" : "short";
  return { kind, words: `${rations(Math.abs(mgC))} ${kind}`, mgC };
}

/** Runs of 20 in which those that eat there want more than it grows. */
export function shortOf20({ runs, wanted }: ShelfFacts): number {
  if (runs.length !== RUNS) throw new Error(`Cannot count runs: twenty are needed, received ${runs.length}`);
  return runs.filter((supply) => supply < wanted).length;
}

/** "about 3 rations a day (2 to 5)" */
export function supplyWords({ supply: { low, central, high } }: ShelfFacts): string {
  return `about ${rationsADay(central)} (${rations(low)} to ${rations(high)})`;
}

/** "usually short, 15 of 20" or "nobody eats from it" */
export function shortWords(shelf: ShelfFacts): string {
  if (shelf.wanted === 0) return "nobody eats from it";
  const [word, number] = chance(shortOf20(shelf)).split(", ");
  return `${word} short, ${number}`;
}

/** Neither grown nor wanted: named, not drawn. */
export const isBare = ({ supply, wanted }: ShelfFacts): boolean => supply.high <= 0 && wanted <= 0;
