import { describe, expect, test } from "vitest";
import { dawnOxygen, hoursToAlarm, oxygenDemand, STILL_EXCHANGE_PER_H } from "./oxygen.ts";
import { POOL_INDEX } from "./pools.ts";
import { typicalTank } from "./test-kit/typical-tank.ts";

const SATURATION = 6.7;
const ALARM = 4.6;

describe("who uses oxygen", () => {
  test("fish alone: 220 mg a kilogram and hour at 25 °C, 2.4 times as much ten degrees up", () => {
    const fishOnly = (T: number) => {
      const { world } = typicalTank({ inputs: { T, fish: 10, feed: 0 }, heads: 0 });
      return oxygenDemand(world, new Float64Array(world.size));
    };
    const { fish, ...rest } = fishOnly(25);
    expect(fish).toBeCloseTo(0.01 * 220 * 24, 10);
    expect(Object.values(rest)).toEqual([0, 0, 0, 0]);
    expect(fishOnly(35).fish / fish).toBeCloseTo(2.4, 10);
  });

  test("a carcass alone: oxygen for the carbon that becomes mineral", () => {
    const { world } = typicalTank({ inputs: { T: 25, fish: 0, feed: 0 }, heads: 0 });
    const y = new Float64Array(world.size);
    y[POOL_INDEX.KC] = 100;
    const { kK, domK, crumbK } = world.parameters;
    expect(oxygenDemand(world, y).decay).toBeCloseTo(2.67 * 100 * kK * (1 - domK - crumbK), 10);
  });

  test("ammonia to nitrate takes 4.57 mg a mg of nitrogen", () => {
    const { world, start } = typicalTank({ inputs: { T: 25 } });
    const oxidised = (pool: "TAN" | "NO2", capacity: "XA" | "XN", half: number) => {
      const mgPerL = start[POOL_INDEX[pool]]! / world.inputs.V;
      return (start[POOL_INDEX[capacity]]! * mgPerL) / (half + mgPerL);
    };
    const { KT, KI } = world.parameters;
    const expected = 3.43 * oxidised("TAN", "XA", KT) + 1.14 * oxidised("NO2", "XN", KI);
    expect(oxygenDemand(world, start).nitrification).toBeCloseTo(expected, 10);
  });

  test("a tank without crew has none of its demand; one with crew has", () => {
    const bare = typicalTank({ heads: 0 });
    const kept = typicalTank({ heads: 3 });
    expect(oxygenDemand(bare.world, bare.start).crew).toBe(0);
    expect(oxygenDemand(kept.world, kept.start).crew).toBeGreaterThan(0);
  });
});

describe("dawn", () => {
  test("saturation less what a night's demand outruns gas exchange by", () => {
    const { world, start } = typicalTank({ inputs: { kLa: 0.8, V: 100 } });
    const dawn = dawnOxygen(world, start, SATURATION);
    const parts = Object.values(dawn.demand).reduce((sum, part) => sum + part, 0);
    expect(dawn.demandMgPerDay).toBeCloseTo(parts, 10);
    expect(dawn.dawnMgPerL).toBeCloseTo(SATURATION - parts / (24 * 0.8 * 100), 10);
  });

  test("better gas exchange brings it nearer saturation; it never goes below nought", () => {
    const at = (kLa: number) => {
      const { world, start } = typicalTank({ inputs: { kLa } });
      return dawnOxygen(world, start, SATURATION).dawnMgPerL;
    };
    expect(at(3)).toBeGreaterThan(at(0.8));
    expect(at(3)).toBeLessThan(SATURATION);
    expect(at(1e-4)).toBe(0);
  });
});

describe("pumps off", () => {
  const { world, start } = typicalTank({ inputs: { V: 40, fish: 20 } });
  const { V } = world.inputs;
  const dawn = dawnOxygen(world, start, SATURATION);

  test("hours by the formula are those of following the water minute by minute", () => {
    const exchange = 0.05;
    let level = dawn.dawnMgPerL;
    let minutes = 0;
    for (; level > ALARM; minutes += 1) {
      level += (exchange * (SATURATION - level) - dawn.demandMgPerDay / (24 * V)) / 60;
    }
    const answer = hoursToAlarm(dawn, V, exchange, ALARM);
    expect(answer.kind === "hours" && Math.abs(answer.hours - minutes / 60) < 0.05).toBe(true);
  });

  test("a stiller surface leaves less time", () => {
    const hours = (exchange: number) => {
      const answer = hoursToAlarm(dawn, V, exchange, ALARM);
      return answer.kind === "hours" ? answer.hours : Number.POSITIVE_INFINITY;
    };
    expect(hours(STILL_EXCHANGE_PER_H.low)).toBeLessThan(hours(STILL_EXCHANGE_PER_H.high));
    expect(hours(STILL_EXCHANGE_PER_H.low)).toBeGreaterThan(0);
  });

  test("a big tank with little in it is never in alarm; one in alarm at dawn has no time at all", () => {
    const calm = { ...dawn, demandMgPerDay: 10 };
    expect(hoursToAlarm(calm, 1000, 0.1, ALARM).kind).toBe("never");
    expect(hoursToAlarm({ ...dawn, dawnMgPerL: 4 }, V, 0.1, ALARM)).toEqual({ kind: "hours", hours: 0 });
  });
});
