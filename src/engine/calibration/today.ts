/**
 * How far today's water lies off a learned member's run, on the logarithmic scale of its nutrient: what the latest
 * readings leave unexplained, as far as it is the model's error and not the kit's, drawn once for each member.
 */
import type { QUANTITY_OF } from "../ahead/window.ts";
import { scores } from "../numeric/draws.ts";
import { exp } from "../numeric/elementary.ts";
import type { Errors } from "./errors.ts";
import { JUDGEMENT } from "./judgement.ts";
import { cholesky, dot, type Matrix, solve } from "./matrix.ts";
import type { TODAY_NAMES } from "./names.ts";
import type { Observed } from "./observed.ts";

type TodayName = (typeof TODAY_NAMES)[number];

export function offsetsToday(
  observed: readonly Observed[],
  predicted: Matrix,
  { covariance }: Errors,
  days: number,
  members: number,
  seed: number,
): Record<TodayName, Float64Array> {
  const of = (nutrient: keyof typeof QUANTITY_OF): Float64Array => {
    const model = JUDGEMENT.modelError[nutrient];
    const chance = scores(`${nutrient}Today`, members, seed);
    const at = [...observed.keys()].filter(
      (i) => observed[i]!.group === nutrient && observed[i]!.censored === null,
    );
    if (at.length === 0) return chance.map((z) => model * z);
    const shared = Float64Array.from(
      at,
      (i) => model * observed[i]!.model * exp(-Math.abs(days - observed[i]!.day) / JUDGEMENT.modelErrorDays),
    );
    const factor = cholesky(at.map((i) => Float64Array.from(at, (j) => covariance[i]![j]!)));
    const weight = solve(factor, shared);
    const left = Math.sqrt(Math.max(0, model ** 2 - dot(weight, shared)));
    return chance.map((z, m) => {
      const off = Float64Array.from(at, (i) => observed[i]!.value - predicted[i]![m]!);
      return dot(weight, off) + left * z;
    });
  };
  return { tanToday: of("tan"), no2Today: of("no2"), no3Today: of("no3"), po4Today: of("po4") };
}
