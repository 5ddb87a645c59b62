/**
 * The kernel: what every pool gains and loses a day, from its state. Smooth, without a branch on a state.
 * Three outputs, the last two on request: derivatives, the entries of the approximate Jacobian (for the
 * integrator), and the rate of every process by itself (for the ledger and the positivity guard, which read
 * them through transfers.ts). Equations: docs/model/balance.md, sections named in the comments.
 *
 * The innermost code of every forecast: flat arrays, no allocation.
 */
import {
  D,
  FF,
  FG,
  K,
  M,
  MA,
  NICHE_COUNT,
  NICHE_POOL,
  NO2,
  NO3,
  O,
  PO4,
  POOL_COUNT,
  PRK,
  PSB,
  Q,
  R,
  S,
  TAN,
  W,
  XA,
  XN,
} from "./pools.ts";
import { ALGA, ALGA_COUNT, ELEMENT, KIND, NICHE, SCALAR, type World } from "./world.ts";

const TINY = 1e-30;

/** Entries of the approximate Jacobian: per alga growth by TAN, NO3, PO4 and its uptake of TAN by the same. */
export const JAC = {
  alga: 0,
  algaStride: 6,
  nitA: 30,
  nitN: 31,
  den: 32,
  rock: 33,
  sorb: 34,
  lossW: 35, // crew's clearance of leftovers, 1/d; egested and mucus parts follow
  egestW: 36,
  mucusW: 37,
  lossK: 38,
  egestK: 39,
  mucusK: 40,
  reserve: 41, // per kind: share of cleared leftovers and carrion carbon that reaches its reserve
} as const;
export const jacobianSize = (speciesCount: number): number => JAC.reserve + 2 * speciesCount;

/** Processes recorded for the ledger: index into the rate array. Per kind of animal a block follows. */
export const RATE = {
  alga: 0, // per alga: growth on ammonia, growth on nitrate, respiration, sloughing
  algaStride: 4,
  nitA: 20,
  nitN: 21,
  den: 22,
  fix: 23,
  sorb: 24,
  rockIn: 25,
  rockOut: 26,
  one: 27, // a constant 1: feed, fish, settling cells
  decay: 28, // eight stuffs (W K S D Q R M O) by three elements
  settle: 52, // by three elements each
  filter: 55,
  skimS: 58,
  skimO: 61,
  lift: 64,
  kind: 67,
  /** Per kind: intake from 8 niches by 3 elements, upkeep from the reserve, heads lost, reserve lost. */
  kindStride: NICHE_COUNT * 3 + 3,
  upkeep: NICHE_COUNT * 3,
  deaths: NICHE_COUNT * 3 + 1,
  reserveLost: NICHE_COUNT * 3 + 2,
} as const;
export const rateCount = (speciesCount: number): number => RATE.kind + speciesCount * RATE.kindStride;

/** Space the kernel works in, one a run: nothing is allocated while integrating. */
export class Scratch {
  readonly jac: Float64Array;
  readonly carbon = new Float64Array(NICHE_COUNT);
  readonly pressure = new Float64Array(NICHE_COUNT);
  readonly available = new Float64Array(NICHE_COUNT);
  readonly offer = new Float64Array(NICHE_COUNT);
  readonly cleared = new Float64Array(NICHE_COUNT);
  readonly egested = new Float64Array(NICHE_COUNT);
  readonly mucus = new Float64Array(NICHE_COUNT);
  constructor(speciesCount: number) {
    this.jac = new Float64Array(jacobianSize(speciesCount));
  }
}

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
  const c = world.c;
  crew(world, y, dy, scratch, wantJacobian, rates);
  algae(world, y, dy, scratch, wantJacobian, rates);
  stuffs(world, y, dy, scratch, rates);

  // 4.2 nitrification, 4.3 denitrification and fixation, 4.7 sorption
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

