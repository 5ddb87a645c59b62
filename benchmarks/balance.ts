/**
 * What a tank-year of the balance costs and how far it is off, measured together: `node benchmarks/balance.ts`
 * prints the table of results.md. Scenarios: checks/recorded/model-traces.json.
 */
import { readFileSync } from "node:fs";
import { cpus, loadavg } from "node:os";
import { POOL_COUNT, POOLS } from "../src/engine/balance/pools.ts";
import {
  DISPLAY_STEPS,
  ENSEMBLE_STEPS,
  type RunResult,
  run,
  type StepRule,
} from "../src/engine/balance/run.ts";
import { type Scenario, scenarioStart, shortUnionisedShare } from "../src/engine/balance/trace.ts";
import { World } from "../src/engine/balance/world.ts";
import { RandomStream } from "../src/engine/numeric/random.ts";

const ROUNDS = 9;
const ROUND_MS = 150;
const REFERENCE: StepRule = { kind: "fixed", days: 1 / 512 };

const file = new URL("../checks/recorded/model-traces.json", import.meta.url);
const { scenarios } = JSON.parse(readFileSync(file, "utf8")) as { scenarios: Scenario[] };
const phased = scenarios.find(({ id }) => id === "phased-crew")!;

type OnRow = (day: number, state: Float64Array) => void;

function once(scenario: Scenario, steps: StepRule, rowEvery: number, days: number, onRow?: OnRow): RunResult {
  const { tank: inputs, parameters, species } = scenario;
  // rows are before the events of their day, the end of a run is after them
  const events = scenario.events.filter(({ t }) => t < days);
  const world = new World({ inputs, parameters, species, unionisedShare: shortUnionisedShare });
  const options = { days, steps, rowEvery, ...(onRow === undefined ? {} : { onRow }) };
  return run(world, scenarioStart(scenario, world), events, options);
}

function dailyRows(scenario: Scenario, steps: StepRule): Float64Array[] {
  const rows: Float64Array[] = [];
  once(
    scenario,
    steps,
    1,
    scenario.days,
    (_, row) => void rows.push(row.slice(0, -scenario.species.length || undefined)),
  );
  return rows;
}

/** Every day by a run that ends on it: what a run without daily rows would have shown. */
const rowsOfEnds = (scenario: Scenario, steps: StepRule): Float64Array[] =>
  Array.from({ length: scenario.days + 1 }, (_, day) => once(scenario, steps, 0, day).state);

interface Off {
  readonly rms: number;
  readonly worst: number;
  readonly where: string;
}

/** |x - reference| / (|reference| + 1 % of the pool's most): every pool, head count and reserve, every day. */
function offFrom(reference: readonly Float64Array[], rows: readonly Float64Array[]): Off {
  const size = reference[0]!.length;
  let sum = 0;
  let count = 0;
  let worst = 0;
  let where = "";
  for (let pool = 0; pool < size; pool += 1) {
    const most = Math.max(...reference.map((row) => Math.abs(row[pool]!)));
    if (most === 0) continue;
    reference.forEach((row, day) => {
      const off = Math.abs(rows[day]![pool]! - row[pool]!) / (Math.abs(row[pool]!) + 0.01 * most);
      sum += off * off;
      count += 1;
      if (off > worst) {
        worst = off;
        where = `${pool < POOL_COUNT ? POOLS[pool] : "crew"}, day ${day}`;
      }
    });
  }
  return { rms: Math.sqrt(sum / count), worst, where };
}

/** Median, least and most of the rounds, ms a call. */
function measure(work: () => void): string {
  const clock = () => performance.now();
  let calls = 1;
  for (let spent = 0; spent < ROUND_MS; calls *= 2) {
    const start = clock();
    for (let i = 0; i < calls; i += 1) work();
    spent = clock() - start;
  }
  const rounds = Array.from({ length: ROUNDS }, () => {
    const start = clock();
    for (let i = 0; i < calls; i += 1) work();
    return (clock() - start) / calls;
  }).sort((a, b) => a - b);
  const [least, median, most] = [rounds[0]!, rounds[ROUNDS >> 1]!, rounds[ROUNDS - 1]!];
  return `${median.toFixed(2)} (${least.toFixed(2)} to ${most.toFixed(2)})`;
}

