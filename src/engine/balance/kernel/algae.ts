/** 4.1 algae: light, nutrients, growth and losses of films, filaments and macroalgae. */
import { exp } from "../../numeric/elementary.ts";
import { FF, FG, NO3, PO4, S, TAN } from "../pools.ts";
import { ALGA, ALGA_COUNT, SCALAR, type World } from "../world.ts";
import { JAC, RATE, type Scratch } from "./layout.ts";

const TINY = 1e-30;

/** 4.1 growth, respiration, sloughing of films, filaments and macroalgae. */
export function algae(
  world: World,
  y: Float64Array,
  dy: Float64Array,
  scratch: Scratch,
  wantJacobian: boolean,
  rates: Float64Array | null,
): void {
  const { c, alga } = world;
  const invV = c[SCALAR.invV]!;
  const tan = y[TAN]! * invV;
  const no3 = y[NO3]! * invV;
  const po4 = y[PO4]! * invV;
  // what filaments let through to the film below them, and so what they do not catch themselves
  const shade = exp(-c[SCALAR.kapFil]! * y[FF]! * c[SCALAR.invAr]!);
  let dTan = 0;
  let dNo3 = 0;
  let dPo4 = 0;
  let sloughedC = 0;
  let sloughedN = 0;
  let sloughedP = 0;
  for (let i = 0; i < ALGA_COUNT; i += 1) {
    const at = i * ALGA.stride;
    const crop = y[FG + i]!;
    const areal = crop * alga[at + ALGA.invArea]!;
    let g0: number;
    if (i < 4) {
      // light caught by the whole crop, and the specific growth that it and μ allow together
      const passed = i === 3 ? shade : exp(-alga[at + ALGA.kap]! * areal);
      let caught = alga[at + ALGA.carbon]! * (1 - passed);
      if (i === 1) caught *= shade;
      const most = alga[at + ALGA.mu2]! * areal * areal;
      g0 = (alga[at + ALGA.mu]! * caught) / Math.sqrt(most + caught * caught + TINY);
    } else {
      g0 = c[SCALAR.muMac]! * (1 - crop * c[SCALAR.invMacMax]!);
    }
    // x xP / (x xP + x + xP) with every fraction cleared: one division for three half-saturations
    const demand = g0 * areal;
    const dN = demand * alga[at + ALGA.perN]!;
    const halfA = alga[at + ALGA.KA]! + dN;
    const halfN = alga[at + ALGA.KN]! + dN;
    const halfP = alga[at + ALGA.KP]! + demand * alga[at + ALGA.perP]!;
    const onTan = tan * halfN;
    const x = onTan + no3 * halfA;
    const halves = halfA * halfN;
    const q = 1 / (x * (po4 + halfP) + po4 * halves + TINY);
    const potential = g0 * crop;
    const perX = potential * po4 * q;
    const growth = perX * x;
    const growthTan = perX * onTan;
    const resp = alga[at + ALGA.resp]! * crop;
    const slough = (alga[at + ALGA.slough]! + alga[at + ALGA.sloughPerB]! * areal) * crop;
    const qN = alga[at + ALGA.qN]!;
    const qP = alga[at + ALGA.qP]!;
    dy[FG + i] = dy[FG + i]! + growth - resp - slough + alga[at + ALGA.settling]!;
    dTan += qN * (resp - growthTan);
    dNo3 -= qN * (growth - growthTan);
    dPo4 += qP * (resp - growth);
    sloughedC += slough;
    sloughedN += slough * qN;
    sloughedP += slough * qP;
    if (wantJacobian) {
      const jac = scratch.jac;
      const to = JAC.alga + i * JAC.algaStride;
      const ofX = perX * q * po4 * halves * invV;
      const ofP = potential * q * q * x * halfP * invV;
      const crowdedOut = growthTan * q * (po4 + halfP) * invV;
      jac[to] = ofX * halfN;
      jac[to + 1] = ofX * halfA;
      jac[to + 2] = ofP * x;
      jac[to + 3] = perX * halfN * invV - crowdedOut * halfN;
      jac[to + 4] = -crowdedOut * halfA;
      jac[to + 5] = ofP * onTan;
    }
    if (rates !== null) {
      const to = RATE.alga + i * RATE.algaStride;
      rates[to] = growthTan;
      rates[to + 1] = growth - growthTan;
      rates[to + 2] = resp;
      rates[to + 3] = slough;
    }
  }
  dy[TAN] = dy[TAN]! + dTan;
  dy[NO3] = dNo3;
  dy[PO4] = dy[PO4]! + dPo4;
  dy[S] = dy[S]! + sloughedC;
  dy[S + 1] = dy[S + 1]! + sloughedN;
  dy[S + 2] = dy[S + 2]! + sloughedP;
}
