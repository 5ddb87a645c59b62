/** Bands of independent doubts against drawing them: the short cut may not be narrower than chance. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { aragoniteSaturation } from "../../engine/seawater/aragonite.ts";
import { carbonateFrom } from "../../engine/seawater/carbonate.ts";
import { celsius, micromolePerKilogram, phTotal, practicalSalinity } from "../../engine/units/quantity.ts";
import { cornersOf, independently } from "./spread.ts";

const around = (central: number, by: number) => ({ low: central - by, central, high: central + by });

test("saturation drawn at random lies in the band about 9 times of 10", () => {
  const of = ([a = 0, ph = 0, s = 0]: readonly number[]) => {
    const water = { temperature: celsius(25), salinity: practicalSalinity(s) };
    const state = carbonateFrom({ alkalinity: micromolePerKilogram(a), ph: phTotal(ph) }, water);
    return aragoniteSaturation(state, water);
  };
  const inputs = [around(2600, 137), around(8.05, 0.1), around(35, 1)];
  const band = independently(inputs, of);
  // A fixed stream of normal draws: 5 and 95 % stand at 1.645 deviations.
  let state = 1;
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  let inside = 0;
  for (let i = 0; i < 4000; i += 1) {
    const drawn = of(inputs.map(({ central, high }) => central + ((high - central) / 1.645) * normal()));
    if (drawn >= band.low && drawn <= band.high) inside += 1;
  }
  expect(inside / 4000).toBeGreaterThan(0.88);
  expect(inside / 4000).toBeLessThan(0.92);
  // pH brings the most of it by far.
  expect(band.shares[1]).toBeGreaterThan(2 * (band.shares[0] ?? 0));
  const corners = cornersOf(inputs, of);
  expect(corners.low).toBeLessThan(band.low);
  expect(corners.high).toBeGreaterThan(band.high);
});

test("one doubt alone goes through whole; none leaves the value bare", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -5, max: 5, noNaN: true }),
      fc.double({ min: 0.1, max: 3, noNaN: true }),
      (x, by) => {
        const twice = ([value = 0]: readonly number[]) => -2 * value;
        const band = independently([around(x, by)], twice);
        expect(band.low).toBeCloseTo(-2 * (x + by), 9);
        expect(band.high).toBeCloseTo(-2 * (x - by), 9);
        const bare = independently([around(x, 0)], twice);
        expect(bare.high - bare.low).toBeCloseTo(0, 12);
      },
    ),
  );
});
