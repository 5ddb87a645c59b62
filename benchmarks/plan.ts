/**
 * What a plan costs: every example tank planned warm, and the waves' integer programmes alone. A harness, not a test.
 * Run: node benchmarks/plan.ts [rounds]
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { animals, modelParameters } from "../src/catalogue/index.ts";
import { processIo } from "../src/cli/io.ts";
import { readTank } from "../src/cli/read-tank.ts";
import { drawMembers } from "../src/engine/larder/members.ts";
import type { Solve } from "../src/engine/stocking/linear-model.ts";
import { planWaves } from "../src/engine/stocking/plan.ts";
import { PRICES } from "../src/engine/stocking/prices.ts";
import { draftWaves } from "../src/engine/stocking/waves.ts";
import { loadSolver } from "../src/solver/highs.ts";

const rounds = Number(process.argv[2] ?? 5);
const examples = join(import.meta.dirname, "../examples");
const io = { ...processIo(), talk: () => {} };
const solver = await loadSolver();
const median = (values: number[]) => values.toSorted((a, b) => a - b)[values.length >> 1]!;

console.log("| tank | proven waves, ms | programmes solved | slowest programme, ms | whole plan, ms |");
console.log("| --- | --- | --- | --- | --- |");
for (const file of readdirSync(examples).sort()) {
  const facts = readTank(join(examples, file), io, { quiet: true });
  const members = drawMembers(facts, modelParameters, { count: 200, seed: 1 });
  const solves: number[] = [];
  const solve: Solve = (model) => {
    const began = performance.now();
    const answer = solver(model);
    solves.push(performance.now() - began);
    return answer;
  };
  const tools = { animals, members, solve, prices: PRICES };
  const waves: number[] = [];
  const plans: number[] = [];
  let count = 0;
  for (let round = 0; round < rounds; round += 1) {
    const before = solves.length;
    const began = performance.now();
    draftWaves(facts, tools);
    waves.push(performance.now() - began);
    count = solves.length - before;
    const again = performance.now();
    const work = planWaves({ ...tools, facts, seed: 1, withLimitCosts: false });
    while (work.next().done !== true);
    plans.push(performance.now() - again);
  }
  const cells = [
    file,
    median(waves).toFixed(0),
    count,
    Math.max(...solves).toFixed(0),
    median(plans).toFixed(0),
  ];
  console.log(`| ${cells.join(" | ")} |`);
}
