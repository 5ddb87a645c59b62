/**
 * The guard under the integrator: a step that would leave a pool below zero is redone as two halves, down to a
 * sixty-fourth, and then as one Patankar-Euler step, which cannot go below zero: every process is slowed by one
 * factor, the least that any pool it consumes allows, so that nitrogen and phosphorus leave one pool exactly as
 * they enter another. Never clips. docs/model/balance.md, "Positivity".
 */
import { exp } from "../numeric/elementary.ts";
import { derivatives, RATE, rateCount } from "./kernel.ts";
import { FG, MA, POOL_COUNT, XA, XN } from "./pools.ts";
import type { Stepper } from "./rosenbrock.ts";
import { type Place, type Transfer, transfersOf } from "./transfers.ts";

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

  // A process may run backwards (a sorbent dosed beyond its capacity gives back): then it draws on where it led to.
  const drawnFrom = ({ from, to, rate }: Transfer): Place => (rates[rate]! < 0 ? to : from);
  const loss = new Float64Array(world.size);
  for (const transfer of transfers) {
    const source = drawnFrom(transfer);
    if (isCounted(source, transfer))
      loss[source] = loss[source]! + transfer.per * Math.abs(rates[transfer.rate]!);
  }
  const factor = new Float64Array(rates.length).fill(1);
  for (const transfer of transfers) {
    const source = drawnFrom(transfer);
    if (typeof source !== "number") continue;
    const draw = h * loss[source]!;
    const slowed = draw > 0 ? y[source]! / (y[source]! + draw) : 1;
    factor[transfer.rate] = Math.min(factor[transfer.rate]!, slowed);
  }
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
  for (const pool of [XA, XN]) y[pool] = y[pool]! > 0 ? y[pool]! * exp((h * dy[pool]!) / y[pool]!) : 0;
  for (let s = 0; s < kinds; s += 1) {
    const heads = POOL_COUNT + s;
    y[heads] = y[heads]! - h * rates[RATE.kind + s * RATE.kindStride + RATE.deaths]!;
    const hazard = POOL_COUNT + 2 * kinds + s;
    y[hazard] = y[hazard]! + h * dy[hazard]!;
  }
  return rates;
}

/** Moves a transfer's amount between pools. */
function move(y: Float64Array, transfer: Transfer, integral: number): void {
  const { from, to, per } = transfer;
  if (isCounted(from, transfer)) y[from] = y[from]! - per * integral;
  if (isCounted(to, transfer)) y[to] = y[to]! + per * integral;
}

/** True for a pool that keeps the transfer's element: an alga is kept in carbon alone, its N and P by ratio. */
function isCounted(place: Place, { element }: Transfer): place is number {
  return typeof place === "number" && (element === "C" || place < FG || place > MA);
}