/** 4.1 growth, respiration, sloughing of films, filaments and macroalgae. */
function algae(
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
  const shade = Math.exp(-c[SCALAR.kapFil]! * y[FF]! * c[SCALAR.invAr]!);
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
      let lit = (alga[at + ALGA.carbon]! * (1 - Math.exp(-alga[at + ALGA.kap]! * areal))) / (areal + TINY);
      if (i === 1) lit *= shade;
      const mu = alga[at + ALGA.mu]!;
      g0 = (mu * lit) / Math.sqrt(alga[at + ALGA.mu2]! + lit * lit);
    } else {
      g0 = c[SCALAR.muMac]! * (1 - crop * c[SCALAR.invMacMax]!);
    }
    const demand = g0 * areal;
    const dN = demand * alga[at + ALGA.perN]!;
    const dP = demand * alga[at + ALGA.perP]!;
    const invA = 1 / (alga[at + ALGA.KA]! + dN);
    const invN = 1 / (alga[at + ALGA.KN]! + dN);
    const invP = 1 / (alga[at + ALGA.KP]! + dP);
    const xA = tan * invA;
    const xN = no3 * invN;
    const xP = po4 * invP;
    const x = xA + xN;
    const q = 1 / (x * xP + x + xP + TINY);
    const potential = g0 * crop;
    const growth = potential * x * xP * q;
    const growthTan = potential * xA * xP * q;
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
      // w = xP q; dw/dx = -w q (1 + xP); dw/dxP = x q²
      const jac = scratch.jac;
      const to = JAC.alga + i * JAC.algaStride;
      const w = xP * q;
      const dwdx = -w * q * (1 + xP);
      const dwdP = x * q * q;
      const perA = potential * invA * invV;
      const perN = potential * invN * invV;
      const perP = potential * invP * invV;
      jac[to] = perA * (w + x * dwdx);
      jac[to + 1] = perN * (w + x * dwdx);
      jac[to + 2] = perP * x * dwdP;
      jac[to + 3] = perA * (w + xA * dwdx);
      jac[to + 4] = perN * xA * dwdx;
      jac[to + 5] = perP * xA * dwdP;
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

