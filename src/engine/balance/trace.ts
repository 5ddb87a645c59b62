/**
 * Runs a scenario file (the form of checks/recorded/model-traces.json): given parameters, tank, kinds, first
 * state and events, to daily pools. The step is proven by halving: it is halved until the last halving changed
 * nothing that matters.
 */
import type { TankEvent } from "./events.ts";
import type { Inputs } from "./inputs.ts";
import type { LedgerRow } from "./ledger.ts";
import type { ParameterValues } from "./parameters.ts";
import { headsAt, POOLS, reserveAt } from "./pools.ts";
import { run } from "./run.ts";
import type { CrewSpecies } from "./species.ts";
import { World } from "./world.ts";

export interface Scenario {
  readonly id: string;
  readonly days: number;
  readonly tank: Inputs;
  readonly parameters: ParameterValues;
  readonly species: readonly CrewSpecies[];
  /** Pools by name; heads as `n.kind`, reserves as `E.kind`. */
  readonly initial: Readonly<Record<string, number>>;
  readonly events: readonly TankEvent[];
}

export interface Trace {
  /** Pool, `n.kind` or `E.kind` → one value a day, day 0 first, each before the events of its day. */
  readonly daily: Record<string, number[]>;
  readonly ledger: readonly LedgerRow[];
  /** The step that was found fine enough, days, and what its last halving changed (relative to |x| + largest |x|). */
  readonly stepDays: number;
  readonly lastHalvingChanged: number;
  /** How many steps the positivity guard halved or took over; 0 is usual. */
  readonly guarded: number;
}

/**
 * The short un-ionised share that the reference traces were made with (supply notes, section 11). For traces
 * only: everything else passes in the seawater layer's equation.
 */
export const shortUnionisedShare = (temperatureC: number, salinityPsu: number, ph: number): number =>
  1 / (1 + 10 ** (10.0423 - 0.0315536 * temperatureC + 0.003071 * salinityPsu - ph));

const FIRST_STEP = 1 / 32;
const FINEST_STEP = 1 / 2048;
/** Order 3: what a halving leaves is about a seventh of what it changed, here a fourteenth of the rows' 1e-6. */
const FINE_ENOUGH = 5e-7;
/** By how much a halving shrinks the next one's change, at order 3. */
const GAIN = 8;

/** @throws RangeError when a name in `initial` is no pool, or an event names an unknown kind */
export function traceScenario(scenario: Scenario): Trace {
  let coarse = traceAt(scenario, FIRST_STEP, false);
  let changed = Number.POSITIVE_INFINITY;
  for (let step = FIRST_STEP / 2; ; step /= 2) {
    // the ledger costs as much as the run: kept only where this halving is likely to be the last
    const likelyLast = changed <= GAIN * FINE_ENOUGH || step <= FINEST_STEP;
    const fine = traceAt(scenario, step, likelyLast);
    changed = largestChange(coarse.daily, fine.daily);
    if (changed <= FINE_ENOUGH || step <= FINEST_STEP) {
      const kept = likelyLast ? fine : traceAt(scenario, step, true);
      return { ...kept, stepDays: step, lastHalvingChanged: changed };
    }
    coarse = fine;
  }
}

function traceAt(
  scenario: Scenario,
  stepDays: number,
  keepLedger: boolean,
): Omit<Trace, "stepDays" | "lastHalvingChanged"> {
  const world = new World({
    inputs: scenario.tank,
    parameters: scenario.parameters,
    species: scenario.species,
    unionisedShare: shortUnionisedShare,
  });
  const start = scenarioStart(scenario, world);
  const names = stateNames(scenario.species);
  const daily: Record<string, number[]> = Object.fromEntries(names.map((name) => [name, []]));
  const events = scenario.events.toSorted((a, b) => a.t - b.t);
  const { ledger, guard } = run(world, start, events, {
    days: scenario.days,
    steps: { kind: "fixed", days: stepDays },
    rowEvery: 1,
    keepLedger,
    onRow: (_, state) => {
      names.forEach((name, at) => {
        daily[name]!.push(state[at]!);
      });
    },
  });
  return { daily, ledger: ledger?.rows() ?? [], guarded: guard.halved + guard.patankar };
}

/** The scenario's first state, laid out as the world has it. */
export function scenarioStart({ id, species, initial }: Scenario, world: World): Float64Array {
  const names = stateNames(species);
  const start = new Float64Array(world.size);
  for (const [name, value] of Object.entries(initial)) {
    const at = names.indexOf(name);
    if (at < 0) throw new RangeError(`Cannot run scenario ${id}: "${name}" is no pool`);
    start[at] = value;
  }
  return start;
}

function stateNames(species: readonly CrewSpecies[]): string[] {
  const names: string[] = [...POOLS];
  species.forEach(({ id }, s) => {
    names[headsAt(s)] = `n.${id}`;
    names[reserveAt(s, species.length)] = `E.${id}`;
  });
  return names;
}

function largestChange(a: Record<string, number[]>, b: Record<string, number[]>): number {
  let largest = 0;
  for (const [name, values] of Object.entries(b)) {
    const largestValue = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    values.forEach((value, day) => {
      const change = Math.abs(value - a[name]![day]!);
      if (change > 0) largest = Math.max(largest, change / (Math.abs(value) + largestValue));
    });
  }
  return largest;
}
