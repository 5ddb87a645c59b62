import { describe, expect, test } from "vitest";
import { applyEvent, disturbs, type TankEvent } from "./events.ts";
import { rateCount } from "./kernel.ts";
import { inventory, Ledger, netFromOutside } from "./ledger.ts";
import { headsAt, POOL_INDEX, POOLS, type Pool, reserveAt } from "./pools.ts";
import { drawOf } from "./test-kit/draw.ts";
import { EVENT_KINDS, inventEvents } from "./test-kit/invented-events.ts";
import { inventTank } from "./test-kit/invented-world.ts";
import { TYPICAL_CREW } from "./test-kit/typical.ts";
import { typicalTank } from "./test-kit/typical-tank.ts";

const [GRAZER] = TYPICAL_CREW as [(typeof TYPICAL_CREW)[number]];
const KINDS = TYPICAL_CREW.length;
const RESERVE = reserveAt(0, KINDS);

function applied(event: TankEvent) {
  const { world, start } = typicalTank({});
  const y = Float64Array.from(start);
  const ledger = new Ledger(world, rateCount(KINDS));
  applyEvent(world, y, event, ledger);
  const pool = (name: Pool) => y[POOL_INDEX[name]]!;
  const was = (name: Pool) => start[POOL_INDEX[name]]!;
  return { world, start, y, rows: ledger.rows(), pool, was };
}

test("the inventions hold every kind of event", () => {
  const met = new Set<string>();
  for (let seed = 0; seed < 100; seed += 1) {
    const draw = drawOf(seed);
    for (const { kind } of inventEvents(draw, inventTank(draw).world, 10)) met.add(kind);
  }
  expect([...met].sort()).toEqual([...EVENT_KINDS].sort());
});

