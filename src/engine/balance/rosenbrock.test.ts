import { describe, expect, test } from "vitest";
import { run } from "./run.ts";
import { typicalTank } from "./test-kit/typical-tank.ts";

describe("order of the step", () => {
  const DAYS = 4;
  const end = (steps: number): Float64Array => {
    const { world, start } = typicalTank({});
    return run(world, start, [], { days: DAYS, steps: { kind: "fixed", days: DAYS / steps } }).state;
  };
  const reference = end(2048);
  const error = (steps: number): number =>
    Math.max(...end(steps).map((value, pool) => Math.abs(value - reference[pool]!) / (1 + reference[pool]!)));

  test("three: halving the step on a smooth stretch leaves less than a sixth of the error, again and again", () => {
    const errors = [32, 64, 128, 256].map(error);
    for (let i = 1; i < errors.length; i += 1) expect(errors[i - 1]! / errors[i]!).toBeGreaterThan(6);
  });
});

test("a constant flow is carried to rounding: the weights of the stages sum to one", () => {
  const { world, start } = typicalTank({});
  const options = { days: 50, steps: { kind: "fixed", days: 0.5 }, keepLedger: true } as const;
  const rows = run(world, start, [], options).ledger!.rows();
  const fed = rows.filter(({ from, element }) => from === "feed" && element === "N");
  const perDay = world.inputs.feed * world.inputs.feedN;
  expect(fed.reduce((sum, { mg }) => sum + mg, 0)).toBeCloseTo(50 * perDay, 9);
});
