/** Closed forms that another way of reckoning gives too: by small steps, by simple cases, there and back. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { afterChange, changesToReach, shareToReach } from "../changes/dilution.ts";
import { daysOfSteps, purifiedToSwap, salinityAfter } from "./salt.ts";
import { LONGEST_HOURS, stillExchange } from "./still-water.ts";
import {
  cooledTo,
  coolingHours,
  hoursToCool,
  outsideM2,
  settlesAboveRoom,
  warmingPerHour,
} from "./warmth.ts";

const level = fc.double({ min: 0.1, max: 100, noNaN: true });
const share = fc.double({ min: 0.01, max: 0.95, noNaN: true });

describe("dilution", () => {
  test("the share that is said brings the level there", () => {
    fc.assert(
      fc.property(level, share, share, (now, goal, fresh) => {
        const [target, water] = [now * goal, now * goal * fresh];
        const change = shareToReach(now, target, water)!;
        expect(afterChange(now, water, change)).toBeCloseTo(target, 9);
      }),
    );
  });

  test("so many changes are enough, and one fewer is not", () => {
    fc.assert(
      fc.property(level, fc.double({ min: 0.05, max: 0.9, noNaN: true }), share, (now, part, each) => {
        const target = now * part;
        const times = changesToReach(now, target, 0, each)!;
        const leftAfter = (n: number) =>
          Array.from({ length: n }).reduce<number>((at) => afterChange(at, 0, each), now);
        expect(leftAfter(times)).toBeLessThanOrEqual(target * (1 + 1e-6));
        expect(leftAfter(times - 1)).toBeGreaterThan(target * (1 - 1e-6));
      }),
    );
  });

  test("water that is no better can't help; what is there needs nothing", () => {
    expect(shareToReach(2, 1, 1.5)).toBeNull();
    expect(changesToReach(2, 1, 1, 0.25)).toBeNull();
    expect(shareToReach(1, 2, 0)).toBe(0);
    expect(changesToReach(1, 0.75, 0, 0.25)).toBe(1);
  });
});

describe("warmth", () => {
  test("a kilowatt hour warms 100 litres by 8.8 degrees", () => {
    // 3.6 MJ / (100 L x 1.0235 kg/L x 3990 J/kg/K)
    expect(warmingPerHour(1000, 100)).toBeCloseTo(3.6e6 / (102.35 * 3990), 1);
  });

  test("cooling step by step comes to the same as the closed form", () => {
    const pace = coolingHours(200, 8);
    let t = 26;
    const step = 0.001;
    for (let h = 0; h < 5; h += step) t -= (step * (t - 15)) / pace;
    expect(cooledTo(26, 15, 5, pace)).toBeCloseTo(t, 3);
    expect(cooledTo(26, 15, hoursToCool(26, 22, 15, pace)!, pace)).toBeCloseTo(22, 9);
  });

  test("a heater that never stops ends where the loss is what it gives", () => {
    const above = settlesAboveRoom(100, 200, 8);
    expect(8 * outsideM2(200) * above).toBeCloseTo(100, 9);
  });

  test("a warm room never cools it so far; a cool tank is there", () => {
    expect(hoursToCool(26, 22, 22, 10)).toBeNull();
    expect(hoursToCool(21, 22, 10, 10)).toBe(0);
  });

  test("large tanks are slower than small ones", () => {
    expect(coolingHours(400, 8)).toBeGreaterThan(coolingHours(40, 8));
  });
});

describe("salinity", () => {
  test("salt stays: there by fresh water, back by evaporation", () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 40, noNaN: true }), share, (psu, part) => {
        const [water, fresh] = [100, 100 * part];
        const thin = salinityAfter(psu, water, fresh);
        expect(thin * (water + fresh)).toBeCloseTo(psu * water, 6);
        expect(salinityAfter(thin, water + fresh, -fresh)).toBeCloseTo(psu, 9);
      }),
    );
  });

  test("what is swapped lowers it to what was asked", () => {
    const swapped = purifiedToSwap(38, 37, 100);
    expect((38 * (100 - swapped)) / 100).toBeCloseTo(37, 9);
    expect(purifiedToSwap(35, 36, 100)).toBe(0);
  });

  test("days of steps, up as down, none where it is there", () => {
    expect(daysOfSteps(30, 33, 1)).toBe(3);
    expect(daysOfSteps(37.2, 36, 1)).toBe(2);
    expect(daysOfSteps(35, 35, 1)).toBe(0);
  });
});

test("still surfaces of twenty runs lie between tall and wide, none twice, no end favoured", () => {
  const all = Array.from({ length: 20 }, (_, run) => stillExchange(run));
  expect(new Set(all).size).toBe(20);
  expect(Math.min(...all)).toBeGreaterThanOrEqual(0.02);
  expect(Math.max(...all)).toBeLessThanOrEqual(0.1);
  const middle = Math.sqrt(0.02 * 0.1);
  expect(all.filter((one) => one < middle).length).toBeGreaterThanOrEqual(8);
  expect(all.filter((one) => one < middle).length).toBeLessThanOrEqual(12);
  expect(LONGEST_HOURS).toBeGreaterThan(24);
});
