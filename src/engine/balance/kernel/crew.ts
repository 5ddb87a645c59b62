/** 4.8 feeding of the crew, 4.9 reserve and death. */
import { K, NICHE_COUNT, NICHE_POOL, POOL_COUNT, TAN } from "../pools.ts";
import { ALGA, KIND, SCALAR, type World } from "../world.ts";
import { JAC, RATE, type Scratch } from "./layout.ts";
import { availability, grazing, readCarbon } from "./niches.ts";

/** 4.8 feeding of the crew, 4.9 reserve and death. */
export function crew(
  world: World,
  y: Float64Array,
  dy: Float64Array,
  scratch: Scratch,
  wantJacobian: boolean,
  rates: Float64Array | null,
): void {
  const { c, kind, dietFrom, dietNiche, dietWeight } = world;
  const { carbon, available, offer, cleared, egested } = scratch;
  const count = world.species.length;
  for (let j = 0; j < NICHE_COUNT; j += 1) {
    cleared[j] = 0;
    egested[j] = 0;
  }
  readCarbon(y, carbon);
  availability(world, y, scratch);
  const phi0 = c[SCALAR.phi0]!;
  const hs = c[SCALAR.hs]!;
  const invHc = c[SCALAR.invHc]!;
  const m1 = c[SCALAR.m1]!;
  const z = y[TAN]! * c[SCALAR.zPerTan]!;
  const poison = (c[SCALAR.mtox]! * z * z) / (1 + z * z);
  const smooth = world.mortality === "expected" ? 1 : 0;
  let slime = 0;
  let mucusW = 0;
  let mucusK = 0;
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
    slime += pull * offered * kind[at + KIND.mucus]!;
    for (let k = first; k < end; k += 1) {
      const j = dietNiche[k]!;
      const weight = dietWeight[k]!;
      cleared[j] = cleared[j]! + weight * pull;
      egested[j] = egested[j]! + weight * pullEgested;
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
      const onW = available[6]! * kind[at + KIND.weight + 6]!;
      const onK = available[7]! * kind[at + KIND.weight + 7]!;
      scratch.jac[JAC.reserve + 2 * s] = toReserve * onW;
      scratch.jac[JAC.reserve + 2 * s + 1] = toReserve * onK;
      mucusW += pull * kind[at + KIND.mucus]! * onW;
      mucusK += pull * kind[at + KIND.mucus]! * onK;
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
  }
  dy[K] = carrionC;
  dy[K + 1] = carrionN;
  dy[K + 2] = carrionP;
  grazing(world, dy, scratch, slime);
  if (wantJacobian) {
    const jac = scratch.jac;
    jac[JAC.lossW] = cleared[6]!;
    jac[JAC.egestW] = egested[6]!;
    jac[JAC.mucusW] = mucusW;
    jac[JAC.lossK] = cleared[7]!;
    jac[JAC.egestK] = egested[7]!;
    jac[JAC.mucusK] = mucusK;
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
