/** A plan's first wave is one that a keeper can watch, unless more is wished for. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { animals, findAnimal, modelParameters } from "../../catalogue/index.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import { loadSolver } from "../../solver/highs.ts";
import { drawMembers } from "../larder/members.ts";
import { bindingOf } from "./limits.ts";
import { PRICES } from "./prices.ts";
import { firstWaveMost } from "./schedule.ts";
import { ALL_LIMITS, draftWaves } from "./waves.ts";

test.each([
  [10, 12],
  [250, 12],
  [349, 12],
  [350, 13],
  [2000, 29],
])("in %d L it brings at most %d", (litres, most) => expect(firstWaveMost(litres)).toBe(most));

// Invented: one big fish, much food left over. Without the rule its first wave brings 20 of 20 members' plan.
const text = readFileSync(join(import.meta.dirname, "../../../examples/one-big-fish-250.yaml"), "utf8");
const read = readTankFile(text, { today: "2026-11-26", findAnimal });

test("an overfed tank's first wave is kept to it, says so, and more follow", async () => {
  if (!read.ok) throw new Error("the example can't be read");
  const { facts } = read;
  const solve = await loadSolver();
  const members = drawMembers(facts, modelParameters, { count: 20, seed: 1 });
  const drafts = draftWaves(facts, { animals, members, solve, prices: PRICES });
  const heads = drafts.map(({ bought }) => [...bought.values()].reduce((sum, count) => sum + count, 0));
  expect(heads[0]).toBe(12);
  expect(heads[1]).toBeGreaterThan(0);
  const bindings = [...drafts[0]!.bought.keys()].map((id) =>
    bindingOf(id, drafts[0]!, facts, ALL_LIMITS, solve),
  );
  expect(bindings.map(({ kind }) => kind)).toContain("first_wave");
});
