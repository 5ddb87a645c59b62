/**
 * The guard under the integrator: a step that would leave a pool below zero is redone as two halves, down to a
 * sixty-fourth, and then as one Patankar-Euler step, which cannot go below zero: every process is slowed by one
 * factor, the least that any pool it consumes allows, so that nitrogen and phosphorus leave one pool exactly as
 * they enter another. Never clips. docs/model/balance.md, "Positivity".
 */
import { derivatives, RATE, rateCount } from "./kernel.ts";
import { POOL_COUNT, XA, XN } from "./pools.ts";
import type { Stepper } from "./rosenbrock.ts";
import { type Transfer, transfersOf } from "./transfers.ts";

const HALVINGS = 6;

/** Counts how often the guard acted in a run. */
export interface GuardCount {
  halved: number;
  patankar: number;
}

/** Advances `y` in place by `h` days; calls `onStep` with the mean rates of each part when recording. */
export function guardedStep(
  stepper: Stepper,
  y: Float64Array,
  h: number,
  spare: Float64Array,
  count: GuardCount,
  onStep: ((rates: Float64Array, h: number) => void) | null,
  depth = 0,
): void {
  stepper.step(y, h, spare, onStep !== null);
  if (isNonNegative(spare)) {
    y.set(spare);
    onStep?.(stepper.rates, h);
    return;
  }
  if (depth < HALVINGS) {
    count.halved += 1;
    guardedStep(stepper, y, h / 2, spare, count, onStep, depth + 1);
    guardedStep(stepper, y, h / 2, spare, count, onStep, depth + 1);
    return;
  }
  count.patankar += 1;
  const rates = patankarEuler(stepper, y, h);
  if (!isNonNegative(y))
    throw new RangeError("Cannot go on: a pool is not a number; an input must be out of range");
  onStep?.(rates, h);
}

function isNonNegative(y: Float64Array): boolean {
  for (let i = 0; i < y.length; i += 1) if (!(y[i]! >= 0)) return false;
  return true;
}

/** One step of order 1 in place; returns the slowed process rates it took. */
export function patankarEuler(stepper: Stepper, y: Float64Array, h: number): Float64Array {
  const { world, scratch } = stepper;
  const kinds = world.species.length;
  const dy = new Float64Array(world.size);
  const rates = new Float64Array(rateCount(kinds));
  derivatives(world, y, dy, scratch, false, rates);
  const transfers = transfersOf(world);

  const loss = new Float64Array(world.size);
  for (const { from, rate, per } of transfers) {
    if (typeof from === "number") loss[from] = loss[from]! + per * rates[rate]!;
  }
  const slowed = (pool: number): number => {
    const draw = h * loss[pool]!;
    return draw > 0 ? y[pool]! / (y[pool]! + draw) : 1;
  };
  const factor = new Float64Array(rates.length).fill(1);
  const limit = (rate: number, pool: number) => {
    factor[rate] = Math.min(factor[rate]!, slowed(pool));
  };
  for (const { from, rate } of transfers) if (typeof from === "number") limit(rate, from);
  for (let s = 0; s < kinds; s += 1) {
    const block = RATE.kind + s * RATE.kindStride;
    // Whole bodies: heads and their reserve leave together; eating happens niche by niche, all elements alike.
    factor[block + RATE.deaths] =
      1 / (1 + (h * rates[block + RATE.deaths]!) / Math.max(y[POOL_COUNT + s]!, 1e-300));
    for (let j = 0; j < RATE.upkeep; j += 3) {
      const least = Math.min(factor[block + j]!, factor[block + j + 1]!, factor[block + j + 2]!);
      factor.fill(least, block + j, block + j + 3);
    }
  }
  for (let i = 0; i < rates.length; i += 1) rates[i] = rates[i]! * factor[i]!;
  for (const transfer of transfers) move(y, transfer, h * rates[transfer.rate]!);
  for (const pool of [XA, XN]) y[pool] = y[pool]! > 0 ? y[pool]! * Math.exp((h * dy[pool]!) / y[pool]!) : 0;
  for (let s = 0; s < kinds; s += 1) {
    const heads = POOL_COUNT + s;
    y[heads] = y[heads]! - h * rates[RATE.kind + s * RATE.kindStride + RATE.deaths]!;
    const hazard = POOL_COUNT + 2 * kinds + s;
    y[hazard] = y[hazard]! + h * dy[hazard]!;
  }
  return rates;
}

/** Moves a transfer's amount between pools. An alga is kept in carbon alone: its N and P follow by ratio. */
function move(y: Float64Array, { from, to, element, per }: Transfer, integral: number): void {
  const amount = per * integral;
  if (typeof from === "number" && (element === "C" || !isAlga(from))) y[from] = y[from]! - amount;
  if (typeof to === "number" && (element === "C" || !isAlga(to))) y[to] = y[to]! + amount;
}

const isAlga = (place: number): boolean => place >= 6 && place <= 10;
