import { describe, expect, test } from "vitest";
import { RandomStream } from "../numeric/random.ts";
import { headsAt, K, reserveAt } from "./pools.ts";
import { ENSEMBLE_STEPS, type RunResult, run } from "./run.ts";
import { TYPICAL_CREW } from "./test-kit/typical.ts";
import { typicalTank } from "./test-kit/typical-tank.ts";
import { World } from "./world.ts";

const DAYS = 30;
const HEADS = 8;
/** A hard life, so that 30 days hold deaths enough to count. */
const hard = (mortality: "expected" | "drawn") => {
  const { world, start } = typicalTank({ heads: HEADS });
  const { inputs, parameters, unionisedShare } = world;
  const species = TYPICAL_CREW.map((kind) => ({ ...kind, m0: 0.02 }));
  return { world: new World({ inputs, parameters, species, unionisedShare, mortality }), start };
};
const drawn = (seed: number, stream = 0, days = DAYS, keepLedger = false): RunResult => {
  const { world, start } = hard("drawn");
  const random = new RandomStream(seed, stream);
  return run(world, start, [], { days, steps: ENSEMBLE_STEPS, random, keepLedger });
};

describe("drawn deaths", () => {
  test("over many runs the heads left average to the expected mode's, within what drawing allows", () => {
    const RUNS = 400;
    const { world, start } = hard("expected");
    const expected = run(world, start, [], { days: DAYS, steps: ENSEMBLE_STEPS }).state;
    const runs = Array.from({ length: RUNS }, (_, seed) => drawn(seed).state);
    TYPICAL_CREW.forEach((_, s) => {
      const mean = runs.reduce((sum, state) => sum + state[headsAt(s)]!, 0) / RUNS;
      const alive = expected[headsAt(s)]! / HEADS;
      const standardError = Math.sqrt((HEADS * alive * (1 - alive)) / RUNS);
      // 4 standard errors, and a little for what fewer mouths change in the hazard of the rest
      expect(Math.abs(mean - HEADS * alive)).toBeLessThan(4 * standardError + 0.05);
    });
  });

  test("same seed and stream, same result; another seed or another stream, another", () => {
    expect(drawn(7).state).toEqual(drawn(7).state);
    const heads = (seed: number, stream: number) =>
      Array.from({ length: 6 }, (_, i) => drawn(seed + 100 * i, stream).state[headsAt(1)]!);
    expect(heads(7, 0)).not.toEqual(heads(7, 1));
    expect(heads(7, 0)).not.toEqual(heads(8, 0));
  });

  test("bodies and reserve of the drawn dead reach carrion, to the last mg", () => {
    const { state, ledger } = drawn(7, 0, DAYS, true);
    const rows = ledger!.rows();
    TYPICAL_CREW.forEach(({ id, bC, bN, bP }, s) => {
      const dead = HEADS - state[headsAt(s)]!;
      expect(dead).toBeGreaterThan(0);
      for (const [element, body] of [
        ["C", bC],
        ["N", bN],
        ["P", bP],
      ] as const) {
        const row = rows.find((it) => it.name === `the dead, ${id}` && it.element === element);
        expect(row?.mg).toBeCloseTo(dead * body, 8);
      }
      expect(rows.find(({ name }) => name === `reserve of the dead, ${id}`)?.mg).toBeGreaterThan(0);
    });
  });

  test("the midnight of a death lifts carrion by the body and what was left of its reserve", () => {
    const seed = Array.from({ length: 200 }, (_, i) => i).find(
      (i) => drawn(i, 0, 1).state[headsAt(0)]! === HEADS - 1,
    )!;
    const { state } = drawn(seed, 0, 1);
    const kinds = TYPICAL_CREW.length;
    const { bN } = TYPICAL_CREW[0]!;
    const others = HEADS - state[headsAt(1)]!;
    const { world, start } = hard("drawn");
    const nobodyDies = { uniform: () => 1, binomial: () => 0 } as unknown as RandomStream;
    const without = run(world, start, [], { days: 1, steps: ENSEMBLE_STEPS, random: nobodyDies }).state;
    expect(state[K + 1]! - without[K + 1]!).toBeCloseTo(bN + others * TYPICAL_CREW[1]!.bN, 10);
    const perHead = without[reserveAt(0, kinds)]! / HEADS;
    expect(state[reserveAt(0, kinds)]!).toBeCloseTo(perHead * (HEADS - 1), 10);
  });

  test("a world that draws deaths needs a stream", () => {
    const { world, start } = hard("drawn");
    expect(() => run(world, start, [], { days: 1, steps: ENSEMBLE_STEPS })).toThrow(/no random stream/);
  });
});
