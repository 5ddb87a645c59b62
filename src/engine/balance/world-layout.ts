/** What stands where in a world's flat arrays. Equations: docs/model/balance.md, sections named in world.ts. */
import { NICHE_COUNT } from "./pools.ts";

/** Scalars: index into `World.c`. */
export const SCALAR = {
  invV: 0,
  nitA: 1, // th_A
  KT: 2,
  nitN: 3, // th_N
  KI: 4,
  muA: 5, // muA th_A
  muN: 6,
  capA: 7, // 1 / (gamA Ac)
  capN: 8,
  lossA: 9, // bA th_D
  lossN: 10,
  den: 11, // (dSand As + dRock rockKg) th_D
  Kdn: 12,
  fix: 13, // nfix (Ar + As) light Kfx
  Kfx: 14,
  kapFil: 15,
  feedTan: 16,
  feedPo4: 17,
  endo: 18,
  kW: 19,
  kK: 20,
  kR: 21,
  kO: 22,
  kSet: 23,
  shD: 24,
  kFil: 25,
  kSkS: 26,
  kSkO: 27,
  kRes: 28,
  domW: 29,
  crumbW: 30,
  domK: 31,
  crumbK: 32,
  domD: 33,
  refD: 34,
  sorb: 35,
  invCapSorb: 36,
  rockIn: 37, // kRock capRock rockKg
  KRock: 38,
  rockOut: 39,
  faecD: 40,
  disl: 41,
  phi0: 42,
  hs: 43,
  invHc: 44,
  m1: 45,
  zPerTan: 46, // un-ionised share / (V utox)
  mtox: 47,
  invBesc2: 48,
  invAr: 49,
  muMac: 50, // muMac th_L macLight
  invMacMax: 51,
  thM: 52,
  feedCo2: 53,
  count: 54,
} as const;

/** Per alga (film on glass, rock, sand, filaments, macroalgae): index into its stride of `World.alga`. */
export const ALGA_COUNT = 5;
export const ALGA = {
  invArea: 0,
  carbon: 1, // light-limited ceiling, mg C m-2 d-1
  kap: 2,
  mu: 3,
  mu2: 4,
  KA: 5,
  KN: 6,
  KP: 7,
  perN: 8, // 1e-3 qN / vN
  perP: 9,
  qN: 10,
  qP: 11,
  resp: 12,
  slough: 13,
  sloughPerB: 14,
  settling: 15, // inoc * area, mg C/d
  stride: 16,
} as const;

/** Per element C, N, P: index into its stride of `World.element`. */
export const ELEMENT = {
  kS: 0,
  kD: 1,
  kQ: 2,
  kM: 3,
  feedW: 4,
  feedS: 5,
  feedFish: 6,
  feedO: 7,
  stride: 8,
} as const;

/** Per niche: index into its stride of `World.niche`. */
export const NICHE = { invScale: 0, invDensityArea: 1, refuge: 2, invCrowding: 3, stride: 4 } as const;

/** Per kind of animal: index into its stride of `World.kind`; its eight niche weights follow. */
export const KIND = {
  imax: 0, // Imax th_M
  appetiteFall: 1, // 1 - beta
  eFull: 2,
  egested: 3, // 1 - a
  mucus: 4, // a - eta
  eta: 5,
  resp: 6, // phi0 R th_M
  m0: 7,
  bC: 8,
  bN: 9,
  bP: 10,
  weight: 11,
  stride: 11 + NICHE_COUNT,
} as const;
