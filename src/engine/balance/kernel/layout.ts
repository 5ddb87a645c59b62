/** Where the kernel leaves its results, by index, and the space it works in. */
import { NICHE_COUNT } from "../pools.ts";

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
const jacobianSize = (speciesCount: number): number => JAC.reserve + 2 * speciesCount;

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
  constructor(speciesCount: number) {
    this.jac = new Float64Array(jacobianSize(speciesCount));
  }
}
