/** Who lives there is judged too, and of several hazards that are wished for a wave brings one. */
import { describe, expect, test } from "vitest";
import { animals, modelParameters } from "../../catalogue/index.ts";
import { loadSolver } from "../../solver/highs.ts";
import { drawMembers } from "../larder/members.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import type { Estimate } from "../types/estimate.ts";
import type { TankFacts } from "../types/tank.ts";
import { PRICES } from "./prices.ts";
import { residentsOf } from "./residents.ts";
import { companyOf, draftWaves } from "./waves.ts";

const exact = (value: number): Estimate => ({
  ...{ low: value, central: value, high: value, origin: "stated", how: "typed" },
});
const yes = { value: true, origin: "stated" } as const;

describe("residents", () => {
  const warned = (changes: Partial<TankFacts>) => {
    const facts = referenceTank(changes);
    return residentsOf(facts, companyOf(facts, animals)).map(({ animal, heads, warnings }) => [
      ...[animal.id, heads],
      ...warnings.map(({ code }) => code),
    ]);
  };
  const there = (id: string, count: number) => ({ id, count, on: null });

  test("at home here have no warnings", () =>
    expect(warned({ present: [there("trochus-snail", 2)] })).toEqual([["trochus-snail", 2]]));

  test("in too cold and too small a tank are told apart", () => {
    const [row] = warned({
      present: [there("yellow-tang", 1)],
      displayL: exact(60),
      temperatureC: exact(18),
    });
    expect(row).toEqual(expect.arrayContaining(["yellow-tang", "volume", "temperature"]));
  });

  test("that would eat each other are both warned of", () => {
    const rows = warned({ present: [there("pufferfish", 1), there("trochus-snail", 3)] });
    expect(rows.find(([id]) => id === "pufferfish")).toContain("eats");
    expect(rows.find(([id]) => id === "trochus-snail")).toContain("eaten_by");
  });

  test("too many of one kind are counted over all rows; what only bars buying is no warning", () => {
    const few = animals.find(({ id }) => id === "sea-hare")!.maxPerTank!;
    const row = there("sea-hare", few);
    const barred = { exclusions: ["sea-hare"], stockList: [], priceBandMax: 1 } as const;
    expect(warned({ present: [row], ...barred })[0]).not.toContain("same_kind");
    const many = warned({ present: [row, there("sea-hare", 1)], ...barred })[0];
    expect(many).toContain("same_kind");
    expect(many).not.toEqual(expect.arrayContaining(["excluded"]));
    expect(many).not.toEqual(expect.arrayContaining(["price"]));
  });
});

test("of two wishes that can poison the tank each wave brings one, in the keeper's order", async () => {
  const wishes = ["tiger-tail-cucumber", "black-cucumber"];
  const facts = referenceTank({
    ...{ waterL: exact(1500), displayL: exact(1500), ageDays: exact(900), sandM2: exact(2.5) },
    ...{ litRockM2: exact(4), rockKg: exact(120), sandDepthMm: exact(80), feedGPerDay: exact(6) },
    ...{ lid: yes, pumpGuards: yes, rockCaves: yes, rockSecured: yes },
    ...{ keeperLevel: { value: "specialist", origin: "stated" }, priceBandMax: 4, wishes },
  });
  const members = drawMembers(facts, modelParameters, { count: 20, seed: 1 });
  const drafts = draftWaves(facts, { animals, members, solve: await loadSolver(), prices: PRICES });
  const days = wishes.map((id) => drafts.findIndex(({ bought }) => bought.has(id)));
  expect(days).toEqual([0, 1]);
});
