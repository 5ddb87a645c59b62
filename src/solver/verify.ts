/**
 * Second look at a solver's answer, by arithmetic of our own: whole numbers, bounds, rows, cost.
 * A solver works to tolerances of its own on a model it has scaled and reduced; a plan is shown to a keeper only
 * if it holds in the model as written.
 */
import type { LinearModel, Solution } from "../engine/stocking/linear-model.ts";

/** How near a whole number counts as whole, and how far a bound or row may be missed. Absolute. */
const TOLERANCE = 1e-6;

/** The answer with whole numbers made exact and its cost recomputed; "failed", naming the first fault, if it does not hold. */
export function verify(model: LinearModel, raw: Float64Array): Solution {
  const values = Float64Array.from(raw, (value, i) => {
    const whole = Math.round(value);
    return model.columns[i]!.integer && Math.abs(value - whole) <= TOLERANCE ? whole + 0 : value;
  });
  let objective = 0;
  for (const [i, column] of model.columns.entries()) {
    const value = values[i]!;
    if (column.integer && !Number.isInteger(value)) return fault(column.name, value, "a whole number");
    if (misses(column, value)) return fault(column.name, value, within(column));
    objective += column.cost * value;
  }
  for (const row of model.rows) {
    const sum = row.entries.reduce(
      (total, [column, coefficient]) => total + coefficient * values[column]!,
      0,
    );
    if (misses(row, sum)) return fault(row.name, sum, within(row));
  }
  return { status: "optimal", objective, values };
}

interface Span {
  readonly lower: number;
  readonly upper: number;
}

/** Written so that NaN misses too. */
function misses({ lower, upper }: Span, value: number): boolean {
  return !(value >= lower - TOLERANCE && value <= upper + TOLERANCE);
}

function within({ lower, upper }: Span): string {
  return `${lower} to ${upper}`;
}

function fault(name: string, value: number, rule: string): Solution {
  return { status: "failed", why: `the solver's answer does not hold: ${name} must be ${rule}, is ${value}` };
}
