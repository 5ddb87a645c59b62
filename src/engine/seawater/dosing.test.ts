/** Stoichiometry of pure salts: laws on invented doses; hand-worked values stand in checks/published. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { celsius, micromolePerKilogram as micro, phTotal, practicalSalinity } from "../units/quantity.ts";
import { OutOfRange } from "../units/range.ts";
import { carbonateFrom, type Water } from "./carbonate.ts";
import {
  CALCIUM_PER_MEQ,
  doseEffect,
  doseFor,
  phAfter,
  type Raised,
  raises,
  salinityRise,
  stepsOf,
} from "./dosing.ts";
import { dryMass, molarMass, REAGENTS, type Reagent } from "./reagents.ts";

const REEF: Water = { temperature: celsius(25), salinity: practicalSalinity(35) };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const reagent = fc.constantFrom(...Object.values(REAGENTS));
const RAISED: readonly Raised[] = ["alkalinity", "calcium", "magnesium"];
const KEY = {
  alkalinity: "alkalinityMeqPerL",
  calcium: "calciumMgPerL",
  magnesium: "magnesiumMgPerL",
} as const;
const BEFORE = carbonateFrom({ alkalinity: micro(2500), ph: phTotal(8) }, REEF);
const ofOneDkh = (of: Reagent) => doseEffect(of, doseFor(of, "alkalinity", 0.35663, 1, 100), 1, 100);

test("a dose reversed gives the change it was made for", () => {
  fc.assert(
    fc.property(
      reagent,
      number(0.001, 200),
      number(0.3, 1),
      number(1, 10_000),
      (of, rise, purity, litres) => {
        for (const what of RAISED.filter((one) => raises(of, one))) {
          const grams = doseFor(of, what, rise, purity, litres);
          expect(doseEffect(of, grams, purity, litres)[KEY[what]] / rise).toBeCloseTo(1, 10);
        }
      },
    ),
  );
});

test("twice the mass, half the purity or half the water do the same", () => {
  fc.assert(
    fc.property(reagent, number(1, 500), number(0.2, 0.5), (of, grams, purity) => {
      const one = doseEffect(of, 2 * grams, purity, 100);
      for (const other of [doseEffect(of, grams, 2 * purity, 100), doseEffect(of, grams, purity, 50)])
        expect(other.saltMgPerL / one.saltMgPerL).toBeCloseTo(1, 12);
    }),
  );
});

test("steps add up to the whole, and none is above the most", () => {
  fc.assert(
    fc.property(number(0, 900), number(1, 500), (whole, most) => {
      const steps = stepsOf(whole, most);
      expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(whole, 6);
      expect(Math.max(...steps)).toBeLessThanOrEqual(most * (1 + 1e-8));
      expect((steps.length - 1) * most).toBeLessThan(whole + most);
    }),
  );
});

test("a hydrate does what its salt does, for more mass", () => {
  const [dry, wet] = [REAGENTS.calcium_chloride, REAGENTS.calcium_chloride_2];
  const ratio = molarMass(wet) / molarMass(dry);
  expect(dryMass(wet)).toBe(dryMass(dry));
  // 75.5 % of the dihydrate is salt.
  expect(1 / ratio).toBeCloseTo(0.755, 3);
  expect(doseFor(wet, "calcium", 10, 1, 100)).toBeCloseTo(ratio * doseFor(dry, "calcium", 10, 1, 100), 12);
});

test("charge is kept: what each salt leaves behind balances", () => {
  fc.assert(
    fc.property(reagent, (of) => {
      const { Na = 0, Ca = 0, Mg = 0, Cl = 0, S = 0 } = of.atoms;
      expect(Na + 2 * Ca + 2 * Mg - Cl - 2 * S).toBe(of.equivalents);
    }),
  );
});

describe("pH of one dKH", () => {
  test("hydroxide lifts it most, carbonate less, bicarbonate lowers it", () => {
    const at = (of: Reagent) => phAfter(BEFORE, ofOneDkh(of), REEF).atOnce;
    expect(at(REAGENTS.sodium_bicarbonate)).toBeLessThan(BEFORE.ph);
    expect(at(REAGENTS.sodium_carbonate)).toBeGreaterThan(BEFORE.ph + 0.15);
    expect(at(REAGENTS.sodium_hydroxide)).toBeGreaterThan(at(REAGENTS.sodium_carbonate));
    expect(at(REAGENTS.calcium_hydroxide)).toBeCloseTo(at(REAGENTS.sodium_hydroxide), 10);
  });

  test("once the gas is as before, all three end alike", () => {
    const ends = [REAGENTS.sodium_bicarbonate, REAGENTS.sodium_carbonate, REAGENTS.sodium_hydroxide].map(
      (of) => phAfter(BEFORE, ofOneDkh(of), REEF).settled,
    );
    expect(Math.max(...ends) - Math.min(...ends)).toBeLessThan(1e-9);
    expect(ends[0]).toBeGreaterThan(BEFORE.ph);
  });

  test("a salt without alkalinity moves it not at all", () => {
    const effect = doseEffect(REAGENTS.calcium_chloride_2, 100, 1, 100);
    expect(phAfter(BEFORE, effect, REEF).atOnce).toBeCloseTo(BEFORE.ph, 9);
  });
});

test("replacing what corals take leaves salt: 20.8 mg/L for each dKH with its calcium", () => {
  const alkalinity = ofOneDkh(REAGENTS.sodium_bicarbonate);
  const calcium = 0.35663 * CALCIUM_PER_MEQ;
  expect(calcium).toBeCloseTo(7.147, 3);
  const grams = doseFor(REAGENTS.calcium_chloride_2, "calcium", calcium, 1, 100);
  const left =
    alkalinity.lastingMgPerL + doseEffect(REAGENTS.calcium_chloride_2, grams, 1, 100).lastingMgPerL;
  expect(left).toBeCloseTo(20.8, 1);
  expect(salinityRise(365 * left, REEF)).toBeCloseTo(7.4, 1);
  expect(doseEffect(REAGENTS.calcium_hydroxide, 10, 1, 100).lastingMgPerL).toBe(0);
});

test("nobody's masses are refused; a salt that brings none is a caller's slip", () => {
  expect(() => doseEffect(REAGENTS.sodium_carbonate, 1, 85, 100)).toThrow(OutOfRange);
  expect(() => doseFor(REAGENTS.sodium_carbonate, "alkalinity", 1, 1, 0)).toThrow(OutOfRange);
  expect(() => stepsOf(100, 1e-9)).toThrow(/larger step/);
  expect(() => doseFor(REAGENTS.sodium_carbonate, "calcium", 1, 1, 100)).toThrow(TypeError);
});
