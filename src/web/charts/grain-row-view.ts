/**
 * A quantity as countable grains. A run has a grain when it reaches at least half of it; a grain is sure when at least
 * 18 of 20 runs have it, likely with 10 to 17, possible with 2 to 9, and is not drawn with fewer. Pure.
 */
import { RATION_MG_C } from "../../engine/types/shelf.ts";

export interface GrainCounts {
  readonly sure: number;
  readonly likely: number;
  readonly possible: number;
}

export const RUNS = 20;
const SURE_FROM = 18;
const LIKELY_FROM = 10;
const POSSIBLE_FROM = 2;

/** `runs` and `grain` in the same unit; more than 20 runs are a caller's mistake, as are fewer. */
export function grainCounts(runs: readonly number[], grain: number): GrainCounts {
  if (runs.length !== RUNS)
    throw new Error(`Cannot count grains: twenty runs are needed, received ${runs.length}`);
  /** Grains that at least so many runs have. */
  const had = (by: number) => {
    const least = [...runs].sort((a, b) => b - a)[by - 1]!;
    return Math.max(0, Math.floor(least / grain + 0.5));
  };
  const sure = had(SURE_FROM);
  const likely = had(LIKELY_FROM);
  return { sure, likely: likely - sure, possible: had(POSSIBLE_FROM) - likely };
}

export const grainsDrawn = ({ sure, likely, possible }: GrainCounts): number => sure + likely + possible;

/** "3 sure, 1 likely, 1 possible"; "none" where nothing is drawn. */
export function grainWords({ sure, likely, possible }: GrainCounts): string {
  const said = [
    [sure, "sure"],
    [likely, "likely"],
    [possible, "possible"],
  ]
    .filter(([count]) => count !== 0)
    .map(([count, word]) => `${count} ${word}`);
  return said.length === 0 ? "none" : said.join(", ");
}

const GRAIN_RATIONS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** Smallest round grain, in mg C a day, with which the largest of these amounts fits into so many grains. */
export function grainFor(amounts: readonly number[], most: number): { mgC: number; words: string } {
  const largest = Math.max(0, ...amounts);
  const rations =
    GRAIN_RATIONS.find((size) => largest / (size * RATION_MG_C) <= most + 0.49) ?? GRAIN_RATIONS.at(-1)!;
  return { mgC: rations * RATION_MG_C, words: rations === 1 ? "1 ration a day" : `${rations} rations a day` };
}
