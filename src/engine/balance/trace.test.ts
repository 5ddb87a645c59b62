import { describe, expect, test } from "vitest";
import { headsAt, POOL_INDEX, reserveAt } from "./pools.ts";
import { TYPICAL_CREW, TYPICAL_INPUTS, TYPICAL_PARAMETERS } from "./test-kit/typical.ts";
import { typicalTank } from "./test-kit/typical-tank.ts";
import { type Scenario, scenarioStart, shortUnionisedShare, traceScenario } from "./trace.ts";

const scenario: Scenario = {
  ...{
    id: "three days",
    days: 3,
    tank: TYPICAL_INPUTS,
    parameters: TYPICAL_PARAMETERS,
    species: TYPICAL_CREW,
  },
  initial: { TAN: 20, XA: 20, XN: 20, NO3: 50, PO4: 5, FG: 50, FR: 50, "n.scavenger": 2, "E.scavenger": 8 },
  events: [
    { t: 2, kind: "dose", pool: "NO3", mg: 100 },
    { t: 1, kind: "changeFilter" },
  ],
};

// supply notes 11: shares at 25 °C, S 35
test.each([
  [8.0, 4.2],
  [8.1, 5.2],
  [8.2, 6.5],
  [8.3, 8.0],
])("the traces' short un-ionised share at pH %f is %f %%", (ph, percent) => {
  expect(100 * shortUnionisedShare(25, 35, ph)).toBeCloseTo(percent, 1);
});

describe("a scenario's first state", () => {
  const { world } = typicalTank({});

  test("lies where the world has it", () => {
    const start = scenarioStart(scenario, world);
    expect(start[POOL_INDEX.NO3]).toBe(50);
    expect([start[headsAt(1)], start[reserveAt(1, 2)]]).toEqual([2, 8]);
    expect(start[headsAt(0)]).toBe(0);
  });

  test("names pools only", () => {
    expect(() => scenarioStart({ ...scenario, initial: { NO9: 1 } }, world)).toThrow(
      'Cannot run scenario three days: "NO9" is no pool',
    );
  });
});

test("a trace keeps the ledger of the step it settled on, and takes events in order of day", () => {
  const { daily, ledger, stepDays, lastHalvingChanged } = traceScenario(scenario);
  expect(Object.values(daily).every(({ length }) => length === 4)).toBe(true);
  expect(daily["NO3"]![3]! - daily["NO3"]![2]!).toBeGreaterThan(50);
  const fed = ledger.filter(({ from, element }) => from === "feed" && element === "P");
  expect(fed.reduce((sum, { mg }) => sum + mg, 0)).toBeCloseTo(
    3 * TYPICAL_INPUTS.feed * TYPICAL_INPUTS.feedP,
    9,
  );
  expect(lastHalvingChanged).toBeLessThan(1e-6);
  expect(stepDays).toBeLessThan(0.05);
});
