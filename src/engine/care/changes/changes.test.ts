/** Closed forms that another way of reckoning gives too: change by change, by mass, split and joined, there and back. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { celsius, practicalSalinity } from "../../units/quantity.ts";
import { outsideM2 } from "../trouble/warmth.ts";
import {
  changesUntil,
  courseOfChanges,
  leftAt,
  mixed,
  oldLeft,
  oldLeftContinuous,
  settlesAt,
  settlesContinuous,
  shareOfEach,
  shareToSettle,
  volumesUntil,
} from "./dilution.ts";
import { evaporationFromArea, evaporationFromDrift, freshForFall } from "./evaporation.ts";
import { salinitySteps } from "./exchange.ts";
import { contentsOf, mixedOf, saltForNew, saltToRaise, yieldOf } from "./salt.ts";
import { glassKg, holdingWatts, hoursToWarm, lossPerM2 } from "./setting-up.ts";

const level = fc.double({ min: 0.01, max: 500, noNaN: true });
const share = fc.double({ min: 0.01, max: 0.95, noNaN: true });
const count = fc.integer({ min: 1, max: 60 });

describe("dilution", () => {
  test("the closed form is what change after change gives", () => {
    fc.assert(
      fc.property(level, level, share, count, (now, fresh, of, times) => {
        const last = courseOfChanges(now, fresh, 0, of, times).at(-1)!;
        expect(mixed(now, fresh, oldLeft(of, times))).toBeCloseTo(last.after, 8);
      }),
    );
  });

  test("a series split in two is the series", () => {
    fc.assert(
      fc.property(level, level, share, count, count, (now, fresh, of, first, second) => {
        const half = mixed(now, fresh, oldLeft(of, first));
        const whole = mixed(now, fresh, oldLeft(of, first + second));
        expect(mixed(half, fresh, oldLeft(of, second))).toBeCloseTo(whole, 8);
      }),
    );
  });

  test("ever smaller changes of the same litres come to the continuous one, and never fall below it", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 3, noNaN: true }), (volumes) => {
        const steps = 20_000;
        const left = oldLeft(volumes / steps, steps);
        expect(left).toBeLessThanOrEqual(oldLeftContinuous(volumes));
        expect(left).toBeCloseTo(oldLeftContinuous(volumes), 3);
      }),
    );
  });

  test("one large change beats many small of the same litres", () => {
    fc.assert(
      fc.property(share, fc.integer({ min: 2, max: 60 }), (of, times) => {
        expect(oldLeft(of, 1)).toBeLessThan(oldLeft(of / times, times));
      }),
    );
  });

  test("what is worked out to reach a value reaches it", () => {
    fc.assert(
      fc.property(
        level,
        level,
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        share,
        count,
        (now, fresh, way, of, n) => {
          fc.pre(Math.abs(now - fresh) > 1e-6 * now);
          const target = fresh + (now - fresh) * way;
          const left = leftAt(now, fresh, target)!;
          expect(left).toBeCloseTo(way, 6);
          expect(mixed(now, fresh, oldLeft(shareOfEach(left, n), n))).toBeCloseTo(target, 6);
          expect(mixed(now, fresh, oldLeftContinuous(volumesUntil(left)))).toBeCloseTo(target, 6);
          const times = changesUntil(left, of);
          expect(Math.abs(mixed(now, fresh, oldLeft(of, times)) - target)).toBeLessThan(1e-6 * (now + fresh));
        },
      ),
    );
  });

  test("no change leads beyond the new water, nor away from it", () => {
    expect(leftAt(20, 5, 4)).toBeNull();
    expect(leftAt(20, 5, 21)).toBeNull();
    expect(leftAt(20, 20, 10)).toBeNull();
    expect(leftAt(20, 5, 5)).toBe(0);
    expect(leftAt(20, 5, 20)).toBe(1);
  });

  test("a steady rise settles where the closed form says", () => {
    fc.assert(
      fc.property(
        level,
        fc.double({ min: 0, max: 50, noNaN: true }),
        level,
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (fresh, rise, now, of) => {
          const last = courseOfChanges(now, fresh, rise, of, 400).at(-1)!;
          const ends = settlesAt(fresh, rise, of);
          expect(last.before / ends.before).toBeCloseTo(1, 6);
          expect(last.after).toBeCloseTo(ends.after, 6);
          const back = shareToSettle(fresh, rise, ends.before);
          if (rise > 1e-3) expect(back).toBeCloseTo(of, 6);
        },
      ),
    );
    // The continuous one is the limit of small ones.
    expect(settlesAt(2, 0.3 / 1000, 0.05 / 1000).before).toBeCloseTo(settlesContinuous(2, 0.3, 0.05), 2);
  });
});

const psu = fc.double({ min: 0, max: 38, noNaN: true });
const litres = fc.double({ min: 1, max: 2000, noNaN: true });
const T = celsius(25);
const S = practicalSalinity;

describe("salt", () => {
  test("raising in two steps takes the salt of one", () => {
    fc.assert(
      fc.property(litres, psu, fc.double({ min: 0.1, max: 1, noNaN: true }), (volume, from, rise) => {
        const [middle, to] = [from + rise, from + 2 * rise];
        const first = saltToRaise(volume, T, S(from), S(middle));
        const second = saltToRaise(first.litres, T, S(middle), S(to));
        const whole = saltToRaise(volume, T, S(from), S(to));
        expect((first.saltKg + second.saltKg) / whole.saltKg).toBeCloseTo(1, 9);
        expect(second.litres).toBeCloseTo(whole.litres, 6);
      }),
    );
  });

  test("what was mixed has the salinity it was mixed for, and new water is fresh water raised", () => {
    fc.assert(
      fc.property(litres, fc.double({ min: 1, max: 40, noNaN: true }), (volume, to) => {
        const { saltKg, waterL } = saltForNew(volume, T, S(to));
        const raised = saltToRaise(waterL, T, S(0), S(to));
        expect(raised.saltKg / saltKg).toBeCloseTo(1, 9);
        expect(raised.litres / volume).toBeCloseTo(1, 9);
        const { waterKg } = contentsOf(volume, T, S(to));
        expect(mixedOf(waterKg, saltKg, T).psu).toBeCloseTo(to, 9);
      }),
    );
  });

  // Worked by hand from the printed density 1023.343 kg/m3 and 35.16504 g/kg: science notes, section 9.
  test.each([
    [33, 35, 213],
    [30, 35, 531],
    [0, 35, 3634],
  ])("100 L from %d to %d takes %d g", (from, to, grams) => {
    expect(1000 * saltToRaise(100, T, S(from), S(to)).saltKg).toBeCloseTo(grams, -0.5);
  });

  test("a yield gives the mass of the mix it was read from back", () => {
    const { saltKg } = saltToRaise(20, T, S(0), S(35));
    expect((1000 * saltKg) / yieldOf(780, 20, T, S(0), S(35))).toBeCloseTo(780, 6);
  });
});

describe("salinity by steps", () => {
  test("no step is larger than allowed, the last ends at the target, and salt is kept", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 40, noNaN: true }),
        fc.double({ min: 25, max: 40, noNaN: true }),
        fc.double({ min: 0.2, max: 2, noNaN: true }),
        (from, to, perDay) => {
          fc.pre(Math.abs(from - to) > 0.05);
          const other = to > from ? 45 : 0;
          const steps = salinitySteps(200, T, from, to, other, perDay);
          expect(steps.at(-1)!.to).toBeCloseTo(to, 9);
          let { saltKg, waterKg } = contentsOf(200, T, S(from));
          const kg = saltKg + waterKg;
          for (const step of steps) {
            expect(Math.abs(step.to - step.from)).toBeLessThanOrEqual(perDay + 1e-9);
            const out = contentsOf(step.outL, T, S(step.from));
            const put = contentsOf(step.inL, T, S(other));
            saltKg += put.saltKg - out.saltKg;
            waterKg += put.waterKg - out.waterKg;
            expect(saltKg + waterKg).toBeCloseTo(kg, 6);
            expect(mixedOf(waterKg, saltKg, T).psu).toBeCloseTo(step.to, 6);
          }
        },
      ),
    );
  });
});

describe("evaporation", () => {
  const from = (areaM2: number, water: number, room: number, humidity: number, airMs: number) =>
    evaporationFromArea(
      areaM2,
      { temperature: celsius(water), salinity: S(35) },
      { temperature: celsius(room), humidity },
      airMs,
    );

  test("drier, warmer, wider, windier: more; wetter air than over the water: none", () => {
    const usual = from(0.5, 25, 21, 0.5, 0.1);
    expect(from(0.5, 25, 21, 0.4, 0.1)).toBeGreaterThan(usual);
    expect(from(0.5, 26, 21, 0.5, 0.1)).toBeGreaterThan(usual);
    expect(from(1, 25, 21, 0.5, 0.1)).toBeCloseTo(2 * usual, 9);
    expect(from(0.5, 25, 21, 0.5, 0.3)).toBeGreaterThan(usual);
    expect(from(0.5, 20, 30, 0.95, 0.1)).toBe(0);
  });

  // 0.62198 * 3.169 kPa * 0.98 / (101.325 - 3.106) = 0.01967 kg/kg over salt water at 25 °C (steam table, from memory);
  // room of 20 °C and half its 2.339 kPa: 0.00726; 26.9 kg/m2/h by 0.5 m2, 24 h: 4.0 L.
  test("by hand", () => {
    expect(from(0.5, 25, 20, 0.5, 0.1)).toBeCloseTo(4.0, 1);
  });

  test("what drift says left brings the drift back, and fresh water undoes it", () => {
    fc.assert(
      fc.property(litres, fc.double({ min: 30, max: 36, noNaN: true }), share, (volume, from, rise) => {
        const to = from + rise;
        const left = evaporationFromDrift(volume, from, to);
        expect((from * volume) / (volume - left)).toBeCloseTo(to, 9);
        expect(freshForFall(volume - left, to, rise)).toBeCloseTo(left, 9);
      }),
    );
  });
});

describe("setting up", () => {
  test("glass by panes laid side by side", () => {
    // Floor, two long walls on it, two short ones between them.
    const panes = 100 * 50 * 1 + 2 * 100 * 49 * 1 + 2 * 48 * 49 * 1;
    expect(glassKg(100, 50, 50, 10)).toBeCloseTo((panes / 1e6) * 2500, 9);
  });

  test("a heater that only holds never gets there; a stronger one is sooner", () => {
    const holds = holdingWatts(200, 5, 7, 2);
    expect(hoursToWarm(holds, 200, 5, holds)).toBeNull();
    expect(hoursToWarm(2 * holds, 200, 5, holds)!).toBeGreaterThan(hoursToWarm(3 * holds, 200, 5, holds)!);
    expect(hoursToWarm(300, 200, 0, holds)).toBe(0);
  });

  test("the loss in one is the heat it came from, and evaporation only adds", () => {
    const holds = holdingWatts(200, 5, 7, 2);
    expect(lossPerM2(200, 5, holds) * 5 * outsideM2(200)).toBeCloseTo(holds, 9);
    expect(holds).toBeGreaterThan(holdingWatts(200, 5, 7, 0));
  });
});
