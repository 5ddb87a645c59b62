/**
 * What a small ensemble takes for knowledge: among so few members every score goes with the predictions a little, by
 * coincidence, and a pass narrows it for that, and leads its middle astray. Bystanders are scores that nothing depends on,
 * drawn and moved like all others: what a pass does to them it does to every score by mere coincidence, and that much
 * spread is given back. Evensen 2009, IEEE Control Systems Magazine 29: **memory**. docs/model/calibration.md, "Bystanders".
 */
import { scores } from "../numeric/draws.ts";
import { JUDGEMENT } from "./judgement.ts";
import { deviations, dot, type Matrix, meanOf } from "./matrix.ts";

export const bystanders = (count: number, seed: number): Float64Array[] =>
  Array.from({ length: JUDGEMENT.bystanders }, (_, k) => scores(`bystander ${k}`, count, seed));

/**
 * Times wider that bystanders have to be for bands that hold: a true score lies about nought with a spread of one, so
 * about a middle that has strayed it lies by that and the straying together. Never less than 1.
 */
export function takenByCoincidence(moved: Matrix): number {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const strayed = mean(moved.map((row) => meanOf(row) ** 2));
  const left = mean(deviations(moved).map((off) => dot(off, off) / (off.length - 1)));
  return Math.sqrt(Math.max(1, (1 + strayed) / left));
}
