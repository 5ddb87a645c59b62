/**
 * The terms that a step treats implicitly, and how they are solved for without a general LU: uptake, nitrification,
 * denitrification and sorption by TAN, NO2, NO3, PO4; the linear losses of leftovers, carrion, suspended matter.
 * Every term has all its rows, so that nitrogen and phosphorus are conserved. docs/model/balance.md, "Steps".
 */
import { JAC, RATE } from "./kernel.ts";
import { D, FG, K, M, NO2, NO3, O, PO4, POOL_COUNT, PRK, PSB, Q, R, S, TAN, W } from "./pools.ts";
import { ALGA, ALGA_COUNT, ELEMENT, KIND, SCALAR, type World } from "./world.ts";

/** Numbers of one factorised step: the few that the substitution below needs. */
export const IMPLICIT = {
  invD: 0,
  invW: 1,
  invK: 2,
  invS: 3, // three elements
  inv2: 6,
  solve3: 7, // 3 x 3 inverse for TAN, NO3, PO4
  count: 16,
} as const;

/** Prepares (1/(γh) I - A) for substitution: leftovers, carrion, suspended matter, then TAN, NO2, NO3, PO4. */
export function factor(world: World, jac: Float64Array, d: number, to: Float64Array): void {
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
export function solve(
  world: World,
  jac: Float64Array,
  f: Float64Array,
  b: Float64Array,
  u: Float64Array,
): void {
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
export function addImplicitPart(world: World, jac: Float64Array, u: Float64Array, rates: Float64Array): void {
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
