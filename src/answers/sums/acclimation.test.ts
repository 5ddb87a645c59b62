/** Acclimation: mixing keeps its laws, rates are kept, and the advice turns where ammonia makes a long drip the danger. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_PREFERENCES } from "../../contract/quantity/preferences.ts";
import { type Acclimated, mixed, phOf, stagesOf, unionisedShareOf } from "../../engine/care/acclimation.ts";
import { carbonateFrom } from "../../engine/seawater/carbonate.ts";
import { celsius, micromolePerKilogram, phTotal, practicalSalinity } from "../../engine/units/quantity.ts";
import { plain } from "../sentence.ts";
import { ACCLIMATION } from "./acclimation.ts";
import { askSum } from "./ask.ts";
import type { SumAnswer } from "./sum.ts";

const water = (salinityPsu: number, ph: number, alkalinity: number, tan: number): Acclimated => ({
  ...{ salinityPsu, temperatureC: 25, alkalinity, tan },
  dic: carbonateFrom(
    { alkalinity: micromolePerKilogram(alkalinity), ph: phTotal(ph) },
    { temperature: celsius(25), salinity: practicalSalinity(salinityPsu) },
  ).dic,
});

const anyWater = fc
  .record({
    salinity: fc.double({ min: 20, max: 40, noNaN: true }),
    ph: fc.double({ min: 6.3, max: 8.4, noNaN: true }),
    alkalinity: fc.double({ min: 1500, max: 4500, noNaN: true }),
    tan: fc.double({ min: 0, max: 10, noNaN: true }),
  })
  .map(({ salinity, ph, alkalinity, tan }) => water(salinity, ph, alkalinity, tan));
const litres = fc.double({ min: 0.05, max: 20, noNaN: true });

const close = (a: Acclimated, b: Acclimated): void => {
  expect(a.salinityPsu).toBeCloseTo(b.salinityPsu, 9);
  expect(a.alkalinity).toBeCloseTo(b.alkalinity!, 6);
  expect(a.dic).toBeCloseTo(b.dic!, 6);
  expect(a.tan).toBeCloseTo(b.tan!, 9);
};

describe("mixing", () => {
  test("pouring in two parts gives the water that pouring at once gives", () => {
    fc.assert(
      fc.property(anyWater, anyWater, litres, litres, litres, (bag, tank, v, a, b) => {
        close(mixed(mixed(bag, v, tank, a), v + a, tank, b), mixed(bag, v, tank, a + b));
      }),
    );
  });

  test("the order of the two does not matter, and what was mixed lies between them", () => {
    fc.assert(
      fc.property(anyWater, anyWater, litres, litres, (a, b, v, w) => {
        close(mixed(a, v, b, w), mixed(b, w, a, v));
        const { salinityPsu } = mixed(a, v, b, w);
        expect(salinityPsu).toBeGreaterThanOrEqual(Math.min(a.salinityPsu, b.salinityPsu) - 1e-9);
        expect(salinityPsu).toBeLessThanOrEqual(Math.max(a.salinityPsu, b.salinityPsu) + 1e-9);
      }),
    );
  });
});

describe("stages", () => {
  const plan = (bag: Acclimated, tank: Acclimated, way: "steps" | "drip", bagL = 1) => ({
    ...{ bag, tank, way, bagL, psuPerHour: 4, restPsu: 1, everyMinutes: 15 },
  });

  test("end at the rest, and none changes salinity faster than told", () => {
    fc.assert(
      fc.property(anyWater, anyWater, litres, fc.constantFrom("steps", "drip"), (bag, tank, bagL, way) => {
        const stages = stagesOf(plan(bag, tank, way as "steps" | "drip", bagL));
        let before = bag.salinityPsu;
        for (const { water: after, volumeL } of stages) {
          expect(Math.abs(after.salinityPsu - before)).toBeLessThanOrEqual(1 + 1e-6);
          expect(volumeL).toBeGreaterThanOrEqual(bagL - 1e-9);
          before = after.salinityPsu;
        }
        const left = Math.abs(tank.salinityPsu - before);
        expect(left).toBeLessThanOrEqual(1 + 1e-6);
        if (stages.length > 0) expect(left).toBeCloseTo(1, 6);
      }),
    );
  });

  test("steps and drip reach the same water; steps keep the volume, a drip throws nothing away", () => {
    fc.assert(
      fc.property(anyWater, anyWater, litres, (bag, tank, bagL) => {
        const steps = stagesOf(plan(bag, tank, "steps", bagL));
        const drip = stagesOf(plan(bag, tank, "drip", bagL));
        for (const [i, one] of steps.entries()) close(one.water, drip[i]!.water);
        const last = steps.at(-1);
        if (last === undefined) return;
        expect(last.volumeL).toBeCloseTo(bagL, 9);
        expect(drip.at(-1)!.volumeL).toBeCloseTo(bagL + drip.reduce((sum, { inL }) => sum + inL, 0), 6);
      }),
    );
  });

  test("a bag of the tank's own water needs none", () => {
    const tank = water(35, 8.05, 2500, 0);
    expect(stagesOf(plan(tank, tank, "steps"))).toEqual([]);
  });

  test("as pH rises through the stages, the un-ionised share rises at every one", () => {
    const bag = water(31, 6.8, 2500, 3);
    const shares = stagesOf(plan(bag, water(35, 8.05, 2500, 0), "steps")).map(
      (one) => unionisedShareOf(one.water)!,
    );
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares[0]!).toBeGreaterThan(unionisedShareOf(bag)!);
  });

  test("pH of one part in five is solved from the alkalinity and carbon that mixed, not the mean of two readings", () => {
    const [a, b] = [water(35, 6.8, 2500, 0), water(35, 8.1, 2500, 0)];
    const part = mixed(a, 4, b, 1);
    const solved = carbonateFrom(
      { alkalinity: micromolePerKilogram(2500), dic: micromolePerKilogram((4 * a.dic! + b.dic!) / 5) },
      { temperature: celsius(25), salinity: practicalSalinity(35) },
    ).ph;
    expect(phOf(part)).toBeCloseTo(solved, 9);
    expect(phOf(part)).not.toBeCloseTo((4 * 6.8 + 8.1) / 5, 2);
  });
});

describe("the sum", () => {
  const ask = (typed: Record<string, string>): SumAnswer => {
    const asked = askSum(ACCLIMATION, typed, {
      preferences: NO_PREFERENCES,
      today: "2026-11-27",
      tank: null,
    });
    if (!asked.ok || asked.answer.kind !== "answer") throw new Error(JSON.stringify(asked));
    return asked.answer;
  };
  const value = (answer: SumAnswer, name: string): number =>
    answer.figures.find(({ id }) => id === `sum.acclimation.${name}`)!.spread.central;
  const base = { group: "snail", bag_salinity: "32 psu", salinity: "35 psu", temperature: "25 C" };
  const tested = { ...base, bag_ph: "7.0", ph: "8.2", bag_ammonia: "3 mg/L as N", hours: "20 h" };

  test.each([
    [{ temperature: "25 C" }, { temperature: "77 F" }],
    [{ bag_volume: "1 L" }, { bag_volume: "0.2641720524 US gal" }],
    [{ bag_ammonia: "3 mg/L as N" }, { bag_ammonia: "3.64775 mg/L as NH3" }],
  ])("unit of entry does not matter: %o and %o", (one, other) => {
    const [a, b] = [ask({ ...tested, ...one }), ask({ ...tested, ...other })];
    for (const { id, spread } of a.figures) {
      const same = b.figures.find((figure) => figure.id === id)!;
      expect(same.spread.central).toBeCloseTo(spread.central, 4);
    }
  });

  test("the narrow ones take longer than the hardy", () => {
    const minutes = (group: string) => value(ask({ ...base, group }), "minutes");
    expect(minutes("shrimp")).toBeGreaterThan(minutes("snail"));
    expect(minutes("snail")).toBeGreaterThan(minutes("fish"));
  });

  test("near waters after a short trip: float and move", () => {
    expect(plain(ask({ ...base, bag_salinity: "34.8 psu", hours: "1 h" }).lead)).toMatch(/near enough/);
  });

  test("long shipped, or ammonia that would turn poisonous: no long drip in the bag's water", () => {
    expect(plain(ask({ ...base, hours: "1 h" }).lead)).toMatch(/over 30 minutes/);
    expect(plain(ask({ ...base, hours: "20 h" }).lead)).toMatch(/at once into clean water/);
    expect(plain(ask(tested).lead)).toMatch(/at once into clean water/);
    expect(plain(ask({ ...tested, bag_salinity: "34.6 psu" }).lead)).toMatch(/at once: no long drip/);
    // tested, and little of it: hours alone do not forbid the stages
    expect(plain(ask({ ...tested, bag_ammonia: "0.1 mg/L as N" }).lead)).toMatch(/to the tank's water over/);
  });

  test("opened and aired, the bag's ammonia is many times as poisonous as in the closed bag", () => {
    const answer = ask(tested);
    expect(value(answer, "aired") / value(answer, "closed")).toBeGreaterThan(8);
    expect(value(answer, "peak")).toBeLessThan(value(answer, "aired"));
    expect(value(answer, "peak")).toBeGreaterThan(value(answer, "closed"));
  });

  test("the bag's water is never poured in, whatever was typed", () => {
    for (const typed of ACCLIMATION.examples)
      expect(ask(typed).cautions[0]).toMatch(/Never pour the bag's water/);
  });
});
