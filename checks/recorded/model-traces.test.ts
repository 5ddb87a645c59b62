/**
 * The balance against reference traces: eight invented scenarios integrated by two other implementations
 * (explicit Dormand-Prince at 1e-11; Radau at 1e-10) of the same equations. Recorded in model-traces.json;
 * how they were made stands in that file. Pass rule: its own `compare` line.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { netFromOutside } from "../../src/engine/balance/ledger.ts";
import { type Scenario, traceScenario } from "../../src/engine/balance/trace.ts";

interface Recorded extends Scenario {
  readonly daily: Record<string, number[]>;
  readonly outsideAtEnd: Record<string, number>;
}
const { scenarios } = JSON.parse(readFileSync(new URL("./model-traces.json", import.meta.url), "utf8")) as {
  scenarios: Recorded[];
};

const EVENT_FLUXES =
  /^(added|taken out|glass|water change|siphon|dosed|carrion|filter cleaned|algae pulled|refugium|sorbent renewed|fish dead)/;

describe.each(scenarios)("$id", (scenario) => {
  const trace = traceScenario(scenario);

  test("every pool on every day agrees to 1e-6", () => {
    let worst = 0;
    for (const [name, reference] of Object.entries(scenario.daily)) {
      const most = reference.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
      reference.forEach((value, day) => {
        const allowed = 1e-6 * Math.abs(value) + 1e-6 * most;
        const off = Math.abs(trace.daily[name]![day]! - value);
        if (off > 0) worst = Math.max(worst, off / allowed);
      });
    }
    expect(worst).toBeLessThan(1);
  });

  test("the ledger's exchanges with outside places agree", () => {
    const continuous = trace.ledger.filter(({ name }) => !EVENT_FLUXES.test(name));
    const outside = new Map<string, number>();
    for (const { element, from, to, mg } of continuous) {
      outside.set(`${to}.${element}`, (outside.get(`${to}.${element}`) ?? 0) + mg);
      outside.set(`${from}.${element}`, (outside.get(`${from}.${element}`) ?? 0) - mg);
    }
    for (const [place, value] of Object.entries(scenario.outsideAtEnd)) {
      // `dead` also takes the bodies that a crewDeath event leaves, which the reference keeps apart
      if (place.startsWith("dead") && scenario.events.some(({ kind }) => kind === "crewDeath")) continue;
      expect(outside.get(place) ?? 0, place).toBeCloseTo(
        value,
        value === 0 ? 6 : 5 - Math.floor(Math.log10(Math.abs(value))) - 1,
      );
    }
  });

  test("the guard never had to act", () => {
    expect(trace.guarded).toBe(0);
    expect(Number.isFinite(netFromOutside(trace.ledger, "N"))).toBe(true);
  });
});
