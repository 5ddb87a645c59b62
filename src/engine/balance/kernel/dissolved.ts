/** 4.2 nitrification, 4.3 denitrification and fixation, 4.7 sorption. */
import { NO2, NO3, PO4, PRK, PSB, TAN, XA, XN } from "../pools.ts";
import { SCALAR, type World } from "../world.ts";
import { JAC, RATE, type Scratch } from "./layout.ts";

export function dissolved(
  world: World,
  y: Float64Array,
  dy: Float64Array,
  scratch: Scratch,
  wantJacobian: boolean,
  rates: Float64Array | null,
): void {
  const { c } = world;
  const invV = c[SCALAR.invV]!;
  const tan = y[TAN]! * invV;
  const no2 = y[NO2]! * invV;
  const no3 = y[NO3]! * invV;
  const po4 = y[PO4]! * invV;
  const xa = y[XA]!;
  const xn = y[XN]!;
  const roomA = 1 / (c[SCALAR.KT]! + tan);
  const roomN = 1 / (c[SCALAR.KI]! + no2);
  const nitA = xa * c[SCALAR.nitA]! * tan * roomA;
  const nitN = xn * c[SCALAR.nitN]! * no2 * roomN;
  dy[XA] = xa * (c[SCALAR.muA]! * tan * roomA * (1 - xa * c[SCALAR.capA]!) - c[SCALAR.lossA]!);
  dy[XN] = xn * (c[SCALAR.muN]! * no2 * roomN * (1 - xn * c[SCALAR.capN]!) - c[SCALAR.lossN]!);
  const roomDen = 1 / (c[SCALAR.Kdn]! + no3);
  const den = c[SCALAR.den]! * no3 * roomDen;
  const fix = c[SCALAR.fix]! / (c[SCALAR.Kfx]! + tan + no3);
  const roomRock = 1 / (c[SCALAR.KRock]! + po4);
  const rockIn = c[SCALAR.rockIn]! * po4 * roomRock;
  const rockOut = c[SCALAR.rockOut]! * y[PRK]!;
  const sorbRate = c[SCALAR.sorb]! * (1 - y[PSB]! * c[SCALAR.invCapSorb]!);
  const sorb = sorbRate * y[PO4]!;
  dy[TAN] = dy[TAN]! + fix - nitA + c[SCALAR.feedTan]! + c[SCALAR.endo]!;
  dy[NO2] = nitA - nitN;
  dy[NO3] = dy[NO3]! + nitN - den;
  dy[PO4] = dy[PO4]! - sorb - rockIn + rockOut + c[SCALAR.feedPo4]!;
  dy[PSB] = sorb;
  dy[PRK] = rockIn - rockOut;

  if (wantJacobian) {
    const jac = scratch.jac;
    jac[JAC.nitA] = xa * c[SCALAR.nitA]! * c[SCALAR.KT]! * roomA * roomA * invV;
    jac[JAC.nitN] = xn * c[SCALAR.nitN]! * c[SCALAR.KI]! * roomN * roomN * invV;
    jac[JAC.den] = c[SCALAR.den]! * c[SCALAR.Kdn]! * roomDen * roomDen * invV;
    jac[JAC.rock] = c[SCALAR.rockIn]! * c[SCALAR.KRock]! * roomRock * roomRock * invV;
    jac[JAC.sorb] = sorbRate;
  }
  if (rates !== null) {
    rates[RATE.nitA] = nitA;
    rates[RATE.nitN] = nitN;
    rates[RATE.den] = den;
    rates[RATE.fix] = fix;
    rates[RATE.sorb] = sorb;
    rates[RATE.rockIn] = rockIn;
    rates[RATE.rockOut] = rockOut;
    rates[RATE.one] = 1;
  }
}
