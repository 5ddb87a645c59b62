/** 4.8 what lies within reach in each niche, and what becomes of the algae taken from them. */
import { D, FG, K, MA, NICHE_COUNT, O, PO4, POOL_COUNT, Q, S, TAN, W } from "../pools.ts";
import { ALGA, KIND, NICHE, SCALAR, type World } from "../world.ts";
import type { Scratch } from "./layout.ts";

const TINY = 1e-30;

/** Carbon of each niche's pool. */
export function readCarbon(y: Float64Array, carbon: Float64Array): void {
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
export function availability(world: World, y: Float64Array, scratch: Scratch): void {
  const { c, niche, kind, dietFrom, dietNiche, dietWeight } = world;
  const { carbon, available, offer, pressure } = scratch;
  const count = world.species.length;
  // a plain loop: filling eight numbers by the built-in costs more than writing them
  for (let j = 0; j < NICHE_COUNT; j += 1) pressure[j] = 0;
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

/**
 * What becomes of the algae that the crew eats and loosens, and of the mucus of all its meals (`slime`, mg C/d).
 * First writer of these rows: it sets, the rest adds.
 */
export function grazing(world: World, dy: Float64Array, scratch: Scratch, slime: number): void {
  const { c, alga } = world;
  const { carbon, cleared, egested } = scratch;
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