describe("what an event does", () => {
  test("a water change dilutes what floats and brings what the new water holds; the siphon takes detritus", () => {
    const { world, pool, was, start, y } = applied({
      ...{ t: 0, kind: "waterChange", fraction: 0.25, siphon: 0.5 },
      ...{ newNO3N: 0.4, newPO4P: 0.02, newTAN: 0.1 },
    });
    const litres = 0.25 * world.inputs.V;
    expect(pool("NO3")).toBeCloseTo(0.75 * was("NO3") + 0.4 * litres, 10);
    expect(pool("PO4")).toBeCloseTo(0.75 * was("PO4") + 0.02 * litres, 10);
    expect(pool("TAN")).toBeCloseTo(0.75 * was("TAN") + 0.1 * litres, 10);
    for (const name of ["NO2", "SC", "SN", "SP", "OC", "ON", "OP"] as const) {
      expect(pool(name)).toBeCloseTo(0.75 * was(name), 10);
    }
    for (const name of ["DC", "DN", "DP", "RC", "RN", "RP"] as const) {
      expect(pool(name)).toBeCloseTo(0.5 * was(name), 10);
    }
    const touched = new Set(["NO3", "PO4", "TAN", "NO2", ..."SOD".split(""), "R"]);
    POOLS.forEach((name, at) => {
      if (!touched.has(name) && !touched.has(name.charAt(0))) expect(y[at], name).toBe(start[at]);
    });
  });

  test("wiped film floats, with its nitrogen and phosphorus, as far as it is not taken out", () => {
    const { pool, was, world } = applied({ t: 0, kind: "wipeGlass", fraction: 0.8, removed: 0.25 });
    const loose = 0.8 * 0.75 * was("FG");
    expect(pool("FG")).toBeCloseTo(0.2 * was("FG"), 10);
    expect(pool("SC") - was("SC")).toBeCloseTo(loose, 10);
    expect(pool("SN") - was("SN")).toBeCloseTo(loose * world.parameters.qNfilm, 10);
    expect(pool("SP") - was("SP")).toBeCloseTo(loose * world.parameters.qPfilm, 10);
  });

  test.each([
    ["removeFilaments", "FF"],
    ["harvestRefugium", "MA"],
  ] as const)("%s takes its share of %s out", (kind, name) => {
    const { pool, was } = applied({ t: 0, kind, fraction: 0.3 });
    expect(pool(name)).toBeCloseTo(0.7 * was(name), 10);
  });

  test.each([
    ["changeFilter", "MC"],
    ["renewSorbent", "PSB"],
  ] as const)("%s empties %s", (kind, name) => {
    expect(applied({ t: 0, kind }).pool(name)).toBe(0);
  });

  test("arrivals bring the reserve of their condition, 0.6 where nobody says", () => {
    const { y, start } = applied({ t: 0, kind: "addAnimals", species: GRAZER.id, count: 2 });
    expect(y[headsAt(0)]! - start[headsAt(0)]!).toBe(2);
    expect(y[RESERVE]! - start[RESERVE]!).toBeCloseTo(2 * 0.6 * GRAZER.eFull, 10);
    const thin = applied({ t: 0, kind: "addAnimals", species: GRAZER.id, count: 1, condition: 0.1 });
    expect(thin.y[RESERVE]! - thin.start[RESERVE]!).toBeCloseTo(0.1 * GRAZER.eFull, 10);
  });

  test("a body found leaves no carrion; one not found leaves all of it, with its reserve", () => {
    const found = applied({ t: 0, kind: "crewDeath", species: GRAZER.id, count: 1, found: true });
    expect(found.y[headsAt(0)]).toBe(2);
    expect(found.pool("KN")).toBe(found.was("KN"));
    const lost = applied({ t: 0, kind: "crewDeath", species: GRAZER.id, count: 1, found: false });
    expect(lost.pool("KN") - lost.was("KN")).toBeCloseTo(GRAZER.bN, 10);
    expect(lost.pool("KC") - lost.was("KC")).toBeCloseTo(GRAZER.bC + 0.6 * GRAZER.eFull, 10);
    expect(lost.y[RESERVE]).toBeCloseTo(found.y[RESERVE]!, 10);
  });

  test("no more animals leave than there are, and none are left with a reserve", () => {
    const { y } = applied({ t: 0, kind: "removeAnimals", species: GRAZER.id, count: 99 });
    expect(y[headsAt(0)]).toBe(0);
    expect(y[RESERVE]).toBe(0);
  });

  test("a fish not found rots whole, even one bigger than the tank was said to hold", () => {
    const { world, pool, was } = applied({ t: 0, kind: "fishDeath", grams: 10, found: false });
    expect(world.inputs.fish).toBe(0);
    expect(pool("KN") - was("KN")).toBeCloseTo(10 * world.parameters.fishNperG, 10);
  });

  test("stirring lifts sand's detritus into the water and keeps every mg", () => {
    const { pool, was } = applied({ t: 0, kind: "stirSand", fraction: 0.4 });
    expect(pool("SN") - was("SN")).toBeCloseTo(0.4 * (was("DN") + was("RN")), 10);
    expect(pool("DC")).toBeCloseTo(0.6 * was("DC"), 10);
  });

  test("a dark day stops the light and nothing else", () => {
    const { world, y, start } = applied({ t: 0, kind: "set", light: 0 });
    expect(world.inputs.light).toBe(0);
    expect(y).toEqual(start);
  });
});

test.each(POOLS)("a dose of %s enters the ledger as the elements it holds", (pool) => {
  const { world, start, y, rows } = applied({ t: 0, kind: "dose", pool, mg: 7 });
  expect(y[POOL_INDEX[pool]]! - start[POOL_INDEX[pool]]!).toBeCloseTo(7, 10);
  for (const element of ["C", "N", "P"] as const) {
    const change = inventory(world, y, element) - inventory(world, start, element);
    expect(netFromOutside(rows, element), element).toBeCloseTo(change, 9);
  }
});

test("an unknown kind of animal is a caller's mistake", () => {
  expect(() => applied({ t: 0, kind: "crewDeath", species: "nobody", count: 1, found: true })).toThrow(
    'Cannot apply crewDeath: the run holds no kind "nobody"',
  );
});

test("emptying a filter or a refugium starts no new transient", () => {
  expect(disturbs({ t: 0, kind: "changeFilter" })).toBe(false);
  expect(disturbs({ t: 0, kind: "harvestRefugium", fraction: 0.5 })).toBe(false);
  expect(disturbs({ t: 0, kind: "stirSand", fraction: 0.5 })).toBe(true);
});
