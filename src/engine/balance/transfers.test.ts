import fc from "fast-check";
import { expect, test } from "vitest";
import { derivatives, rateCount, Scratch } from "./kernel.ts";
import { FG, headsAt, MA, POOL_COUNT, POOLS, reserveAt, XA, XN } from "./pools.ts";
import { drawOf } from "./test-kit/draw.ts";
import { inventTank } from "./test-kit/invented-world.ts";
import { transfersOf } from "./transfers.ts";
import { ALGA, type World } from "./world.ts";

interface Assembled {
  readonly net: Float64Array;
  /** Sum of what went in and out of each place, the measure of a rounding error. */
  readonly gross: Float64Array;
}

function assemble(world: World, rates: Float64Array, element: "C" | "N" | "P" | "own"): Assembled {
  const net = new Float64Array(world.size);
  const gross = new Float64Array(world.size);
  const isAlga = (place: number) => place >= FG && place <= MA;
  for (const transfer of transfersOf(world)) {
    const amount = transfer.per * rates[transfer.rate]!;
    const counts = (place: number) =>
      element === "own" ? transfer.element === "C" || !isAlga(place) : transfer.element === element;
    for (const [place, sign] of [
      [transfer.from, -1],
      [transfer.to, 1],
    ] as const) {
      if (typeof place !== "number" || !counts(place)) continue;
      net[place] = net[place]! + sign * amount;
      gross[place] = gross[place]! + Math.abs(amount);
    }
  }
  return { net, gross };
}

test("the table of transfers adds up to the kernel's derivatives, pool by pool", () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const { world, start } = inventTank(drawOf(seed));
      const kinds = world.species.length;
      const dy = new Float64Array(world.size);
      const rates = new Float64Array(rateCount(kinds));
      derivatives(world, start, dy, new Scratch(kinds), false, rates);
      const { net, gross } = assemble(world, rates, "own");
      for (let pool = 0; pool < POOL_COUNT; pool += 1) {
        if (pool === XA || pool === XN) continue;
        expect(Math.abs(net[pool]! - dy[pool]!), POOLS[pool]).toBeLessThanOrEqual(1e-10 * gross[pool]!);
      }
      for (let s = 0; s < kinds; s += 1) {
        const at = reserveAt(s, kinds);
        expect(Math.abs(net[at]! - dy[at]!)).toBeLessThanOrEqual(1e-10 * gross[at]!);
        expect(dy[headsAt(s)]! <= 0).toBe(true);
      }
      // the nitrogen and phosphorus that an alga implies move with its carbon
      for (const [element, content] of [
        ["N", ALGA.qN],
        ["P", ALGA.qP],
      ] as const) {
        const implied = assemble(world, rates, element);
        for (let crop = FG; crop <= MA; crop += 1) {
          const held = world.alga[(crop - FG) * ALGA.stride + content]!;
          expect(Math.abs(implied.net[crop]! - held * dy[crop]!)).toBeLessThanOrEqual(
            1e-10 * implied.gross[crop]!,
          );
        }
      }
    }),
    { seed: 1, numRuns: 150 },
  );
});

test("asking for the Jacobian or the rates changes no derivative", () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const { world, start } = inventTank(drawOf(seed));
      const kinds = world.species.length;
      const plain = new Float64Array(world.size);
      const full = new Float64Array(world.size);
      derivatives(world, start, plain, new Scratch(kinds), false, null);
      derivatives(world, start, full, new Scratch(kinds), true, new Float64Array(rateCount(kinds)));
      expect(full).toEqual(plain);
    }),
    { seed: 2, numRuns: 50 },
  );
});
