/**
 * A middling tank to invent others around. The laws hold for any values, so these need not follow facts/ when a
 * parameter there moves.
 */
import type { Inputs } from "../inputs.ts";
import type { ParameterValues } from "../parameters.ts";
import type { CrewSpecies } from "../species.ts";
import type { UnionisedShare } from "../world.ts";

export const TYPICAL_PARAMETERS: ParameterValues = {
  ...{ epsFilm: 0.038, epsSand: 0.016, epsFil: 0.038, Ik: 120, kapFilm: 1.2e-3, kapFil: 3e-4 },
  ...{ muFilm: 1, muFil: 0.2, muMac: 0.12, rFilm: 0.05, rFil: 0.02, rMac: 0.01 },
  ...{ sFilm: 0.04, sFil: 0.01, sMac: 0.005, BsFilm: 400, BsFil: 20000, vN: 1.5, vP: 0.85 },
  ...{ KAfilm: 0.014, KNfilm: 0.028, KPfilm: 0.0031, KAfil: 0.056, KNfil: 0.112, KPfil: 0.0217 },
  ...{ KAmac: 0.056, KNmac: 0.112, KPmac: 0.0217 },
  ...{ qNfilm: 0.14, qPfilm: 0.0187, qNfil: 0.0636, qPfil: 0.0047, qNmac: 0.0636, qPmac: 0.0047 },
  ...{ muA: 0.5, muN: 0.34, bA: 0.03, bN: 0.03, KT: 0.8, KI: 0.25, gamA: 280, gamN: 280 },
  ...{ kW: 0.35, kK: 0.4, kS: 0.2, kD: 0.2, kQ: 0.2, kM: 0.3, kR: 3.6e-3, kO: 0.3 },
  ...{ domW: 0.2, crumbW: 0.3, domK: 0.5, crumbK: 0.15, domD: 0.1, refD: 0.19, lamP: 2 },
  ...{ kSet: 4, shD: 0.43, kRes: 0.3, kFil: 1.7, kSkS: 0.3, kSkO: 0.05 },
  ...{ dSand: 12, dRock: 0.1, Kdn: 0.5, nfix: 1, Kfx: 0.05 },
  ...{ kSorb: 0.5, capSorb: 500, kRock: 0.05, capRock: 8, KRock: 0.1, inoc: 0.5 },
  ...{ u0: 0.08, rationMax: 0.05, fN: 0.12, fP: 0.44, fC: 0.2, gN: 0.08, gP: 0.1, gC: 0.08 },
  ...{ oN: 0.15, oC: 0.05, endoN: 0.1, maintFeed: 8e-3, fishNperG: 27, fishPperG: 4.8, fishCperG: 110 },
  ...{ rfG: 15, rfR: 60, rfS: 60, KgFilm: 150, rfFil: 60, KgFil: 150, Besc: 2000, rfDet: 50, KgDet: 300 },
  ...{ rfW: 5e-3, KgW: 0.03, rfK: 0.02, KgK: 0.1, faecD: 0.5, disl: 0.5 },
  ...{ cG: 1, cR: 0.8, cS: 0.8, cF: 0.8, cD: 0.5, cQ: 0.3, cW: 5, cK: 3 },
  ...{ phi0: 0.4, hs: 0.05, hc: 0.12, m1: 0.25, mtox: 0.5, utox: 0.3 },
  ...{ q10dec: 2, q10alg: 1.8, q10anim: 2, q10A: 2.5, q10N: 1.8 },
};

export const TYPICAL_INPUTS: Inputs = {
  ...{ V: 113, Ag: 0.8, Ar: 0.4, As: 0.25, Ac: 4, rockKg: 11 },
  ...{ parG: 60, parR: 100, parS: 90, hours: 9, light: 1, T: 25.5, S: 35, pH: 8.1 },
  ...{ feed: 0.2, feedC: 420, feedN: 77, feedP: 9, fish: 6 },
  ...{ filterOn: 1, skimOn: 1, macLight: 0, macMax: 60_000, kLa: 0.8 },
};

/** A grazing snail, and a scavenger that also eats film. */
export const TYPICAL_CREW: readonly CrewSpecies[] = [
  {
    id: "grazer",
    diet: { film_glass: 0.25, film_rock: 0.4, hair_algae: 0.3, detritus_crevice: 0.05 },
    ...{ Imax: 13, R: 4.8, eta: 0.53, a: 0.8, eFull: 86, beta: 0.7, m0: 9e-4, bC: 106, bN: 43, bP: 4.7 },
  },
  {
    id: "scavenger",
    diet: { film_sand: 0.1, detritus_sand: 0.2, uneaten_feed: 0.4, carrion: 0.3 },
    ...{ Imax: 2.8, R: 0.47, eta: 0.5, a: 0.76, eFull: 6.6, beta: 0.34, m0: 1.4e-3, bC: 8, bN: 3, bP: 0.33 },
  },
];

/** Near enough to a twentieth at pH 8.1; the laws do not depend on it. */
export const typicalUnionisedShare: UnionisedShare = (temperatureC, _salinityPsu, ph) =>
  1 / (1 + 10 ** (9.36 - 0.03 * (temperatureC - 25) - ph));
