/**
 * One step in time: ROS34PW2, four stages, order 3, L-stable, and of W type: its order holds with an
 * approximate Jacobian, so that only the few stiff terms are treated implicitly and no general LU is needed.
 * Rang & Angermann 2005, BIT 45:761-787; coefficients from memory, order confirmed by rosenbrock.test.ts.
 *
 * Written in the transformed stages u = Γ k, so that no product of Jacobian and vector is formed. Every implicit
 * term enters with all its rows, hence nitrogen and phosphorus are conserved to rounding by every step.
 */
import { derivatives, JAC, RATE, rateCount, Scratch } from "./kernel.ts";
import { D, FG, K, M, NO2, NO3, O, PO4, POOL_COUNT, PRK, PSB, Q, R, S, TAN, W } from "./pools.ts";
import { ALGA, ALGA_COUNT, ELEMENT, KIND, SCALAR, type World } from "./world.ts";

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

/** Numbers of one factorised step: the few that the substitution below needs. */
const IMPLICIT = {
  invD: 0,
  invW: 1,
  invK: 2,
  invS: 3, // three elements
  inv2: 6,
  solve3: 7, // 3 x 3 inverse for TAN, NO3, PO4
  count: 16,
} as const;

/** Prepares (1/(γh) I - A) for substitution: leftovers, carrion, suspended matter, then TAN, NO2, NO3, PO4. */
function factor(world: World, jac: Float64Array, d: number, to: Float64Array): void {
  const { c, alga, element } = world;
  to[IMPLICIT.invD] = 1 / d;
  to[IMPLICIT.invW] = 1 / (d + c[SCALAR.kW]! + jac[JAC.lossW]!);
  to[IMPLICIT.invK] = 1 / (d + c[SCALAR.kK]! + jac[JAC.lossK]!);
  for (let e = 0; e < 3; e += 1) {
    const loss =
      element[e * ELEMENT.stride + ELEMENT.kS]! + c[SCALAR.kSet]! + c[SCALAR.kFil]! + c[SCALAR.kSkS]!;
    to[IMPLICIT.invS + e] = 1 / (d + loss);
  }
  const inv2 = 1 / (d + jac[JAC.nitN]!);
  to[IMPLICIT.inv2] = inv2;
  let tt = d + jac[JAC.nitA]!;
  let tn = 0;
  let tp = 0;
  let nt = -jac[JAC.nitN]! * inv2 * jac[JAC.nitA]!;
  let nn = d + jac[JAC.den]!;
  let np = 0;
  let pt = 0;
  let pn = 0;
  let pp = d + jac[JAC.rock]! + jac[JAC.sorb]!;
  for (let i = 0; i < ALGA_COUNT; i += 1) {
    const at = JAC.alga + i * JAC.algaStride;
    const qN = alga[i * ALGA.stride + ALGA.qN]!;
    const qP = alga[i * ALGA.stride + ALGA.qP]!;
    tt += qN * jac[at + 3]!;
    tn += qN * jac[at + 4]!;
    tp += qN * jac[at + 5]!;
    nt += qN * (jac[at]! - jac[at + 3]!);
    nn += qN * (jac[at + 1]! - jac[at + 4]!);
    np += qN * (jac[at + 2]! - jac[at + 5]!);
    pt += qP * jac[at]!;
    pn += qP * jac[at + 1]!;
    pp += qP * jac[at + 2]!;
  }
  const c00 = nn * pp - np * pn;
  const c10 = np * pt - nt * pp;
  const c20 = nt * pn - nn * pt;
  const invDet = 1 / (tt * c00 + tn * c10 + tp * c20);
  const at = IMPLICIT.solve3;
  to[at] = c00 * invDet;
  to[at + 1] = (tp * pn - tn * pp) * invDet;
  to[at + 2] = (tn * np - tp * nn) * invDet;
  to[at + 3] = c10 * invDet;
  to[at + 4] = (tt * pp - tp * pt) * invDet;
  to[at + 5] = (tp * nt - tt * np) * invDet;
  to[at + 6] = c20 * invDet;
  to[at + 7] = (tn * pt - tt * pn) * invDet;
  to[at + 8] = (tt * nn - tn * nt) * invDet;
}

