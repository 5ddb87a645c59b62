/**
 * What solving costs: in a process that has just begun, where WebAssembly is still to be compiled, and warm; on
 * invented programmes of forty kinds and on those that planning invented tanks asks. A harness, not a test.
 * Run: node benchmarks/solver.ts [rounds]
 */
import { execFileSync } from "node:child_process";
import { cpus, loadavg } from "node:os";
import { programmesOf } from "../checks/solver/programmes.ts";
import { stockingForm } from "../checks/solver/stocking-form.ts";
import type { LinearModel, Solve } from "../src/engine/stocking/linear-model.ts";
import { loadSolver } from "../src/solver/highs.ts";

const COLD = "cold";
const INVENTED = 12;
const TANKS = 20;
const rounds = Number(process.argv[2] ?? 7);
const FORTY = { kinds: 40, shelves: 9, cap: 8 };
const ordinary = () => stockingForm(3, { ...FORTY, presence: false });

function timed(work: () => void): number {
  const began = performance.now();
  work();
  return performance.now() - began;
}

/** In a fresh process: milliseconds to load the solver, and for the first solve. */
async function cold(): Promise<void> {
  const model = ordinary();
  const began = performance.now();
  const solve = await loadSolver();
  const load = performance.now() - began;
  console.log(JSON.stringify({ load, first: timed(() => void solve(model)) }));
}

const at = (share: number, values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.round(share * (values.length - 1))]!;

function line(what: string, count: number, values: readonly number[]): void {
  const cells = [0, 0.5, 0.95, 1].map((share) => at(share, values).toFixed(1));
  console.log(`| ${[what, count, ...cells].join(" | ")} |`);
}

async function warm(): Promise<void> {
  const solve = await loadSolver();
  const times = (models: readonly LinearModel[], again: number) => {
    for (const model of models) proven(solve, model);
    return Array.from({ length: again }, () => models.map((model) => timed(() => void solve(model)))).flat();
  };
  line("warm, ordinary", 1, times([ordinary()], rounds));
  for (const presence of [false, true]) {
    const models = Array.from({ length: INVENTED }, (_, i) => stockingForm(i + 1, { ...FORTY, presence }));
    line(`warm, forty kinds${presence ? " with presence" : ""}`, INVENTED, times(models, 1));
  }
  const asked = Array.from({ length: TANKS }, (_, i) => programmesOf(i + 1, solve))
    .flat()
    .map(({ model }) => model);
  line(`warm, all programmes of ${TANKS} tanks' waves`, asked.length, times(asked, 1));
}

/** A time is worth printing only of an answer that is proven. */
function proven(solve: Solve, model: LinearModel): void {
  const { status } = solve(model);
  if (status !== "optimal" && status !== "infeasible") throw new Error(`a programme ended ${status}`);
}

if (process.argv[2] === COLD) await cold();
else {
  console.log(
    `${cpus()[0]?.model}, ${cpus().length} processors, load ${loadavg()[0]!.toFixed(1)}, Node ${process.version}\n`,
  );
  console.log("| ms | programmes | least | median | 95 of 100 | most |");
  console.log("| --- | --- | --- | --- | --- | --- |");
  const runs = Array.from(
    { length: rounds },
    () =>
      JSON.parse(execFileSync(process.execPath, [import.meta.filename, COLD], { encoding: "utf8" })) as {
        load: number;
        first: number;
      },
  );
  line(
    "new process, load",
    1,
    runs.map(({ load }) => load),
  );
  line(
    "new process, load and first solve",
    1,
    runs.map(({ load, first }) => load + first),
  );
  await warm();
}
