/**
 * Sends invented tanks through the whole engine and writes what happened to docs/reports/random-tanks.md: plans,
 * refusals, what the balance's guard did, how well nitrogen and phosphorus closed, every fault with its seed.
 * Run: node tools/random-tanks.ts --count 2000 [--members 24] [--from 0]
 */
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { randomTank } from "../checks/kit/tanks.ts";
import { type Judged, judge } from "../checks/stocking/judge.ts";
import { loadSolver } from "../src/solver/highs.ts";

const PAGE = join(import.meta.dirname, "../docs/reports/random-tanks.md");

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "200" },
    members: { type: "string", default: "24" },
    from: { type: "string", default: "0" },
  },
});
const [count, members, from] = [values.count, values.members, values.from].map(Number) as [
  number,
  number,
  number,
];

// Read before the work: by its end the tree may have moved on.
const version = execFileSync("git", ["rev-parse", "--short", "HEAD"], { encoding: "utf8" }).trim();
const solve = await loadSolver();
const faults: string[] = [];
const milliseconds: number[] = [];
const refusedBy = new Map<string, number>();
const tally = {
  waves: 0,
  nothing: 0,
  heads: 0,
  unproven: 0,
  mends: 0,
  fedByHand: 0,
  crashes: 0,
  halved: 0,
  patankar: 0,
  steps: 0,
  guarded: 0,
};
const worst = {
  nitrogen: { value: 0, seed: from },
  phosphorus: { value: 0, seed: from },
  slowest: { value: 0, seed: from },
};

for (let seed = from; seed < from + count; seed += 1) {
  try {
    add(seed, judge(randomTank(seed), solve, members, seed));
  } catch (error) {
    tally.crashes += 1;
    faults.push(`seed ${seed}: crash: ${error instanceof Error ? error.message : String(error)}`);
  }
  if ((seed - from + 1) % 100 === 0) process.stderr.write(`${seed - from + 1} of ${count}\n`);
}

function add(seed: number, { plan, balance, faults: found, planMs }: Judged): void {
  tally[plan.kind === "waves" ? "waves" : "nothing"] += 1;
  for (const { animals } of plan.waves) for (const animal of animals) tally.heads += animal.count;
  if (!plan.proven) tally.unproven += 1;
  tally.mends += plan.mends.length;
  if (plan.fedByHand.length > 0) tally.fedByHand += 1;
  for (const { reasons } of plan.refused) {
    for (const code of new Set(reasons.map((reason) => reason.code)))
      refusedBy.set(code, (refusedBy.get(code) ?? 0) + 1);
  }
  const { guard } = balance;
  tally.halved += guard.halved;
  tally.patankar += guard.patankar;
  tally.steps += balance.steps;
  if (guard.halved + guard.patankar > 0) tally.guarded += 1;
  milliseconds.push(planMs);
  keep("nitrogen", balance.closingN, seed);
  keep("phosphorus", balance.closingP, seed);
  keep("slowest", planMs, seed);
  if (found.length > 0) faults.push(`seed ${seed}: ${found.slice(0, 3).join("; ")}`);
}

function keep(name: keyof typeof worst, value: number, seed: number): void {
  if (value > worst[name].value) worst[name] = { value, seed };
}

const sorted = milliseconds.sort((a, b) => a - b);
const at = (share: number) => Math.round(sorted[Math.floor(share * (sorted.length - 1))] ?? 0);
const reasons = [...refusedBy].sort((a, b) => b[1] - a[1]).map(([code, n]) => `- ${code}: ${n}`);

const text = `# Invented tanks through the whole engine

\`node tools/random-tanks.ts --count ${count} --members ${members} --from ${from}\` wrote this page at ${version}, Node ${process.version}, on ${cpus()[0]?.model ?? "an unknown processor"}.
Each tank is a seed of checks/kit/tanks.ts: 10 to 2,000 L, not yet filled to years old. It is planned, the plan is judged
by a second reading of the rules (checks/stocking/recheck.ts), and one member is run 90 days with the ledger on.

| What | Count |
| --- | --- |
| tanks | ${count} |
| crashes | ${tally.crashes} |
| tanks with a fault | ${faults.length} |
| plans with waves | ${tally.waves} |
| nothing yet | ${tally.nothing} |
| heads bought in all | ${tally.heads} |
| plans not solved to a proven optimum | ${tally.unproven} |
| cuts that the forecast made | ${tally.mends} |
| plans that name somebody to feed by hand | ${tally.fedByHand} |
| steps of the balance | ${tally.steps} |
| runs in which the guard acted | ${tally.guarded} |
| steps halved, Patankar steps | ${tally.halved}, ${tally.patankar} |
| worst closing of nitrogen, relative | ${worst.nitrogen.value.toExponential(1)} (seed ${worst.nitrogen.seed}) |
| worst closing of phosphorus, relative | ${worst.phosphorus.value.toExponential(1)} (seed ${worst.phosphorus.seed}) |
| plan in the middle, 95 of 100, slowest | ${at(0.5)} ms, ${at(0.95)} ms, ${Math.round(worst.slowest.value)} ms (seed ${worst.slowest.seed}) |

## Refusals by reason

An animal that is refused for two reasons counts under both.

${reasons.join("\n")}

## Faults

${faults.length === 0 ? "None." : faults.map((fault) => `- ${fault}`).join("\n")}
`;
writeFileSync(PAGE, text);
process.stdout.write(text);
process.exitCode = faults.length > 0 ? 1 : 0;
