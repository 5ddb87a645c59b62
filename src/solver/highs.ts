/**
 * HiGHS (WebAssembly) as the solver of stocking's integer programmes: proven optimum, or a plain word why not.
 * Runs the same in Node and in a browser worker. An answer is believed only after our own check of every bound,
 * row and whole number: see verify.ts.
 */
import highsPackage, { type Highs, type Model, type ModelData } from "highs";
import type { LinearModel, Solution, Solve } from "../engine/stocking/linear-model.ts";
import { verify } from "./verify.ts";

// The package declares its types for CommonJS, where this function would be a `default` property; what Node and
// bundlers load is its ES module, where it is the default export itself.
const loadHighs = highsPackage as unknown as typeof highsPackage.default;

/** Far above what any plan takes, so that a busy machine comes to the same plan as an idle one. */
const DEFAULT_TIME_LIMIT_SECONDS = 60;

export interface SolverGiven {
  /** Of one solve, by the wall clock. */
  readonly timeLimitSeconds?: number;
  /** HiGHS, compiled already: a browser's worker fetches it from where its page says. Node finds its own. */
  readonly compiled?: WebAssembly.Module;
}

/** Loads the solver once; the `Solve` it gives is synchronous and may be called any number of times. */
export async function loadSolver(given: SolverGiven = {}): Promise<Solve> {
  const { timeLimitSeconds = DEFAULT_TIME_LIMIT_SECONDS, compiled } = given;
  const highs = await loadHighs(compiled === undefined ? {} : instantiating(compiled));
  return (model) => {
    try {
      return highs.withModel(arraysOf(model), (held) => {
        held.options.set({ ...OPTIONS, time_limit: timeLimitSeconds });
        held.run();
        return answer(highs, held, model, timeLimitSeconds);
      });
    } catch (error) {
      return { status: "failed", why: error instanceof Error ? error.message : String(error) };
    }
  };
}

/**
 * The package's types promise `wasmModule` for this, which its build does not know; `instantiateWasm` is the hook that
 * it was compiled with.
 */
function instantiating(compiled: WebAssembly.Module): object {
  return {
    instantiateWasm(imports: WebAssembly.Imports, received: (instance: WebAssembly.Instance) => void) {
      void WebAssembly.instantiate(compiled, imports).then(received);
    },
  };
}

const OPTIONS = {
  output_flag: false,
  // Both gaps: HiGHS stops at whichever it reaches first, and its defaults are not zero.
  mip_rel_gap: 0,
  mip_abs_gap: 0,
  // At the default 1e-6 a head count of 2.9999995 passes, and rounding it moves its rows by more than we let through.
  mip_feasibility_tolerance: 1e-9,
  primal_feasibility_tolerance: 1e-9,
  // Programmes of this size close by branching; restarts, cuts in the tree and most heuristics are for large ones.
  // Without them the hardest of ours take two fifths of the time, and come to the same proven optimum. Presolve
  // stays: without it those with many binaries take nearly twice as long.
  mip_allow_restart: false,
  mip_allow_cut_separation_at_nodes: false,
  mip_detect_symmetry: false,
  mip_heuristic_run_feasibility_jump: false,
  mip_heuristic_run_rens: false,
  mip_heuristic_run_root_reduced_cost: false,
} as const;

function answer(highs: Highs, held: Model, model: LinearModel, timeLimitSeconds: number): Solution {
  const { modelStatus, solutionStatus } = highs.constants;
  const status = held.getModelStatus();
  switch (status) {
    case modelStatus.empty:
      return verify(model, new Float64Array(model.columns.length));
    case modelStatus.optimal:
      return verify(model, held.getSolution().colValue);
    case modelStatus.infeasible:
      return { status: "infeasible" };
    case modelStatus.unboundedOrInfeasible:
      return withoutCosts(highs, held, model);
    case modelStatus.unbounded:
      return UNBOUNDED;
    case modelStatus.timeLimit: {
      if (held.info.get("primal_solution_status") !== solutionStatus.feasible)
        return { status: "failed", why: `no plan found within ${timeLimitSeconds} s` };
      const checked = verify(model, held.getSolution().colValue);
      return checked.status === "optimal"
        ? { ...checked, status: "incumbent", gap: Number(held.info.get("mip_gap")) }
        : checked;
    }
    default:
      return { status: "failed", why: `HiGHS stopped with model status ${status}` };
  }
}

const UNBOUNDED: Solution = { status: "failed", why: "the cost has no lower bound" };

/** Presolve could not tell infeasible from unbounded. Without costs nothing is unbounded, so the answer is plain. */
function withoutCosts(highs: Highs, held: Model, model: LinearModel): Solution {
  held.changeColsCost(
    { kind: "range", from: 0, to: model.columns.length - 1 },
    model.columns.map(() => 0),
  );
  held.run();
  const { modelStatus } = highs.constants;
  const status = held.getModelStatus();
  if (status === modelStatus.infeasible) return { status: "infeasible" };
  if (status === modelStatus.optimal) return UNBOUNDED;
  return { status: "failed", why: "infeasible or without lower bound: HiGHS could not tell which" };
}

/** Sparse rows, as HiGHS takes them. Never LP text: text it cannot read comes back as an empty model, not an error. */
function arraysOf({ columns, rows }: LinearModel): ModelData {
  const starts = new Int32Array(rows.length + 1);
  rows.forEach((row, i) => {
    starts[i + 1] = starts[i]! + row.entries.length;
  });
  const entries = rows.flatMap((row) => row.entries);
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: Float64Array.from(columns, (column) => column.cost),
    colLower: Float64Array.from(columns, (column) => column.lower),
    colUpper: Float64Array.from(columns, (column) => column.upper),
    rowLower: Float64Array.from(rows, (row) => row.lower),
    rowUpper: Float64Array.from(rows, (row) => row.upper),
    integrality: Int32Array.from(columns, (column) => (column.integer ? 1 : 0)),
    matrix: {
      format: "csr",
      numRows: rows.length,
      numCols: columns.length,
      starts,
      indices: Int32Array.from(entries, ([column]) => column),
      values: Float64Array.from(entries, ([, coefficient]) => coefficient),
    },
  };
}
