/**
 * The kernel: what every pool gains and loses a day, from its state. Smooth, without a branch on a state.
 * Three outputs, the last two on request: derivatives, the entries of the approximate Jacobian (for the
 * integrator), and the rate of every process by itself (for the ledger and the positivity guard, which read
 * them through transfers.ts). Equations: docs/model/balance.md, sections named in the comments.
 *
 * The innermost code of every forecast: flat arrays, no allocation.
 */
import { algae } from "./kernel/algae.ts";
import { crew } from "./kernel/crew.ts";
import { dissolved } from "./kernel/dissolved.ts";
import type { Scratch } from "./kernel/layout.ts";
import { stuffs } from "./kernel/stuffs.ts";
import type { World } from "./world.ts";

export { JAC, RATE, rateCount, Scratch } from "./kernel/layout.ts";

/**
 * Derivatives `dy` (per day) at state `y`.
 * @param wantJacobian also fills `scratch.jac`
 * @param rates when given, filled with every process's rate
 */
export function derivatives(
  world: World,
  y: Float64Array,
  dy: Float64Array,
  scratch: Scratch,
  wantJacobian: boolean,
  rates: Float64Array | null,
): void {
  crew(world, y, dy, scratch, wantJacobian, rates);
  algae(world, y, dy, scratch, wantJacobian, rates);
  stuffs(world, y, dy, scratch, rates);
  dissolved(world, y, dy, scratch, wantJacobian, rates);
}