/** Solves (1/(γh) I - A) u = b by substitution; `u` comes in as γh b, the solution of every row without an A. */
function solve(world: World, jac: Float64Array, f: Float64Array, b: Float64Array, u: Float64Array): void {
  const { c, element } = world;
  const invD = f[IMPLICIT.invD]!;
  const kW = c[SCALAR.kW]!;
  const kK = c[SCALAR.kK]!;
  const domW = c[SCALAR.domW]!;
  const domK = c[SCALAR.domK]!;
  const crumbW = c[SCALAR.crumbW]!;
  const crumbK = c[SCALAR.crumbK]!;
  const domD = c[SCALAR.domD]!;
  const refD = c[SCALAR.refD]!;
  const kSet = c[SCALAR.kSet]!;
  const shD = c[SCALAR.shD]!;
  const faecD = c[SCALAR.faecD]!;
  const egestW = jac[JAC.egestW]!;
  const egestK = jac[JAC.egestK]!;
  let tan = b[TAN]!;
  let po4 = b[PO4]!;
  for (let e = 0; e < 3; e += 1) {
    const w = b[W + e]! * f[IMPLICIT.invW]!;
    const k = b[K + e]! * f[IMPLICIT.invK]!;
    const s = (b[S + e]! + kW * crumbW * w + kK * crumbK * k) * f[IMPLICIT.invS + e]!;
    const kS = element[e * ELEMENT.stride + ELEMENT.kS]!;
    const faeces = egestW * w + egestK * k;
    u[W + e] = w;
    u[K + e] = k;
    u[S + e] = s;
    u[D + e] = u[D + e]! + (shD * kSet * s + faecD * faeces) * invD;
    u[Q + e] = u[Q + e]! + ((1 - shD) * kSet * s + (1 - faecD) * faeces) * invD;
    u[R + e] = u[R + e]! + refD * kS * s * invD;
    u[M + e] = u[M + e]! + c[SCALAR.kFil]! * s * invD;
    let dom = domW * kW * w + domK * kK * k + domD * kS * s;
    if (e === 0) {
      dom += jac[JAC.mucusW]! * w + jac[JAC.mucusK]! * k;
      const kinds = world.species.length;
      for (let i = 0; i < kinds; i += 1) {
        const at = POOL_COUNT + kinds + i;
        u[at] = u[at]! + (jac[JAC.reserve + 2 * i]! * w + jac[JAC.reserve + 2 * i + 1]! * k) * invD;
      }
    } else {
      const mineral =
        kW * (1 - domW - crumbW) * w +
        kK * (1 - domK - crumbK) * k +
        kS * (1 - domD - refD) * s +
        jac[JAC.lossW]! * w +
        jac[JAC.lossK]! * k -
        faeces;
      if (e === 1) tan += mineral;
      else po4 += mineral;
    }
    u[O + e] = u[O + e]! + dom * invD;
  }
  const no2 = b[NO2]! * f[IMPLICIT.inv2]!;
  const no3 = b[NO3]! + jac[JAC.nitN]! * no2;
  const at = IMPLICIT.solve3;
  const uT = f[at]! * tan + f[at + 1]! * no3 + f[at + 2]! * po4;
  const u3 = f[at + 3]! * tan + f[at + 4]! * no3 + f[at + 5]! * po4;
  const uP = f[at + 6]! * tan + f[at + 7]! * no3 + f[at + 8]! * po4;
  u[TAN] = uT;
  u[NO2] = no2 + jac[JAC.nitA]! * uT * f[IMPLICIT.inv2]!;
  u[NO3] = u3;
  u[PO4] = uP;
  u[PSB] = u[PSB]! + jac[JAC.sorb]! * uP * invD;
  u[PRK] = u[PRK]! + jac[JAC.rock]! * uP * invD;
  for (let i = 0; i < ALGA_COUNT; i += 1) {
    const j = JAC.alga + i * JAC.algaStride;
    u[FG + i] = u[FG + i]! + (jac[j]! * uT + jac[j + 1]! * u3 + jac[j + 2]! * uP) * invD;
  }
}

/** What the implicit terms add to the mean process rates of a step: A times the weighted stages. */
function addImplicitPart(world: World, jac: Float64Array, u: Float64Array, rates: Float64Array): void {
  const { c, element, kind } = world;
  const add = (at: number, amount: number) => {
    rates[at] = rates[at]! + amount;
  };
  for (let i = 0; i < ALGA_COUNT; i += 1) {
    const j = JAC.alga + i * JAC.algaStride;
    const to = RATE.alga + i * RATE.algaStride;
    const onTan = jac[j + 3]! * u[TAN]! + jac[j + 4]! * u[NO3]! + jac[j + 5]! * u[PO4]!;
    add(to, onTan);
    add(to + 1, jac[j]! * u[TAN]! + jac[j + 1]! * u[NO3]! + jac[j + 2]! * u[PO4]! - onTan);
  }
  add(RATE.nitA, jac[JAC.nitA]! * u[TAN]!);
  add(RATE.nitN, jac[JAC.nitN]! * u[NO2]!);
  add(RATE.den, jac[JAC.den]! * u[NO3]!);
  add(RATE.rockIn, jac[JAC.rock]! * u[PO4]!);
  add(RATE.sorb, jac[JAC.sorb]! * u[PO4]!);
  for (let e = 0; e < 3; e += 1) {
    add(RATE.decay + e, c[SCALAR.kW]! * u[W + e]!);
    add(RATE.decay + 3 + e, c[SCALAR.kK]! * u[K + e]!);
    add(RATE.decay + 6 + e, element[e * ELEMENT.stride + ELEMENT.kS]! * u[S + e]!);
    add(RATE.settle + e, c[SCALAR.kSet]! * u[S + e]!);
    add(RATE.filter + e, c[SCALAR.kFil]! * u[S + e]!);
    add(RATE.skimS + e, c[SCALAR.kSkS]! * u[S + e]!);
    world.species.forEach((_, s) => {
      const perReserve = 1 / (c[SCALAR.phi0]! * kind[s * KIND.stride + KIND.eta]!);
      const block = RATE.kind + s * RATE.kindStride;
      add(block + 6 * 3 + e, jac[JAC.reserve + 2 * s]! * perReserve * u[W + e]!);
      add(block + 7 * 3 + e, jac[JAC.reserve + 2 * s + 1]! * perReserve * u[K + e]!);
    });
  }
}
