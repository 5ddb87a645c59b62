import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  celsius,
  metre,
  millisiemensPerCentimetre,
  phNbs,
  practicalSalinity,
  specificGravity,
} from "../units/quantity.ts";
import { OutOfRange } from "../units/range.ts";
import { unionisedAmmoniaBand, unionisedAmmoniaFraction, unionisedAmmoniaSecondOpinion } from "./ammonia.ts";
import { conductivityOf, salinityFromConductivity } from "./conductivity.ts";
import { density } from "./density.ts";
import { oxygenSaturation, oxygenSaturationSecondOpinion } from "./oxygen.ts";
import { nbsToTotal, totalToNbs } from "./ph-scale.ts";
import { pressureAtAltitude } from "./pressure.ts";
import {
  floatingGravityOf,
  GRAVITY_SCALES,
  gravityOf,
  salinityFromFloatingGravity,
  salinityFromGravity,
} from "./specific-gravity.ts";
import { fitConfidence } from "./validity.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyTemperature = number(-2, 45).map(celsius);
const anySalinity = number(0.1, 45).map(practicalSalinity);
const anyScale = fc.constantFrom(...Object.values(GRAVITY_SCALES));
const reef = { temperature: celsius(25), salinity: practicalSalinity(35) };

describe("there and back", () => {
  test("salinity, through conductivity", () => {
    fc.assert(
      fc.property(anyTemperature, number(0.11, 49.9).map(practicalSalinity), (t, s) => {
        expect(Math.abs(salinityFromConductivity(conductivityOf(t, s), t) - s)).toBeLessThan(1e-10);
      }),
    );
  });

  test("salinity, through specific gravity on any scale", () => {
    fc.assert(
      fc.property(number(8, 45).map(practicalSalinity), anyScale, (s, scale) => {
        expect(Math.abs(salinityFromGravity(gravityOf(s, scale), scale) - s)).toBeLessThan(1e-8);
      }),
    );
  });

  test("salinity, through a floating hydrometer in water of any warmth", () => {
    fc.assert(
      fc.property(
        number(15, 45).map(practicalSalinity),
        number(5, 35).map(celsius),
        anyScale,
        (s, t, scale) => {
          const read = floatingGravityOf(t, s, scale);
          expect(Math.abs(salinityFromFloatingGravity(read, t, scale) - s)).toBeLessThan(1e-8);
        },
      ),
    );
  });

  test("pH, through the total scale", () => {
    fc.assert(
      fc.property(number(6, 10).map(phNbs), anyTemperature, anySalinity, (ph, t, s) => {
        expect(totalToNbs(nbsToTotal(ph, t, s), t, s)).toBeCloseTo(ph, 12);
      }),
    );
  });
});

describe("which way it goes", () => {
  const apart = number(0.05, 5);

  test("more salt conducts better, weighs more and holds less oxygen", () => {
    fc.assert(
      fc.property(anyTemperature, number(0.2, 40), apart, (t, s, more) => {
        const [less, saltier] = [practicalSalinity(s), practicalSalinity(s + more)];
        expect(conductivityOf(t, saltier)).toBeGreaterThan(conductivityOf(t, less));
        expect(density(t, saltier)).toBeGreaterThan(density(t, less));
        expect(oxygenSaturation(t, saltier)).toBeLessThan(oxygenSaturation(t, less));
      }),
    );
  });

  test("warmer water conducts better, weighs less and holds less oxygen", () => {
    fc.assert(
      fc.property(number(5, 40), apart, number(10, 45).map(practicalSalinity), (t, more, s) => {
        const [cool, warm] = [celsius(t), celsius(t + more)];
        expect(conductivityOf(warm, s)).toBeGreaterThan(conductivityOf(cool, s));
        expect(density(warm, s)).toBeLessThan(density(cool, s));
        expect(oxygenSaturation(warm, s)).toBeLessThan(oxygenSaturation(cool, s));
      }),
    );
  });

  test("the un-ionised share rises with pH and warmth, and stays a share", () => {
    const scale = fc.constantFrom("nbs" as const, "total" as const);
    fc.assert(
      fc.property(number(0, 40), number(20, 45), number(6, 9), apart, scale, (t, s, ph, more, on) => {
        const share = unionisedAmmoniaFraction(t, s, ph, on);
        expect(share).toBeGreaterThan(0);
        expect(unionisedAmmoniaFraction(t, s, ph + more, on)).toBeGreaterThan(share);
        expect(unionisedAmmoniaFraction(t + more, s, ph, on)).toBeGreaterThan(share);
        expect(unionisedAmmoniaFraction(t, s, ph + more, on)).toBeLessThan(1);
      }),
    );
  });

  test("higher up, less oxygen: about a sixth less at 1500 m", () => {
    const share =
      oxygenSaturation(reef.temperature, reef.salinity, pressureAtAltitude(metre(1500))) /
      oxygenSaturation(reef.temperature, reef.salinity);
    expect(share).toBeGreaterThan(0.82);
    expect(share).toBeLessThan(0.84);
    expect(pressureAtAltitude(metre(0))).toBe(1);
  });
});

