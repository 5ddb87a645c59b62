/**
 * One step in time: ROS34PW2, four stages, order 3, L-stable, and of W type: its order holds with an
 * approximate Jacobian, so that only the few stiff terms are treated implicitly and no general LU is needed.
 * Rang & Angermann 2005, BIT 45:761-787; coefficients from memory, order confirmed by rosenbrock.test.ts.
 *
 * Written in the transformed stages u = Γ k, so that no product of Jacobian and vector is formed. Every implicit
 * term enters with all its rows, hence nitrogen and phosphorus are conserved to rounding by every step.
 */
import { addImplicitPart, factor, IMPLICIT, solve } from "./implicit.ts";
import { derivatives, rateCount, Scratch } from "./kernel.ts";
import type { World } from "./world.ts";

const GAMMA = 0.435866521508459;
const STAGES = 4;
const B1 = 0.24212380706095346;
const B2 = -1.2232505839045147;
/** Printed as 1.5452602552335102; as the rest to one, or every constant flow would run 1e-10 short. */
const B3 = 1 - B1 - B2 - GAMMA;
const ALPHA = [
  [0, 0, 0, 0],
  [0.87173304301691801, 0, 0, 0],
  [0.84457060015369423, -0.11299064236484185, 0, 0],
  [0, 0, 1, 0],
];
const GAMMAS = [
  [GAMMA, 0, 0, 0],
  [-0.87173304301691801, GAMMA, 0, 0],
  [-0.90338057013044082, 0.054180672388095326, GAMMA, 0],
  [B1, B2, B3 - 1, GAMMA],
];
const WEIGHTS = [B1, B2, B3, GAMMA];

/** Inverse of a lower triangular matrix. */
function lowerInverse(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const inverse = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let column = 0; column < size; column += 1) {
    for (let row = column; row < size; row += 1) {
      let sum = row === column ? 1 : 0;
      for (let j = column; j < row; j += 1) sum -= matrix[row]![j]! * inverse[j]![column]!;
      inverse[row]![column] = sum / matrix[row]![row]!;
    }
  }
  return inverse;
}

const INVERSE = lowerInverse(GAMMAS);
const times = (row: readonly number[]) =>
  INVERSE[0]!.map((_, column) => row.reduce((sum, value, j) => sum + value * INVERSE[j]![column]!, 0));
/** Stage i is taken at y0 + Σ STAGE[i][j] u_j. */
const STAGE = ALPHA.map(times);
/** Right-hand side of stage i holds Σ CARRY[i][j] u_j / h. */
const CARRY = INVERSE.map((row, i) => row.map((value, j) => (i === j ? 0 : -value)));

export class Stepper {
  readonly world: World;
  readonly scratch: Scratch;
  /** Mean process rates of the last step, when it was asked to record. */
  readonly rates: Float64Array;
  private readonly stageRates: Float64Array;
  private readonly rhs: Float64Array;
  private readonly at: Float64Array;
  private readonly u: readonly Float64Array[];
  private readonly implicit: Float64Array;

  constructor(world: World) {
    this.world = world;
    const kinds = world.species.length;
    this.scratch = new Scratch(kinds);
    this.rates = new Float64Array(rateCount(kinds));
    this.stageRates = new Float64Array(rateCount(kinds));
    this.rhs = new Float64Array(world.size);
    this.at = new Float64Array(world.size);
    this.u = Array.from({ length: STAGES }, () => new Float64Array(world.size));
    this.implicit = new Float64Array(IMPLICIT.count);
  }

  /** From `y` over `h` days into `out`; with `record`, leaves the step's mean process rates in `rates`. */
  step(y: Float64Array, h: number, out: Float64Array, record: boolean): void {
    const { world, scratch, rhs, at, u, implicit } = this;
    const size = world.size;
    const invH = 1 / h;
    const [u0, u1, u2, u3] = u as [Float64Array, Float64Array, Float64Array, Float64Array];
    if (record) this.rates.fill(0);
    const invD = h * GAMMA;

    derivatives(world, y, rhs, scratch, true, record ? this.stageRates : null);
    factor(world, scratch.jac, 1 / invD, implicit);
    if (record) this.addStage(0);
    for (let i = 0; i < size; i += 1) u0[i] = rhs[i]! * invD;
    solve(world, scratch.jac, implicit, rhs, u0);

    const a10 = STAGE[1]![0]!;
    for (let i = 0; i < size; i += 1) at[i] = y[i]! + a10 * u0[i]!;
    derivatives(world, at, rhs, scratch, false, record ? this.stageRates : null);
    if (record) this.addStage(1);
    const c10 = CARRY[1]![0]! * invH;
    for (let i = 0; i < size; i += 1) {
      const b = rhs[i]! + c10 * u0[i]!;
      rhs[i] = b;
      u1[i] = b * invD;
    }
    solve(world, scratch.jac, implicit, rhs, u1);

    const a20 = STAGE[2]![0]!;
    const a21 = STAGE[2]![1]!;
    for (let i = 0; i < size; i += 1) at[i] = y[i]! + a20 * u0[i]! + a21 * u1[i]!;
    derivatives(world, at, rhs, scratch, false, record ? this.stageRates : null);
    if (record) this.addStage(2);
    const c20 = CARRY[2]![0]! * invH;
    const c21 = CARRY[2]![1]! * invH;
    for (let i = 0; i < size; i += 1) {
      const b = rhs[i]! + c20 * u0[i]! + c21 * u1[i]!;
      rhs[i] = b;
      u2[i] = b * invD;
    }
    solve(world, scratch.jac, implicit, rhs, u2);

    const a30 = STAGE[3]![0]!;
    const a31 = STAGE[3]![1]!;
    const a32 = STAGE[3]![2]!;
    for (let i = 0; i < size; i += 1) at[i] = y[i]! + a30 * u0[i]! + a31 * u1[i]! + a32 * u2[i]!;
    derivatives(world, at, rhs, scratch, false, record ? this.stageRates : null);
    if (record) this.addStage(3);
    const c30 = CARRY[3]![0]! * invH;
    const c31 = CARRY[3]![1]! * invH;
    const c32 = CARRY[3]![2]! * invH;
    for (let i = 0; i < size; i += 1) {
      const b = rhs[i]! + c30 * u0[i]! + c31 * u1[i]! + c32 * u2[i]!;
      rhs[i] = b;
      u3[i] = b * invD;
    }
    solve(world, scratch.jac, implicit, rhs, u3);
    // stiffly accurate: the weights are the last stage's own, so the step ends one solve beyond its argument
    for (let i = 0; i < size; i += 1) out[i] = at[i]! + u3[i]!;
    if (record) {
      for (let i = 0; i < size; i += 1) {
        at[i] = WEIGHTS[0]! * u0[i]! + WEIGHTS[1]! * u1[i]! + WEIGHTS[2]! * u2[i]! + WEIGHTS[3]! * u3[i]!;
      }
      addImplicitPart(world, scratch.jac, at, this.rates);
    }
  }

  private addStage(stage: number): void {
    const weight = WEIGHTS[stage]!;
    for (let i = 0; i < this.rates.length; i += 1)
      this.rates[i] = this.rates[i]! + weight * this.stageRates[i]!;
  }
}
