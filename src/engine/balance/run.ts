/**
 * A tank over days: steps between events, rows at midnights, whole deaths drawn where asked.
 * Rows are the state before the events of their day.
 */
import { expm1 } from "../numeric/elementary.ts";
import type { RandomStream } from "../numeric/random.ts";
import { applyEvent, buryCrew, disturbs, type TankEvent } from "./events.ts";
import { rateCount } from "./kernel.ts";
import { Ledger } from "./ledger.ts";
import { hazardAt, headsAt, reserveAt } from "./pools.ts";
import { type GuardCount, guardedStep } from "./positivity.ts";
import { Stepper } from "./rosenbrock.ts";
import type { World } from "./world.ts";

/**
 * Length of steps: all alike, or graded: short after a disturbing event, growing to the most.
 * Every stretch between two dates is divided evenly. Errors of each: benchmarks/results.md.
 */
export type StepRule =
  | { readonly kind: "fixed"; readonly days: number }
  | { readonly kind: "graded"; readonly first: number; readonly growth: number; readonly most: number };

/** For ensembles: rms error about 3e-3 of a pool's range. */
export const ENSEMBLE_STEPS: StepRule = { kind: "graded", first: 0.15, growth: 1.7, most: 0.7 };
/** For a single run on show. */
export const DISPLAY_STEPS: StepRule = { kind: "fixed", days: 0.1 };

export interface RunOptions {
  readonly days: number;
  readonly steps: StepRule;
  /** Days between rows; 0 for none but the last. Rows start at day 0. */
  readonly rowEvery?: number;
  readonly onRow?: (day: number, state: Float64Array) => void;
  readonly keepLedger?: boolean;
  /** The run's own stream; needed when the world draws whole deaths. */
  readonly random?: RandomStream;
}

export interface RunResult {
  readonly state: Float64Array;
  readonly ledger: Ledger | null;
  readonly guard: GuardCount;
  readonly stepCount: number;
}

/**
 * Runs `world` from `start` (not changed) through `events` (sorted by day; equal days in list order).
 * The world's inputs end as the events left them.
 */
export function run(
  world: World,
  start: Float64Array,
  events: readonly TankEvent[],
  options: RunOptions,
): RunResult {
  const y = Float64Array.from(start);
  const spare = new Float64Array(world.size);
  const stepper = new Stepper(world);
  const ledger = options.keepLedger === true ? new Ledger(world, rateCount(world.species.length)) : null;
  const guard: GuardCount = { halved: 0, patankar: 0 };
  const onStep = ledger === null ? null : (rates: Float64Array, h: number) => ledger.addStep(rates, h);
  const drawn = world.mortality === "drawn";
  const { steps, days } = options;
  const rowEvery = options.rowEvery ?? 0;
  const first = steps.kind === "fixed" ? steps.days : steps.first;
  let next = first;
  let t = 0;
  let at = 0;
  let stepCount = 0;
  for (;;) {
    if (rowEvery > 0 && isMultiple(t, rowEvery)) options.onRow?.(Math.round(t), y);
    if (at < events.length && events[at]!.t <= t) {
      ledger?.settle();
      for (; at < events.length && events[at]!.t <= t; at += 1) {
        applyEvent(world, y, events[at]!, ledger);
        if (disturbs(events[at]!)) next = first;
      }
      ledger?.refresh();
    }
    if (t >= days) break;
    const land = nextLanding(t, days, events[at]?.t, rowEvery, drawn);
    const stretchEnd = land;
    while (t < stretchEnd) {
      const left = stretchEnd - t;
      const count = Math.ceil(left / next - 1e-9);
      const h = left / count;
      guardedStep(stepper, y, h, spare, guard, onStep);
      stepCount += 1;
      t = count <= 1 ? stretchEnd : t + h;
      if (steps.kind === "graded") next = Math.min(steps.most, next * steps.growth);
    }
    if (drawn && Number.isInteger(t)) drawDeaths(world, y, options.random, ledger);
  }
  ledger?.settle();
  return { state: y, ledger, guard, stepCount };
}

const isMultiple = (t: number, every: number): boolean => Number.isInteger(t / every);

/** The next instant that a step must end on: an event, a row, a midnight when deaths are drawn, the end. */
function nextLanding(
  t: number,
  days: number,
  eventAt: number | undefined,
  rowEvery: number,
  drawn: boolean,
): number {
  let land = Math.min(days, eventAt ?? days);
  if (rowEvery > 0) land = Math.min(land, (Math.floor(t / rowEvery) + 1) * rowEvery);
  if (drawn) land = Math.min(land, Math.floor(t) + 1);
  return land;
}

/** Midnight: whole animals die with the chance that the day's hazard gives; their bodies become carrion. */
function drawDeaths(
  world: World,
  y: Float64Array,
  random: RandomStream | undefined,
  ledger: Ledger | null,
): void {
  const kinds = world.species.length;
  for (let s = 0; s < kinds; s += 1) {
    const hazard = hazardAt(s, kinds);
    const heads = y[headsAt(s)]!;
    const chance = -expm1(-y[hazard]!);
    y[hazard] = 0;
    if (heads <= 0) continue;
    if (random === undefined) throw new RangeError("Cannot draw deaths: the run was given no random stream");
    const dead = random.binomial(Math.round(heads), chance);
    if (dead === 0) continue;
    const reserve = (dead / heads) * y[reserveAt(s, kinds)]!;
    y[headsAt(s)] = Math.max(0, heads - dead);
    y[reserveAt(s, kinds)] = y[reserveAt(s, kinds)]! - reserve;
    ledger?.settle();
    buryCrew(world, y, s, dead, reserve, ledger);
  }
}
