/**
 * What a small ensemble takes for knowledge: among so few members every score goes with the predictions a little, by
 * coincidence, and a pass narrows it for that. Bystanders are scores that nothing depends on, drawn and moved like all
 * others: what a pass takes from their spread it took from every score's by mere coincidence, and it is given back.
 * Evensen 2009, IEEE Control Systems Magazine 29: **memory**. docs/model/calibration.md, "Bystanders".
 */
import { scores } from "../numeric/draws.ts";
import { JUDGEMENT } from "./judgement.ts";
import { deviations, dot, type Matrix } from "./matrix.ts";

export const bystanders = (count: number, seed: number): Float64Array[] =>
  Array.from({ length: JUDGEMENT.bystanders }, (_, k) => scores(`bystander ${k}`, count, seed));

/** Times that the spread of bystanders was wider before a pass than after it, in the mean; never less than 1. */
export function takenByCoincidence(before: Matrix, after: Matrix): number {
  const kept = after.map((row, k) => spreadOf(row) / spreadOf(before[k]!));
  return Math.max(1, kept.length / kept.reduce((sum, share) => sum + share, 0));
}

function spreadOf(row: Float64Array): number {
  const [off] = deviations([row]);
  return Math.sqrt(dot(off!, off!));
}
