import { describe, expect, test } from "vitest";
import { randomTank } from "../../../checks/kit/tanks.ts";
import { animals, modelParameters } from "../../catalogue/index.ts";
import { drawMembers } from "../larder/members.ts";
import { kindsOf } from "../stocking/check.ts";
import { companyOf } from "../stocking/waves.ts";
import { flowsOf, type MemberFlows } from "./flows.ts";

const sum = (of: Readonly<Record<string, number>>) => Object.values(of).reduce((all, one) => all + one, 0);
const of = (seed: number) => {
  const facts = randomTank(seed);
  return {
    facts,
    flows: flowsOf({
      facts,
      members: drawMembers(facts, modelParameters, { count: 4, seed }),
      kinds: kindsOf(companyOf(facts, animals), [], animals),
    }),
  };
};
const TANKS = Array.from({ length: 12 }, (_, i) => of(100 + i));

describe.each(["N", "P"] as const)("%s of invented tanks", (element) => {
  const all = TANKS.flatMap(({ flows }) => flows[element]);

  test("what comes in is what leaves and what stays", () => {
    for (const flows of all) {
      const [inflow, out, stays] = [sum(flows.in), sum(flows.out), sum(flows.stays)];
      const size = Math.max(
        1,
        ...[flows.in, flows.out, flows.stays].flatMap((part) => Object.values(part).map(Math.abs)),
      );
      expect(Math.abs(inflow - out - stays) / size).toBeLessThan(1e-9);
    }
  });

  test("what was freed into the water is what was taken out of it and what stayed dissolved", () => {
    for (const { in: from, out, freed, algaeTake, stays } of all) {
      const dissolvedOut = out.gas + out.rock + out.sorbent + out.water_change - from.new_water - from.other;
      const size = Math.max(1, freed, algaeTake, Math.abs(dissolvedOut));
      // A water change also takes some of what floats: what algae take and water holds can't be more than was freed.
      expect((algaeTake + stays.water - freed) / size).toBeLessThan(0.05 + Math.max(0, -dissolvedOut) / size);
    }
  });

  test("nothing but the fish's own growth and what dissolves off rock and sorbent counts against the sign of its way", () => {
    for (const { in: from, out } of all) {
      expect(from.feed).toBeGreaterThanOrEqual(0);
      expect(from.new_water).toBeGreaterThanOrEqual(0);
      for (const way of ["gas", "skimmer", "filter", "water_change", "by_hand"] as const)
        expect(out[way]).toBeGreaterThanOrEqual(-1e-9);
    }
  });
});

test("a tank that is fed twice as much has twice as much coming in with the feed", () => {
  const { facts } = TANKS.find(({ flows }) => flows.N[0]!.in.feed > 1)!;
  const fed = (factor: number): MemberFlows => {
    const { low, central, high, ...how } = facts.feedGPerDay;
    const feedGPerDay = { ...how, low: low * factor, central: central * factor, high: high * factor };
    const changed = { ...facts, feedGPerDay };
    const members = drawMembers(changed, modelParameters, { count: 1, seed: 3 });
    return flowsOf({ facts: changed, members, kinds: [] }).N[0]!;
  };
  expect(fed(2).in.feed / fed(1).in.feed).toBeCloseTo(2, 6);
});
