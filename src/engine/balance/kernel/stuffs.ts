/** 4.4 feed, 4.5 decay, 4.6 transport. */
import { D, K, M, O, PO4, Q, R, S, TAN, W } from "../pools.ts";
import { ELEMENT, SCALAR, type World } from "../world.ts";
import { RATE, type Scratch } from "./layout.ts";

/** 4.4 feed, 4.5 decay, 4.6 transport, and what the crew takes from leftovers, carrion and detritus (4.8). */
export function stuffs(
  world: World,
  y: Float64Array,
  dy: Float64Array,
  scratch: Scratch,
  rates: Float64Array | null,
): void {
  const { c, element } = world;
  const { cleared, egested } = scratch;
  const domD = c[SCALAR.domD]!;
  const refD = c[SCALAR.refD]!;
  const domW = c[SCALAR.domW]!;
  const domK = c[SCALAR.domK]!;
  const crumbW = c[SCALAR.crumbW]!;
  const crumbK = c[SCALAR.crumbK]!;
  const faecD = c[SCALAR.faecD]!;
  const clD = cleared[4]!;
  const clQ = cleared[5]!;
  const clW = cleared[6]!;
  const clK = cleared[7]!;
  for (let e = 0; e < 3; e += 1) {
    const at = e * ELEMENT.stride;
    const w = y[W + e]!;
    const k = y[K + e]!;
    const s = y[S + e]!;
    const d = y[D + e]!;
    const q = y[Q + e]!;
    const r = y[R + e]!;
    const m = y[M + e]!;
    const o = y[O + e]!;
    const decayW = c[SCALAR.kW]! * w;
    const decayK = c[SCALAR.kK]! * k;
    const decayS = element[at + ELEMENT.kS]! * s;
    const decayD = element[at + ELEMENT.kD]! * d;
    const decayQ = element[at + ELEMENT.kQ]! * q;
    const decayR = c[SCALAR.kR]! * r;
    const decayM = element[at + ELEMENT.kM]! * m;
    const decayO = c[SCALAR.kO]! * o;
    const settle = c[SCALAR.kSet]! * s;
    const settleD = c[SCALAR.shD]! * settle;
    const filter = c[SCALAR.kFil]! * s;
    const skimS = c[SCALAR.kSkS]! * s;
    const skimO = c[SCALAR.kSkO]! * o;
    const lift = c[SCALAR.kRes]! * d;
    const soft = decayS + decayD + decayQ;
    const mineral =
      decayW * (1 - domW - crumbW) +
      decayK * (1 - domK - crumbK) +
      soft * (1 - domD - refD) +
      decayM * (1 - domD) +
      decayR +
      decayO;
    const faeces = egested[4]! * d + egested[5]! * q + egested[6]! * w + egested[7]! * k;
    dy[W + e] = element[at + ELEMENT.feedW]! - decayW - clW * w;
    dy[K + e] = dy[K + e]! - decayK - clK * k;
    dy[S + e] =
      dy[S + e]! +
      element[at + ELEMENT.feedS]! +
      crumbW * decayW +
      crumbK * decayK +
      lift -
      decayS -
      settle -
      filter -
      skimS;
    dy[D + e] = dy[D + e]! + settleD + faecD * faeces - decayD - lift - clD * d;
    dy[Q + e] = dy[Q + e]! + settle - settleD + (1 - faecD) * faeces - decayQ - clQ * q;
    dy[R + e] = refD * soft - decayR;
    dy[M + e] = filter - decayM;
    dy[O + e] =
      dy[O + e]! +
      element[at + ELEMENT.feedO]! +
      domW * decayW +
      domK * decayK +
      domD * (soft + decayM) -
      decayO -
      skimO;
    if (e > 0) {
      const into = e === 1 ? TAN : PO4;
      dy[into] = dy[into]! + mineral + clD * d + clQ * q + clW * w + clK * k - faeces;
    }
    if (rates !== null) {
      rates[RATE.decay + e] = decayW;
      rates[RATE.decay + 3 + e] = decayK;
      rates[RATE.decay + 6 + e] = decayS;
      rates[RATE.decay + 9 + e] = decayD;
      rates[RATE.decay + 12 + e] = decayQ;
      rates[RATE.decay + 15 + e] = decayR;
      rates[RATE.decay + 18 + e] = decayM;
      rates[RATE.decay + 21 + e] = decayO;
      rates[RATE.settle + e] = settle;
      rates[RATE.filter + e] = filter;
      rates[RATE.skimS + e] = skimS;
      rates[RATE.skimO + e] = skimO;
      rates[RATE.lift + e] = lift;
    }
  }
}
