import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { RandomStream } from "../numeric/random.ts";
import { headsAt } from "./pools.ts";
import { ENSEMBLE_STEPS, type RunOptions, type RunResult, run, type StepRule } from "./run.ts";
import { closingError } from "./test-kit/closing-error.ts";
import { drawOf } from "./test-kit/draw.ts";
import { inventEvents } from "./test-kit/invented-events.ts";
import { again, type InventedTank, inventTank } from "./test-kit/invented-world.ts";
import type { Mortality } from "./world.ts";

const DAYS = 15;
const RULES: readonly (readonly [string, StepRule])[] = [
  ["graded", ENSEMBLE_STEPS],
  ["fixed", { kind: "fixed", days: 0.25 }],
];

interface Case extends RunResult {
  readonly tank: InventedTank;
}

function runInvented(seed: number, mortality: Mortality, options: Partial<RunOptions>): Case {
  const draw = drawOf(seed);
  const tank = inventTank(draw, mortality);
  const { world, start } = again(tank);
  const random = mortality === "drawn" ? { random: new RandomStream(seed, 1) } : {};
  const events = inventEvents(draw, world, DAYS);
  const result = run(world, start, events, { days: DAYS, steps: ENSEMBLE_STEPS, ...random, ...options });
  return { ...result, tank };
}

describe.each(RULES)("%s steps", (_, steps) => {
  test.each(["expected", "drawn"] as const)(
    "%s deaths: every pool stays at or above zero; C, N and P change by what the ledger lets in and out",
    (mortality) => {
      fc.assert(
        fc.property(fc.integer(), (seed) => {
          const rows: Float64Array[] = [];
          const { tank, state, ledger } = runInvented(seed, mortality, {
            ...{ steps, keepLedger: true, rowEvery: 1 },
            onRow: (_day, row) => rows.push(Float64Array.from(row)),
          });
          expect(rows).toHaveLength(DAYS + 1);
          for (const row of [...rows, state]) expect(row.every((value) => value >= 0)).toBe(true);
          for (const element of ["C", "N", "P"] as const) {
            expect(closingError(tank.world, tank.start, state, ledger!, element), element).toBeLessThan(1e-9);
          }
        }),
        { seed: 3, numRuns: 60 },
      );
    },
  );
});

test("a row is the state before the events of its day, and the last row the end", () => {
  const { world, start } = inventTank(drawOf(11));
  const rows = new Map<number, Float64Array>();
  const dose = { t: 2, kind: "dose", pool: "NO3", mg: 1000 } as const;
  const options: RunOptions = {
    ...{ days: 3, steps: ENSEMBLE_STEPS, rowEvery: 1 },
    onRow: (day, row) => rows.set(day, Float64Array.from(row)),
  };
  const { state } = run(world, start, [dose], options);
  expect([...rows.keys()]).toEqual([0, 1, 2, 3]);
  expect(rows.get(0)).toEqual(start);
  expect(rows.get(3)).toEqual(state);
  expect(rows.get(3)![2]! - rows.get(2)![2]!).toBeGreaterThan(500);
});

test("a member run alone or in a batch gives the same numbers to the last bit", () => {
  const alone = [21, 22, 23, 24].map((seed) => runInvented(seed, "drawn", {}).state);
  const batch = [24, 21, 23, 22].map((seed) => [seed, runInvented(seed, "drawn", {}).state] as const);
  for (const [seed, state] of batch) expect(state).toEqual(alone[seed - 21]);
});

test("keeping the ledger changes no number", () => {
  const kept = runInvented(31, "drawn", { keepLedger: true });
  expect(kept.state).toEqual(runInvented(31, "drawn", {}).state);
  expect(kept.ledger).not.toBeNull();
});

test("heads stay whole when deaths are drawn, whatever happens", () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const { tank, state } = runInvented(seed, "drawn", {});
      tank.world.species.forEach((_, s) => {
        expect(Number.isInteger(state[headsAt(s)]!)).toBe(true);
      });
    }),
    { seed: 4, numRuns: 60 },
  );
});