describe("worked values of docs/model/seawater.md", () => {
  test.each([
    [15.56, "60F/60F", 32.59],
    [20, "20/20", 32.9],
    [25, "25/25", 33.19],
  ] as const)("1.025 corrected, scale %s (%s) is salinity %d", (_, scale, salinity) => {
    expect(salinityFromGravity(specificGravity(1.025), GRAVITY_SCALES[scale])).toBeCloseTo(salinity, 2);
  });

  test("a 60 F glass stem in 25 °C water of salinity 35 shows 1.0246", () => {
    const shown = floatingGravityOf(reef.temperature, reef.salinity, GRAVITY_SCALES["60F/60F"]);
    expect(shown).toBeCloseTo(1.0246, 4);
  });

  test("NBS 8.2 at salinity 35 and 25 °C: 6.16 % un-ionised", () => {
    expect(100 * unionisedAmmoniaFraction(25, 35, 8.2, "nbs")).toBeCloseTo(6.16, 2);
    expect(unionisedAmmoniaFraction(25, 35, 8.2, "total")).toBeGreaterThan(0.08);
  });

  test("the band stacks the equation's 15 % on the reading's 0.1", () => {
    const { low, central, high } = unionisedAmmoniaBand(25, 35, 8.2, "nbs");
    expect(low / central).toBeCloseTo(0.85 * 0.806, 2);
    expect(high / central).toBeCloseTo(1.15 * 1.238, 2);
    expect(unionisedAmmoniaBand(25, 35, 13.95, "total").high).toBe(1);
  });
});

test("the second opinions stay as near as the science says", () => {
  fc.assert(
    fc.property(number(5, 35), number(0, 45), (t, s) => {
      const [warmth, salt] = [celsius(t), practicalSalinity(s)];
      expect(
        Math.abs(oxygenSaturation(warmth, salt) - oxygenSaturationSecondOpinion(warmth, salt)),
      ).toBeLessThan(0.0035);
    }),
  );
  fc.assert(
    fc.property(number(20, 30), number(30, 38), number(7.6, 8.6), (t, s, ph) => {
      const ratio = unionisedAmmoniaSecondOpinion(t, s, ph) / unionisedAmmoniaFraction(t, s, ph, "nbs");
      expect(ratio).toBeGreaterThan(1.1);
      expect(ratio).toBeLessThan(1.17);
    }),
  );
});

describe("limits", () => {
  test("beyond the fit a figure is given, low in confidence", () => {
    expect(fitConfidence("conductivity", celsius(25), practicalSalinity(35))).toBe("fitted");
    expect(fitConfidence("conductivity", celsius(36), practicalSalinity(35))).toBe("low");
    expect(fitConfidence("density", celsius(25), practicalSalinity(45))).toBe("low");
    expect(conductivityOf(celsius(25), practicalSalinity(45))).toBeGreaterThan(66);
  });

  test("beyond the limit it is refused, with task, rule, source, value and way out", () => {
    const boil = () => density(celsius(77), practicalSalinity(35));
    expect(boil).toThrow(OutOfRange);
    expect(boil).toThrow(
      "Cannot work out density as temperature must be -2 to 45 °C (millero-poisson-1981): received 77; if that was °F, it is 25.0 °C",
    );
    expect(() => density(celsius(298), practicalSalinity(35))).toThrow(/if that was K, it is 24.85 °C/);
    expect(() => oxygenSaturation(celsius(25), practicalSalinity(53))).toThrow(/conductivity in mS\/cm/);
    expect(() => unionisedAmmoniaFraction(25, 35, 81, "nbs")).toThrow(/did you mean 8.1/);
    expect(() => density(celsius(Number.NaN), practicalSalinity(35))).toThrow(/give a number/);
    expect(() => pressureAtAltitude(metre(8000))).toThrow(/if that was feet, it is 2438 m/);
    expect(() => salinityFromConductivity(millisiemensPerCentimetre(53000), celsius(25))).toThrow(
      /53 mS\/cm/,
    );
  });

  test.each([
    [35, /give it as salinity/],
    [53, /give it as conductivity/],
    [1025, /it is 1.025/],
    [1.05, /1 to 1.045/],
    [0.99, /1 to 1.045/],
  ])("a specific gravity of %d is refused, naming what it probably was", (gravity, why) => {
    const on = GRAVITY_SCALES["25/25"];
    expect(() => salinityFromGravity(specificGravity(gravity), on)).toThrow(why);
    expect(() => salinityFromFloatingGravity(specificGravity(gravity), celsius(25), on)).toThrow(why);
  });

  test("a gravity that only brine or nothing could have is refused", () => {
    expect(() => salinityFromGravity(specificGravity(1.044), GRAVITY_SCALES["25/25"])).toThrow(
      /over 50|50 psu/,
    );
    const warm = () =>
      salinityFromFloatingGravity(specificGravity(1.044), celsius(2), GRAVITY_SCALES["15/4"]);
    expect(warm).toThrow(OutOfRange);
    const light = () =>
      salinityFromFloatingGravity(specificGravity(1.0), celsius(5), GRAVITY_SCALES["25/25"]);
    expect(light).toThrow(/lighter than fresh water/);
  });
});