/** 4.4 feed, 4.5 decay, 4.6 transport, and what the crew takes from leftovers, carrion and detritus (4.8). */
function stuffs(
  world: World,
  y: Float64Array,
  dy: Float64Array,
  scratch: Scratch,
  rates: Float64Array | null,
): void {
  const { c, element } = world;
  const { cleared, egested, mucus } = scratch;
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
    if (e === 0) {
      dy[O] = dy[O]! + mucus[4]! * d + mucus[5]! * q + mucus[6]! * w + mucus[7]! * k;
    } else {
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

/** 4.8 feeding of the crew, 4.9 reserve and death. */
function crew(
  world: World,
  y: Float64Array,
  dy: Float64Array,
  scratch: Scratch,
  wantJacobian: boolean,
  rates: Float64Array | null,
): void {
  const { c, kind, dietFrom, dietNiche, dietWeight } = world;
  const { carbon, available, offer, cleared, egested, mucus } = scratch;
  const count = world.species.length;
  cleared.fill(0);
  egested.fill(0);
  mucus.fill(0);
  readCarbon(y, carbon);
  availability(world, y, scratch);
  const phi0 = c[SCALAR.phi0]!;
  const hs = c[SCALAR.hs]!;
  const invHc = c[SCALAR.invHc]!;
  const m1 = c[SCALAR.m1]!;
  const z = y[TAN]! * c[SCALAR.zPerTan]!;
  const poison = (c[SCALAR.mtox]! * z * z) / (1 + z * z);
  const smooth = world.mortality === "expected" ? 1 : 0;
  let carrionC = 0;
  let carrionN = 0;
  let carrionP = 0;
  for (let s = 0; s < count; s += 1) {
    const heads = y[POOL_COUNT + s]!;
    const reserve = y[POOL_COUNT + count + s]!;
    // A kind that is not there at all has no rate of any kind; exact, not a threshold.
    if (heads === 0 && reserve === 0) {
      dy[POOL_COUNT + s] = 0;
      dy[POOL_COUNT + count + s] = 0;
      dy[POOL_COUNT + 2 * count + s] = 0;
      if (wantJacobian) scratch.jac.fill(0, JAC.reserve + 2 * s, JAC.reserve + 2 * s + 2);
      if (rates !== null) {
        const block = RATE.kind + s * RATE.kindStride;
        rates.fill(0, block, block + RATE.kindStride);
      }
      continue;
    }
    const at = s * KIND.stride;
    const first = dietFrom[s]!;
    const end = dietFrom[s + 1]!;
    const level = reserve / (heads * kind[at + KIND.eFull]! + 1e-6);
    let offered = 0;
    for (let k = first; k < end; k += 1) offered += dietWeight[k]! * offer[dietNiche[k]!]!;
    const appetite = 1 - kind[at + KIND.appetiteFall]! * level * level;
    const pull = (heads * kind[at + KIND.imax]! * appetite) / (1 + offered);
    const pullEgested = pull * kind[at + KIND.egested]!;
    const pullMucus = pull * kind[at + KIND.mucus]!;
    for (let k = first; k < end; k += 1) {
      const j = dietNiche[k]!;
      const weight = dietWeight[k]!;
      cleared[j] = cleared[j]! + weight * pull;
      egested[j] = egested[j]! + weight * pullEgested;
      mucus[j] = mucus[j]! + weight * pullMucus;
    }
    const hc = level * invHc;
    const hc2 = hc * hc;
    const death = kind[at + KIND.m0]! + m1 / (1 + hc2 * hc2) + poison;
    const upkeep = (kind[at + KIND.resp]! * heads * (1 + hs) * level) / (level + hs);
    const toReserve = phi0 * kind[at + KIND.eta]! * pull;
    const dead = smooth * death * heads;
    const lost = smooth * death * reserve;
    dy[POOL_COUNT + s] = -dead;
    dy[POOL_COUNT + count + s] = toReserve * offered - upkeep - lost;
    dy[POOL_COUNT + 2 * count + s] = death;
    carrionC += dead * kind[at + KIND.bC]! + lost;
    carrionN += dead * kind[at + KIND.bN]!;
    carrionP += dead * kind[at + KIND.bP]!;
    if (wantJacobian) {
      scratch.jac[JAC.reserve + 2 * s] = toReserve * available[6]! * kind[at + KIND.weight + 6]!;
      scratch.jac[JAC.reserve + 2 * s + 1] = toReserve * available[7]! * kind[at + KIND.weight + 7]!;
    }
    if (rates !== null) {
      const block = RATE.kind + s * RATE.kindStride;
      for (let k = first; k < end; k += 1) {
        const j = dietNiche[k]!;
        recordIntake(world, y, rates, block + 3 * j, j, available[j]! * dietWeight[k]! * pull);
      }
      rates[block + RATE.upkeep] = upkeep;
      rates[block + RATE.deaths] = dead;
      rates[block + RATE.reserveLost] = lost;
    }
  }
  for (let j = 0; j < NICHE_COUNT; j += 1) {
    const share = available[j]!;
    cleared[j] = cleared[j]! * share;
    egested[j] = egested[j]! * share;
    mucus[j] = mucus[j]! * share;
  }
  dy[K] = carrionC;
  dy[K + 1] = carrionN;
  dy[K + 2] = carrionP;
  grazing(world, dy, scratch);
  if (wantJacobian) {
    const jac = scratch.jac;
    jac[JAC.lossW] = cleared[6]!;
    jac[JAC.egestW] = egested[6]!;
    jac[JAC.mucusW] = mucus[6]!;
    jac[JAC.lossK] = cleared[7]!;
    jac[JAC.egestK] = egested[7]!;
    jac[JAC.mucusK] = mucus[7]!;
  }
}

/** What becomes of the algae that the crew eats and loosens. First writer of these rows: it sets, the rest adds. */
function grazing(world: World, dy: Float64Array, scratch: Scratch): void {
  const { c, alga } = world;
  const { carbon, cleared, egested, mucus } = scratch;
  const disl = c[SCALAR.disl]!;
  const faecD = c[SCALAR.faecD]!;
  let looseC = 0;
  let looseN = 0;
  let looseP = 0;
  let faecesC = 0;
  let faecesN = 0;
  let faecesP = 0;
  let tan = 0;
  let po4 = 0;
  let slime = 0;
  for (let i = 0; i < 4; i += 1) {
    const crop = carbon[i]!;
    const at = i * ALGA.stride;
    const qN = alga[at + ALGA.qN]!;
    const qP = alga[at + ALGA.qP]!;
    const eaten = cleared[i]! * crop;
    const faeces = egested[i]! * crop;
    const absorbed = eaten - faeces;
    const loose = disl * eaten;
    dy[FG + i] = -eaten - loose;
    looseC += loose;
    looseN += loose * qN;
    looseP += loose * qP;
    faecesC += faeces;
    faecesN += faeces * qN;
    faecesP += faeces * qP;
    tan += absorbed * qN;
    po4 += absorbed * qP;
    slime += mucus[i]! * crop;
  }
  dy[MA] = 0;
  dy[S] = looseC;
  dy[S + 1] = looseN;
  dy[S + 2] = looseP;
  const inRock = 1 - faecD;
  dy[D] = faecD * faecesC;
  dy[D + 1] = faecD * faecesN;
  dy[D + 2] = faecD * faecesP;
  dy[Q] = inRock * faecesC;
  dy[Q + 1] = inRock * faecesN;
  dy[Q + 2] = inRock * faecesP;
  dy[O] = slime;
  dy[O + 1] = 0;
  dy[O + 2] = 0;
  dy[TAN] = tan;
  dy[PO4] = po4;
}

/** Carbon of each niche's pool. */
function readCarbon(y: Float64Array, carbon: Float64Array): void {
  carbon[0] = y[FG]!;
  carbon[1] = y[FG + 1]!;
  carbon[2] = y[FG + 2]!;
  carbon[3] = y[FG + 3]!;
  carbon[4] = y[D]!;
  carbon[5] = y[Q]!;
  carbon[6] = y[W]!;
  carbon[7] = y[K]!;
}

/** Share of each niche within reach per mg eaten: refuge, size escape of filaments, crowding (4.8). */
function availability(world: World, y: Float64Array, scratch: Scratch): void {
  const { c, niche, kind, dietFrom, dietNiche, dietWeight } = world;
  const { carbon, available, offer, pressure } = scratch;
  const count = world.species.length;
  pressure.fill(0);
  for (let s = 0; s < count; s += 1) {
    const force = y[POOL_COUNT + s]! * kind[s * KIND.stride + KIND.imax]!;
    if (force === 0) continue;
    for (let k = dietFrom[s]!; k < dietFrom[s + 1]!; k += 1) {
      const j = dietNiche[k]!;
      pressure[j] = pressure[j]! + dietWeight[k]! * force;
    }
  }
  for (let j = 0; j < NICHE_COUNT; j += 1) {
    const at = j * NICHE.stride;
    const density = carbon[j]! * niche[at + NICHE.invDensityArea]!;
    const invScale = niche[at + NICHE.invScale]!;
    let reach = density + niche[at + NICHE.refuge]! + TINY;
    if (j === 3) reach *= 1 + density * density * c[SCALAR.invBesc2]!;
    const crowd = 1 + pressure[j]! * invScale * niche[at + NICHE.invCrowding]!;
    const share = (density * invScale) / (reach * crowd);
    available[j] = share;
    offer[j] = share * carbon[j]!;
  }
}

/** What one kind eats from one niche at clearance `clear` (1/d), by element, into three rates from `to` on. */
function recordIntake(
  world: World,
  y: Float64Array,
  rates: Float64Array,
  to: number,
  niche: number,
  clear: number,
): void {
  const pool = NICHE_POOL[niche]!;
  const carbon = clear * y[pool]!;
  rates[to] = carbon;
  if (niche < 4) {
    const at = niche * ALGA.stride;
    rates[to + 1] = carbon * world.alga[at + ALGA.qN]!;
    rates[to + 2] = carbon * world.alga[at + ALGA.qP]!;
  } else {
    rates[to + 1] = clear * y[pool + 1]!;
    rates[to + 2] = clear * y[pool + 2]!;
  }
}
