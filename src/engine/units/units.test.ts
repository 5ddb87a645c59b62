import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromCanonical, isUnitOf, QUANTITIES, type QuantityKey, toCanonical, unitsOf } from "./convert.ts";
import {
  ammoniaToN,
  nitrateToN,
  nitriteToN,
  nToAmmonia,
  nToNitrate,
  nToNitrite,
  phosphateToP,
  pToPhosphate,
} from "./nutrients.ts";
import { celsius, fahrenheit } from "./quantity.ts";
import { OutOfRange, requireRange } from "./range.ts";
import { celsiusToFahrenheit, fahrenheitToCelsius, fromKelvin, toKelvin, toT68 } from "./temperature.ts";

const KEYS = Object.keys(QUANTITIES) as QuantityKey[];
const EVERY = KEYS.flatMap((key) => unitsOf(key).map((unit) => [key, unit] as const));

describe("the table of units", () => {
  test.each(KEYS)("%s lists its canonical unit first, as itself", (key) => {
    const { canonical } = QUANTITIES[key];
    expect(unitsOf(key)[0]).toBe(canonical);
    expect(toCanonical(key, 12.5, canonical as never)).toBe(12.5);
  });

  test.each(EVERY)("%s in %s comes back as it went", (key, unit) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const back = fromCanonical(key, toCanonical(key, value, unit as never), unit as never);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(300, Math.abs(value)));
      }),
    );
  });

  // Figures of the inputs catalogue and of docs/model/seawater.md, "Units".
  test.each([
    ["volume", 55, "US gal", 208.198, 3],
    ["volume", 55, "imp gal", 250.035, 3],
    ["volume", 1, "US fl oz", 0.0295735, 7],
    ["volume", 1, "in3", 0.0163871, 7],
    ["volume", 1, "ft3", 28.3168, 4],
    ["length", 48, "in", 121.92, 10],
    ["mass", 1, "lb", 453.59237, 10],
    ["temperature", 77, "F", 25, 12],
    ["temperature", 298, "K", 24.85, 10],
    ["no3", 5, "mg/L as N", 22.13, 2],
    ["nitrite", 1, "mg/L as N", 3.2844, 4],
    ["tan", 1.2159, "mg/L as NH3", 1, 4],
    ["tan", 1.2879, "mg/L as NH4", 1, 4],
    ["phosphate", 25, "ug/L as P", 0.0767, 4],
    ["phosphate", 1, "umol/L", 0.09497, 5],
    ["alkalinity", 8, "dKH", 2.853, 3],
    ["alkalinity", 160, "mg/L as CaCO3", 3.197, 3],
    ["calcium", 1, "mg/L as CaCO3", 0.4004, 4],
    ["magnesium", 1, "mg/L as CaCO3", 0.24284, 5],
    ["conductivity", 53000, "uS/cm", 53, 10],
  ] as const)("%s: %d %s is %d", (key, value, unit, canonical, digits) => {
    expect(toCanonical(key as QuantityKey, value, unit as never)).toBeCloseTo(canonical, digits);
  });

  test("a unit of something else is refused by name", () => {
    expect(isUnitOf("volume", "toString")).toBe(false);
    expect(isUnitOf("volume", "US gal")).toBe(true);
    expect(() => toCanonical("volume", 1, "dKH" as never)).toThrow(
      /volume: unit must be one of L, .*received dKH/,
    );
  });
});

test("nutrients: element and molecule, there and back, as the table has it", () => {
  expect(nitrateToN(10)).toBeCloseTo(fromCanonical("no3", 10, "mg/L as N"), 12);
  expect(nitriteToN(1)).toBeCloseTo(fromCanonical("nitrite", 1, "mg/L as N"), 12);
  expect(phosphateToP(1)).toBeCloseTo(fromCanonical("phosphate", 1, "mg/L as P"), 12);
  expect(ammoniaToN(1)).toBeCloseTo(toCanonical("tan", 1, "mg/L as NH3"), 12);
  expect(nToNitrate(nitrateToN(7))).toBeCloseTo(7, 12);
  expect(nToNitrite(nitriteToN(7))).toBeCloseTo(7, 12);
  expect(nToAmmonia(ammoniaToN(7))).toBeCloseTo(7, 12);
  expect(pToPhosphate(phosphateToP(7))).toBeCloseTo(7, 12);
});

test("temperatures: Celsius, Fahrenheit, Kelvin and the scale of 1968", () => {
  expect(fahrenheitToCelsius(fahrenheit(77))).toBe(25);
  expect(celsiusToFahrenheit(celsius(25))).toBe(77);
  expect(fromKelvin(toKelvin(celsius(25)))).toBeCloseTo(25, 12);
  expect(toT68(celsius(25))).toBeCloseTo(25.006, 12);
});

test("a refusal carries its parts as fields", () => {
  const range = { name: "salt", unit: "g", min: 1, max: 2, source: "cook", wayOut: () => "taste it" };
  requireRange("season", [range, 1], [range, 2]);
  try {
    requireRange("season", [range, 1.5], [range, 3]);
    expect.unreachable();
  } catch (error) {
    expect(error).toBeInstanceOf(OutOfRange);
    expect(error).toMatchObject({
      task: "season",
      range,
      value: 3,
      wayOut: "taste it",
      message: "Cannot season as salt must be 1 to 2 g (cook): received 3; taste it",
    });
  }
});
