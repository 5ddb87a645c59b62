/** What must hold of any tank whatever its parameters: more light, a bigger tank. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FG, FR, FS, K, TAN } from "./pools.ts";
import { DISPLAY_STEPS, run } from "./run.ts";
import { drawOf } from "./test-kit/draw.ts";
import { inventInputs, inventParameters } from "./test-kit/invented-world.ts";
import { typicalTank } from "./test-kit/typical-tank.ts";

/** An invented tank without crew or filaments, at typical densities, `size` times over; the carcass stays as it is. */
function invented(seed: number, changes: { light?: number; size?: number; carrionN?: number }) {
  const draw = drawOf(seed);
  const drawn = inventInputs(draw);
  const { size = 1, carrionN = 0 } = changes;
  const inputs = { ...drawn, light: changes.light ?? drawn.light };
  for (const extent of ["V", "Ag", "Ar", "As", "Ac", "rockKg", "feed", "fish", "macMax"] as const) {
    inputs[extent] = size * drawn[extent];
  }
  const { world, start } = typicalTank({
    ...{ inputs, parameters: { ...inventParameters(draw), capSorb: 0 }, heads: 0, state: { FF: 0 } },
  });
  const state = start.map((value) => (value * inputs.V) / 113);
  const carcass = (carrionN * drawn.V) / 113;
  [4, 1, 0.15].forEach((perN, e) => {
    state[K + e] = state[K + e]! + perN * carcass;
  });
  return { world, start: state };
}

describe("more light", () => {
  test("never lowers film after five days without crew", () => {
    const film = (seed: number, light: number): number => {
      const { world, start } = invented(seed, { light });
      const { state } = run(world, start, [], { days: 5, steps: DISPLAY_STEPS });
      return state[FG]! + state[FR]! + state[FS]!;
    };
    fc.assert(
      fc.property(
        fc.integer(),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (seed, one, other) => {
          const dim = film(seed, Math.min(one, other));
          expect(film(seed, Math.max(one, other))).toBeGreaterThanOrEqual(dim * (1 - 1e-4));
        },
      ),
      { seed: 6, numRuns: 60 },
    );
  });
});

describe("a bigger tank", () => {
  test("a tank twice the size halves what a carcass adds to ammonia at its peak, or better", () => {
    const peak = (seed: number, size: number): number => {
      const course = (carrionN: number): number[] => {
        const { world, start } = invented(seed, { size, carrionN });
        const rows: number[] = [];
        const onRow = (_day: number, y: Float64Array) => rows.push(y[TAN]! / world.inputs.V);
        run(world, start, [], { days: 10, steps: DISPLAY_STEPS, rowEvery: 0.25, onRow });
        return rows;
      };
      const without = course(0);
      return Math.max(...course(60).map((value, row) => value - without[row]!));
    };
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        expect(peak(seed, 2)).toBeLessThanOrEqual(0.5 * peak(seed, 1) * 1.02);
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});
