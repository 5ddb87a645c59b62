import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { rateCount } from "./kernel.ts";
import { Ledger } from "./ledger.ts";
import { POOL_COUNT } from "./pools.ts";
import { patankarEuler } from "./positivity.ts";
import { Stepper } from "./rosenbrock.ts";
import { run } from "./run.ts";
import { closingError } from "./test-kit/closing-error.ts";
import { drawOf } from "./test-kit/draw.ts";
import { inventTank } from "./test-kit/invented-world.ts";
import { typicalTank } from "./test-kit/typical-tank.ts";

describe("one Patankar-Euler step by itself", () => {
  test.each([1, 50])("over %d days: nothing below zero, nothing lost, in any tank", (h) => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { world, start } = inventTank(drawOf(seed));
        const end = Float64Array.from(start);
        const ledger = new Ledger(world, rateCount(world.species.length));
        ledger.addStep(patankarEuler(new Stepper(world), end, h), h);
        expect(end.every((value) => value >= 0)).toBe(true);
        for (const element of ["C", "N", "P"] as const) {
          expect(closingError(world, start, end, ledger, element), element).toBeLessThan(1e-12);
        }
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  test("a sorbent beyond its capacity gives phosphate back without going below zero", () => {
    const { world, start } = typicalTank({ parameters: { capSorb: 1, kSorb: 10 }, state: { PSB: 50 } });
    patankarEuler(new Stepper(world), start, 50);
    expect(start.every((value) => value >= 0)).toBe(true);
  });

  test("of order one: half the step, half the error", () => {
    const DAYS = 0.5;
    const reference = (() => {
      const { world, start } = typicalTank({});
      return run(world, start, [], { days: DAYS, steps: { kind: "fixed", days: 1 / 256 } }).state;
    })();
    const error = (steps: number): number => {
      const { world, start } = typicalTank({});
      const stepper = new Stepper(world);
      for (let i = 0; i < steps; i += 1) patankarEuler(stepper, start, DAYS / steps);
      return Math.max(
        ...start
          .slice(0, POOL_COUNT)
          .map((v, pool) => Math.abs(v - reference[pool]!) / (1 + reference[pool]!)),
      );
    };
    const errors = [256, 512, 1024].map(error);
    for (let i = 1; i < errors.length; i += 1) {
      expect(errors[i - 1]! / errors[i]!).toBeGreaterThan(1.8);
      expect(errors[i - 1]! / errors[i]!).toBeLessThan(2.2);
    }
  });
});

describe("where the guard has to act", () => {
  // thick hungry film over almost no nutrient, a strong filter, and steps far too long for either
  const starved = () =>
    typicalTank({
      inputs: { V: 10 },
      parameters: { kFil: 60, vN: 20, vP: 20, muFilm: 3 },
      state: { TAN: 0.5, NO3: 0.01, PO4: 0.001, FG: 400, FR: 400, SC: 500, SN: 60, SP: 6 },
    });

  test.each([2, 10, 50])("steps of %d days: it acts, nothing goes below zero, nothing is lost", (days) => {
    const { world, start } = starved();
    const { state, guard, ledger } = run(world, start, [], {
      ...{ days: 50, steps: { kind: "fixed", days }, keepLedger: true },
    });
    expect(guard.halved + guard.patankar).toBeGreaterThan(0);
    expect(state.every((value) => value >= 0)).toBe(true);
    for (const element of ["C", "N", "P"] as const) {
      expect(closingError(starved().world, start, state, ledger!, element), element).toBeLessThan(1e-9);
    }
  });

  test("it throws rather than go on with what is no number", () => {
    const { world, start } = typicalTank({ state: { TAN: Number.NaN } });
    const options = { days: 1, steps: { kind: "fixed", days: 1 } } as const;
    expect(() => run(world, start, [], options)).toThrow(RangeError);
  });
});
