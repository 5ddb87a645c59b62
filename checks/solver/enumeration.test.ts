/**
 * The solver's optimum against every choice of whole numbers there is, on programmes small enough to try them all:
 * branching cannot be wrong where nothing branches.
 */
import { expect, test } from "vitest";
import type { LinearModel } from "../../src/engine/stocking/linear-model.ts";
import { loadSolver } from "../../src/solver/highs.ts";
import { stockingForm } from "./stocking-form.ts";

const solve = await loadSolver();

/** Every head count of every kind; presence follows from it. */
function* choices(model: LinearModel): Generator<ReadonlyMap<string, number>> {
  const heads = model.columns.filter(({ name }) => name.startsWith("n"));
  function* from(at: number, chosen: Map<string, number>): Generator<ReadonlyMap<string, number>> {
    const kind = heads[at];
    if (kind === undefined) {
      yield chosen;
      return;
    }
    for (let count = kind.lower; count <= kind.upper; count += 1) {
      chosen.set(kind.name, count).set(kind.name.replace("n", "y"), Math.min(1, count));
      yield* from(at + 1, chosen);
    }
  }
  yield* from(0, new Map());
}

/** With the whole numbers chosen, what is left is continuous. */
function chosenOf({ columns, rows }: LinearModel, chosen: ReadonlyMap<string, number>): LinearModel {
  return {
    rows,
    columns: columns.map((column) => {
      const value = chosen.get(column.name);
      return value === undefined ? column : { ...column, lower: value, upper: value, integer: false };
    }),
  };
}

function cheapest(model: LinearModel): number {
  let best = Number.POSITIVE_INFINITY;
  for (const chosen of choices(model)) {
    const rest = solve(chosenOf(model, chosen));
    if (rest.status === "optimal") best = Math.min(best, rest.objective);
    else expect(rest.status).toBe("infeasible");
  }
  return best;
}

test.each(
  Array.from({ length: 24 }, (_, i) => ({ seed: i + 1, presence: i % 2 === 1, kinds: i % 6 === 0 ? 4 : 3 })),
)(
  "the optimum of programme $seed is the best of all: $kinds kinds, presence $presence",
  ({ seed, presence, kinds }) => {
    const model = stockingForm(seed, { kinds, shelves: 3, cap: 4, presence });
    const found = solve(model);
    const best = cheapest(model);
    if (found.status === "optimal") {
      expect(Math.abs(found.objective - best) / Math.max(1, Math.abs(best))).toBeLessThan(1e-6);
    } else {
      expect(found.status).toBe("infeasible");
      expect(best).toBe(Number.POSITIVE_INFINITY);
    }
  },
);