const say = (...cells: readonly (string | number)[]) => console.log(`| ${cells.join(" | ")} |`);
const heading = (...cells: readonly string[]) => {
  say(...cells);
  say(...cells.map(() => "---"));
};
const exponent = (value: number) => value.toExponential(1);

console.log(
  `${cpus()[0]!.model.trim()}, ${cpus().length} cores; Node ${process.versions.node}, V8 ${process.versions.v8};`,
);
console.log(
  `load average ${loadavg()
    .map((load) => load.toFixed(1))
    .join(", ")} at the start. ${ROUNDS} rounds each.\n`,
);

console.log(
  `### One tank-year: ${phased.id}, ${phased.species.length} kinds, ${phased.events.length} events\n`,
);
heading(
  "steps",
  "lands on",
  "steps a year",
  "ms, median (least to most)",
  "rms error",
  "worst error",
  "where",
);
const reference = dailyRows(phased, REFERENCE);
const SETTINGS: readonly (readonly [string, StepRule, boolean])[] = [
  ["graded (ensembles)", ENSEMBLE_STEPS, false],
  ["graded (ensembles)", ENSEMBLE_STEPS, true],
  ["0.5 d", { kind: "fixed", days: 0.5 }, true],
  ["0.25 d", { kind: "fixed", days: 0.25 }, true],
  ["0.1 d (display)", DISPLAY_STEPS, true],
];
for (const [name, steps, daily] of SETTINGS) {
  const rows = daily
    ? dailyRows(phased, steps)
    : rowsOfEnds(phased, steps).map((row) => row.slice(0, reference[0]!.length));
  const { rms, worst, where } = offFrom(reference, rows);
  const rowEvery = daily ? 1 : 0;
  const { stepCount } = once(phased, steps, rowEvery, phased.days, () => {});
  const cost = measure(() => void once(phased, steps, rowEvery, phased.days, () => {}));
  say(name, daily ? "events and days" : "events", stepCount, cost, exponent(rms), exponent(worst), where);
}

console.log("\n### Every scenario at the graded rule, daily rows\n");
heading(
  "scenario",
  "days",
  "kinds",
  "steps",
  "ms, median (least to most)",
  "rms error",
  "worst error",
  "where",
);
for (const scenario of scenarios) {
  const { rms, worst, where } = offFrom(dailyRows(scenario, REFERENCE), dailyRows(scenario, ENSEMBLE_STEPS));
  const { stepCount } = once(scenario, ENSEMBLE_STEPS, 1, scenario.days, () => {});
  const cost = measure(() => void once(scenario, ENSEMBLE_STEPS, 1, scenario.days, () => {}));
  say(
    scenario.id,
    scenario.days,
    scenario.species.length,
    stepCount,
    cost,
    exponent(rms),
    exponent(worst),
    where,
  );
}

const MEMBERS = 1000;
const start = performance.now();
for (let member = 0; member < MEMBERS; member += 1) {
  const random = new RandomStream(1, member);
  const parameters = Object.fromEntries(
    Object.entries(phased.parameters).map(([symbol, value]) => [
      symbol,
      value * (0.9 + 0.2 * random.uniform()),
    ]),
  ) as Scenario["parameters"];
  const { tank: inputs, species, events } = phased;
  const given = { inputs, parameters, species, unionisedShare: shortUnionisedShare };
  const world = new World({ ...given, mortality: "drawn" });
  const options = { days: 365, steps: ENSEMBLE_STEPS, rowEvery: 7, onRow: () => {}, random };
  run(world, scenarioStart(phased, world), events, options);
}
const seconds = (performance.now() - start) / 1000;
console.log(
  `\n### ${MEMBERS} members, a year each, deaths drawn (so landing on every midnight), weekly rows, one core\n`,
);
console.log(`${seconds.toFixed(2)} s, ${((1000 * seconds) / MEMBERS).toFixed(2)} ms a member.`);
