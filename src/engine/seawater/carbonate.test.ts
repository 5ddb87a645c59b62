/** Laws of the carbonate system, on invented waters. Printed and recorded values: checks/. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  celsius,
  micromolePerKilogram as micro,
  microatmosphere,
  phTotal,
  practicalSalinity,
} from "../units/quantity.ts";
import { OutOfRange } from "../units/range.ts";
import { aragoniteSaturation } from "./aragonite.ts";
import { type CarbonatePair, type CarbonateState, carbonateFrom, type Water } from "./carbonate.ts";
import { fugacity, fugacityShare, partialPressure, pressureOfAir } from "./co2.ts";
import {
  calciumPerKilogram,
  meqPerL,
  naturalAlkalinityMeqPerL,
  naturalMgPerL,
  perKilogram,
} from "./composition.ts";
import { fitConfidence } from "./validity.ts";

const REEF: Water = { temperature: celsius(25), salinity: practicalSalinity(35) };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const water = fc
  .record({ t: number(5, 35), s: number(10, 43) })
  .map(({ t, s }): Water => ({ temperature: celsius(t), salinity: practicalSalinity(s) }));
const reefState = fc.record({ a: number(1200, 5000), ph: number(7.2, 8.8), water });

const sameState = (found: CarbonateState, wanted: CarbonateState) => {
  for (const key of Object.keys(wanted) as (keyof CarbonateState)[])
    expect(Math.abs(found[key] / wanted[key] - 1), key).toBeLessThan(1e-8);
};

test("every pair of the four leads to the same water", () => {
  fc.assert(
    fc.property(reefState, ({ a, ph, water }) => {
      const state = carbonateFrom({ alkalinity: micro(a), ph: phTotal(ph) }, water);
      const { alkalinity, dic, fco2 } = state;
      const pairs: CarbonatePair[] = [
        { alkalinity, dic },
        { alkalinity, fco2 },
        { ph: state.ph, dic },
        { ph: state.ph, fco2 },
        { dic, fco2 },
      ];
      for (const pair of pairs) sameState(carbonateFrom(pair, water), state);
    }),
  );
});

test("the parts add up to the whole", () => {
  fc.assert(
    fc.property(reefState, ({ a, ph, water }) => {
      const { dic, co2, bicarbonate, carbonate, alkalinity, borateAlkalinity, hydroxide } = carbonateFrom(
        { alkalinity: micro(a), ph: phTotal(ph) },
        water,
      );
      expect(co2 + bicarbonate + carbonate).toBeCloseTo(dic, 8);
      // The rest is hydrogen, bisulfate and fluoride: a hundredth of a µmol/kg near pH 8.
      expect(bicarbonate + 2 * carbonate + borateAlkalinity + hydroxide).toBeGreaterThan(alkalinity);
      expect(bicarbonate + 2 * carbonate + borateAlkalinity + hydroxide - alkalinity).toBeLessThan(0.2);
    }),
  );
});

test("aragonite rises with calcium, alkalinity and pH", () => {
  fc.assert(
    fc.property(reefState, number(5000, 14_000), number(1.001, 1.2), ({ a, ph, water }, calcium, more) => {
      const at = (alkalinity: number, ph: number) =>
        carbonateFrom({ alkalinity: micro(alkalinity), ph: phTotal(ph) }, water);
      const here = aragoniteSaturation(at(a, ph), water, micro(calcium));
      expect(aragoniteSaturation(at(a, ph), water, micro(calcium * more))).toBeCloseTo(here * more, 9);
      expect(aragoniteSaturation(at(a * more, ph), water, micro(calcium))).toBeGreaterThan(here);
      expect(aragoniteSaturation(at(a, ph + 0.01), water, micro(calcium))).toBeGreaterThan(here);
    }),
  );
});

test("whatever is asked, nothing is thrown but OutOfRange", () => {
  const any = fc.double();
  fc.assert(
    fc.property(
      any,
      any,
      any,
      any,
      fc.constantFrom("ap", "ad", "ac", "pd", "pc", "dc"),
      (x, y, t, s, which) => {
        const pairs: Record<string, CarbonatePair> = {
          ap: { alkalinity: micro(x), ph: phTotal(y) },
          ad: { alkalinity: micro(x), dic: micro(y) },
          ac: { alkalinity: micro(x), fco2: microatmosphere(y) },
          pd: { ph: phTotal(x), dic: micro(y) },
          pc: { ph: phTotal(x), fco2: microatmosphere(y) },
          dc: { dic: micro(x), fco2: microatmosphere(y) },
        };
        const water = { temperature: celsius(t), salinity: practicalSalinity(s) };
        try {
          carbonateFrom(pairs[which] as CarbonatePair, water);
        } catch (error) {
          expect(error).toBeInstanceOf(OutOfRange);
        }
      },
    ),
    { numRuns: 300 },
  );
  // And within the ranges every pair but an impossible one has an answer.
  fc.assert(
    fc.property(number(1, 25_000), number(1, 25_000), number(1, 200_000), water, (a, dic, co2, water) => {
      for (const pair of [
        { alkalinity: micro(a), dic: micro(dic) },
        { alkalinity: micro(a), fco2: microatmosphere(co2) },
      ])
        expect(carbonateFrom(pair, water).alkalinity / a).toBeCloseTo(1, 6);
    }),
  );
});

describe("two that can't go together are refused, with a way out", () => {
  test("less alkalinity than borate and hydroxide alone hold at that pH", () => {
    const asked = () => carbonateFrom({ alkalinity: micro(300), ph: phTotal(9.5) }, REEF);
    expect(asked).toThrow(OutOfRange);
    expect(asked).toThrow(/do not go together/);
  });
  test("less carbon than the CO2 alone", () => {
    expect(() => carbonateFrom({ dic: micro(10), fco2: microatmosphere(1000) }, REEF)).toThrow(/go together/);
  });
  test("a pH ten times too large", () => {
    expect(() => carbonateFrom({ alkalinity: micro(2300), ph: phTotal(81) }, REEF)).toThrow(
      /did you mean 8.1/,
    );
  });
});

test("worked: one dKH more by bicarbonate, carbonate and hydroxide, before any gas exchange", () => {
  // Worked out apart from this code, at 30 digits, before it was written.
  const before = carbonateFrom({ alkalinity: micro(2500), dic: micro(2213) }, REEF);
  expect(before.ph).toBeCloseTo(7.995, 3);
  const dkh = perKilogram(0.35663, REEF);
  const after = (carbon: number) =>
    carbonateFrom({ alkalinity: micro(2500 + dkh), dic: micro(2213 + carbon) }, REEF).ph;
  expect(after(dkh)).toBeCloseTo(7.95, 3);
  expect(after(dkh / 2)).toBeCloseTo(8.193, 3);
  expect(after(0)).toBeCloseTo(8.393, 3);
});

test("CO2: pressure and fugacity are 0.3 % apart, and air of 420 ppm presses with about 407 µatm", () => {
  expect(fugacityShare(celsius(25))).toBeCloseTo(0.9968, 4);
  expect(partialPressure(fugacity(microatmosphere(400), celsius(25)), celsius(25))).toBeCloseTo(400, 10);
  const air = pressureOfAir(420, REEF);
  expect(air).toBeGreaterThan(404);
  expect(air).toBeLessThan(410);
  expect(() => pressureOfAir(0.04, REEF)).toThrow(/400 ppm/);
});

test("composition: the whole salt, and at salinity 33 the sea's own calcium, magnesium and alkalinity", () => {
  const at33 = { ...REEF, salinity: practicalSalinity(33) };
  expect(naturalMgPerL("calcium", at33)).toBeCloseTo(397, 0);
  expect(naturalMgPerL("magnesium", at33)).toBeCloseTo(1237, 0);
  expect(naturalAlkalinityMeqPerL(at33) / 0.356632).toBeCloseTo(6.22, 2);
  expect(meqPerL(perKilogram(2.5, REEF), REEF)).toBeCloseTo(2.5, 12);
  expect(calciumPerKilogram(421.7, REEF)).toBeCloseTo(10_282, -1);
});

test("beyond the fit of the constants a figure is marked, far beyond it is refused", () => {
  expect(fitConfidence("carbonate", celsius(25), practicalSalinity(35))).toBe("fitted");
  expect(fitConfidence("carbonate", celsius(25), practicalSalinity(15))).toBe("low");
  const pair = { alkalinity: micro(2300), ph: phTotal(8) };
  expect(() => carbonateFrom(pair, { ...REEF, salinity: practicalSalinity(2) })).toThrow(/lueker-2000/);
});
