/**
 * A tank made ready for the kernel: parameters, inputs and kinds of animal folded into flat arrays of numbers
 * that stay constant between events. Temperature factors and light are worked out here, once a stretch, so that
 * the kernel has no power and no division that it can do without.
 * Equations: docs/model/balance.md, sections named in the comments.
 */
import { eatenFeed } from "./eaten.ts";
import type { Inputs } from "./inputs.ts";
import type { ParameterValues } from "./parameters.ts";
import { NICHE_COUNT, NICHES, stateSize } from "./pools.ts";
import type { CrewSpecies } from "./species.ts";
import { ALGA, ALGA_COUNT, ELEMENT, KIND, NICHE, SCALAR } from "./world-layout.ts";

export { ALGA, ALGA_COUNT, ELEMENT, KIND, NICHE, SCALAR } from "./world-layout.ts";

/** Un-ionised share of total ammonia at a temperature (°C), practical salinity and pH as read; 0 to 1. */
export type UnionisedShare = (temperatureC: number, salinityPsu: number, ph: number) => number;

/** How animals die: as a smooth expectation, or as whole animals drawn at midnight from the run's own stream. */
export type Mortality = "expected" | "drawn";

const LIGHT_SECONDS = 0.0036; // µmol s-1 over hours to mol: 3600 / 1e6
const MG_C_PER_MOL = 12011;
const LEAST_AREA = 1e-9;

export class World {
  readonly species: readonly CrewSpecies[];
  readonly parameters: ParameterValues;
  readonly unionisedShare: UnionisedShare;
  readonly mortality: Mortality;
  readonly size: number;
  readonly c = new Float64Array(SCALAR.count);
  readonly alga = new Float64Array(ALGA_COUNT * ALGA.stride);
  readonly element = new Float64Array(3 * ELEMENT.stride);
  readonly niche = new Float64Array(NICHE_COUNT * NICHE.stride);
  readonly kind: Float64Array;
  /** Diets without their zeros: kind s eats niches dietNiche[k] with weight dietWeight[k], k from dietFrom[s]. */
  readonly dietFrom: Int32Array;
  readonly dietNiche: Int32Array;
  readonly dietWeight: Float64Array;
  inputs: Inputs;

  constructor(given: {
    inputs: Inputs;
    parameters: ParameterValues;
    species: readonly CrewSpecies[];
    unionisedShare: UnionisedShare;
    mortality?: Mortality;
  }) {
    this.species = given.species;
    this.parameters = given.parameters;
    this.unionisedShare = given.unionisedShare;
    this.mortality = given.mortality ?? "expected";
    this.size = stateSize(given.species.length);
    this.kind = new Float64Array(given.species.length * KIND.stride);
    const diets = given.species.map(weightsOf);
    this.dietFrom = Int32Array.from([0, ...diets.map(({ length }) => length)]);
    for (let s = 0; s < diets.length; s += 1)
      this.dietFrom[s + 1] = this.dietFrom[s + 1]! + this.dietFrom[s]!;
    this.dietNiche = Int32Array.from(diets.flat(), ({ niche }) => niche);
    this.dietWeight = Float64Array.from(diets.flat(), ({ weight }) => weight);
    this.inputs = { ...given.inputs };
    this.fold();
  }

  /** Changes inputs (an event) and folds everything anew. */
  set(changes: Partial<Inputs>): void {
    this.inputs = { ...this.inputs, ...changes };
    this.fold();
  }

  private fold(): void {
    const { inputs, parameters: p } = this;
    const th = (q10: number) => q10 ** ((inputs.T - 25) / 10);
    const sand = Math.max(inputs.As, LEAST_AREA);
    this.foldWater(th(p.q10dec), th(p.q10A), th(p.q10N), th(p.q10alg), th(p.q10anim));
    this.foldAlgae(th(p.q10alg), sand);
    this.foldFeed(th(p.q10dec), th(p.q10anim));
    this.foldNiches(sand);
    this.foldKinds(th(p.q10anim));
  }

  /** Nitrification, denitrification, fixation, sorption, transport, death (4.2, 4.3, 4.5 to 4.9). */
  private foldWater(thD: number, thA: number, thN: number, thL: number, thM: number): void {
    const { c, inputs: i, parameters: p } = this;
    c[SCALAR.invV] = 1 / i.V;
    c[SCALAR.nitA] = thA;
    c[SCALAR.KT] = p.KT;
    c[SCALAR.nitN] = thN;
    c[SCALAR.KI] = p.KI;
    c[SCALAR.muA] = p.muA * thA;
    c[SCALAR.muN] = p.muN * thN;
    c[SCALAR.capA] = 1 / (p.gamA * i.Ac);
    c[SCALAR.capN] = 1 / (p.gamN * i.Ac);
    c[SCALAR.lossA] = p.bA * thD;
    c[SCALAR.lossN] = p.bN * thD;
    c[SCALAR.den] = (p.dSand * i.As + p.dRock * i.rockKg) * thD;
    c[SCALAR.Kdn] = p.Kdn;
    c[SCALAR.fix] = p.nfix * (i.Ar + i.As) * i.light * p.Kfx;
    c[SCALAR.Kfx] = p.Kfx;
    c[SCALAR.kapFil] = p.kapFil;
    c[SCALAR.kW] = p.kW * thD;
    c[SCALAR.kK] = p.kK * thD;
    c[SCALAR.kR] = p.kR * thD;
    c[SCALAR.kO] = p.kO * thD;
    c[SCALAR.kSet] = p.kSet;
    c[SCALAR.shD] = p.shD;
    c[SCALAR.kFil] = p.kFil * i.filterOn;
    c[SCALAR.kSkS] = p.kSkS * i.skimOn;
    c[SCALAR.kSkO] = p.kSkO * i.skimOn;
    c[SCALAR.kRes] = p.kRes;
    c[SCALAR.domW] = p.domW;
    c[SCALAR.crumbW] = p.crumbW;
    c[SCALAR.domK] = p.domK;
    c[SCALAR.crumbK] = p.crumbK;
    c[SCALAR.domD] = p.domD;
    c[SCALAR.refD] = p.refD;
    c[SCALAR.sorb] = p.capSorb > 0 ? p.kSorb : 0;
    c[SCALAR.invCapSorb] = p.capSorb > 0 ? 1 / p.capSorb : 0;
    c[SCALAR.rockIn] = p.kRock * p.capRock * i.rockKg;
    c[SCALAR.KRock] = p.KRock;
    c[SCALAR.rockOut] = p.kRock;
    c[SCALAR.faecD] = p.faecD;
    c[SCALAR.disl] = p.disl;
    c[SCALAR.phi0] = p.phi0;
    c[SCALAR.hs] = p.hs;
    c[SCALAR.invHc] = 1 / p.hc;
    c[SCALAR.m1] = p.m1;
    c[SCALAR.mtox] = p.mtox;
    c[SCALAR.zPerTan] = this.unionisedShare(i.T, i.S, i.pH) / (i.V * p.utox);
    c[SCALAR.invBesc2] = 1 / (p.Besc * p.Besc);
    c[SCALAR.invAr] = 1 / i.Ar;
    c[SCALAR.muMac] = p.muMac * thL * i.macLight;
    c[SCALAR.invMacMax] = 1 / i.macMax;
    c[SCALAR.thM] = thM;
  }

  /** Light ceiling, growth and losses of the algae (4.1). */
  private foldAlgae(thL: number, sand: number): void {
    const { inputs: i, parameters: p } = this;
    const carbon = (eps: number, par: number) => {
      const lit = par * i.light;
      const saturated = lit / Math.sqrt(1 + (lit / p.Ik) ** 2);
      return eps * MG_C_PER_MOL * saturated * i.hours * LIGHT_SECONDS;
    };
    const film = {
      kap: p.kapFilm,
      mu: p.muFilm,
      KA: p.KAfilm,
      KN: p.KNfilm,
      KP: p.KPfilm,
      qN: p.qNfilm,
      qP: p.qPfilm,
    };
    const filmLoss = { resp: p.rFilm, slough: p.sFilm, Bs: p.BsFilm };
    const rows = [
      { ...film, ...filmLoss, area: i.Ag, settling: p.inoc * i.Ag, ceiling: carbon(p.epsFilm, i.parG) },
      { ...film, ...filmLoss, area: i.Ar, settling: p.inoc * i.Ar, ceiling: carbon(p.epsFilm, i.parR) },
      { ...film, ...filmLoss, area: sand, settling: p.inoc * i.As, ceiling: carbon(p.epsSand, i.parS) },
      {
        ...{ kap: p.kapFil, mu: p.muFil, KA: p.KAfil, KN: p.KNfil, KP: p.KPfil, qN: p.qNfil, qP: p.qPfil },
        ...{ resp: p.rFil, slough: p.sFil, Bs: p.BsFil, settling: 0 },
        area: i.Ar,
        ceiling: carbon(p.epsFil, i.parR),
      },
      {
        ...{ kap: 0, mu: 0, KA: p.KAmac, KN: p.KNmac, KP: p.KPmac, qN: p.qNmac, qP: p.qPmac },
        ...{ resp: p.rMac, slough: p.sMac, Bs: Number.POSITIVE_INFINITY, settling: 0 },
        area: 1,
        ceiling: 0,
      },
    ];
    rows.forEach((row, index) => {
      const at = index * ALGA.stride;
      const isMacro = index === ALGA_COUNT - 1;
      const mu = row.mu * thL;
      this.alga[at + ALGA.invArea] = 1 / row.area;
      this.alga[at + ALGA.carbon] = row.ceiling;
      this.alga[at + ALGA.kap] = row.kap;
      this.alga[at + ALGA.mu] = mu;
      this.alga[at + ALGA.mu2] = mu * mu + 1e-60;
      this.alga[at + ALGA.KA] = row.KA;
      this.alga[at + ALGA.KN] = row.KN;
      this.alga[at + ALGA.KP] = row.KP;
      this.alga[at + ALGA.perN] = isMacro ? 0 : (1e-3 * row.qN) / p.vN;
      this.alga[at + ALGA.perP] = isMacro ? 0 : (1e-3 * row.qP) / p.vP;
      this.alga[at + ALGA.qN] = row.qN;
      this.alga[at + ALGA.qP] = row.qP;
      this.alga[at + ALGA.resp] = row.resp * thL;
      this.alga[at + ALGA.slough] = row.slough;
      this.alga[at + ALGA.sloughPerB] = row.slough / row.Bs;
      this.alga[at + ALGA.settling] = row.settling;
    });
  }

  /** Feed, fish and the decay that differs by element (4.4, 4.5). */
  private foldFeed(thD: number, thM: number): void {
    const { c, element, inputs: i, parameters: p } = this;
    const eaten = eatenFeed(i.feed, p.rationMax * i.fish, p.u0);
    const left = i.feed - eaten;
    const content = [i.feedC, i.feedN, i.feedP];
    const faeces = [p.fC, p.fN, p.fP];
    const tissue = [p.gC, p.gN, p.gP];
    const excreted = content.map((held, e) => eaten * held * (1 - (faeces[e] ?? 0) - (tissue[e] ?? 0)));
    const dissolved = [p.oC, p.oN, 0];
    for (let e = 0; e < 3; e += 1) {
      const at = e * ELEMENT.stride;
      const held = content[e] ?? 0;
      const lam = e === 2 ? p.lamP : 1;
      element[at + ELEMENT.kS] = p.kS * thD * lam;
      element[at + ELEMENT.kD] = p.kD * thD * lam;
      element[at + ELEMENT.kQ] = p.kQ * thD * lam;
      element[at + ELEMENT.kM] = p.kM * thD * lam;
      element[at + ELEMENT.feedW] = left * held;
      element[at + ELEMENT.feedS] = eaten * held * (faeces[e] ?? 0);
      element[at + ELEMENT.feedFish] = eaten * held * (tissue[e] ?? 0);
      element[at + ELEMENT.feedO] = (excreted[e] ?? 0) * (dissolved[e] ?? 0);
    }
    c[SCALAR.feedCo2] = (excreted[0] ?? 0) * (1 - p.oC);
    c[SCALAR.feedTan] = (excreted[1] ?? 0) * (1 - p.oN);
    c[SCALAR.feedPo4] = excreted[2] ?? 0;
    const upkeep = p.maintFeed * i.fish;
    c[SCALAR.endo] = i.fish > 0 ? (p.endoN * thM * i.fish * upkeep) / (upkeep + eaten) : 0;
  }

  /** Scale, refuge and crowding of each niche (4.8). */
  private foldNiches(sand: number): void {
    const { inputs: i, parameters: p } = this;
    const extent = [i.Ag, i.Ar, sand, i.Ar, sand, i.Ar, i.V, i.V];
    const scale = [p.KgFilm, p.KgFilm, p.KgFilm, p.KgFil, p.KgDet, p.KgDet, p.KgW, p.KgK];
    const refuge = [p.rfG, p.rfR, p.rfS, p.rfFil, p.rfDet, p.rfDet, p.rfW, p.rfK];
    const crowding = [p.cG, p.cR, p.cS, p.cF, p.cD, p.cQ, p.cW, p.cK];
    for (let j = 0; j < NICHE_COUNT; j += 1) {
      const at = j * NICHE.stride;
      const area = extent[j] ?? 1;
      this.niche[at + NICHE.invScale] = 1 / ((scale[j] ?? 1) * area);
      this.niche[at + NICHE.invDensityArea] = 1 / area;
      this.niche[at + NICHE.refuge] = refuge[j] ?? 0;
      this.niche[at + NICHE.invCrowding] = 1 / (crowding[j] ?? 1);
    }
  }

  /** Kinds of animal at this temperature (4.8, 4.9). */
  private foldKinds(thM: number): void {
    const { kind, parameters: p } = this;
    this.species.forEach((s, index) => {
      const at = index * KIND.stride;
      kind[at + KIND.imax] = s.Imax * thM;
      kind[at + KIND.appetiteFall] = 1 - s.beta;
      kind[at + KIND.eFull] = s.eFull;
      kind[at + KIND.egested] = 1 - s.a;
      kind[at + KIND.mucus] = s.a - s.eta;
      kind[at + KIND.eta] = s.eta;
      kind[at + KIND.resp] = p.phi0 * s.R * thM;
      kind[at + KIND.m0] = s.m0;
      kind[at + KIND.bC] = s.bC;
      kind[at + KIND.bN] = s.bN;
      kind[at + KIND.bP] = s.bP;
      for (const { niche, weight } of weightsOf(s)) kind[at + KIND.weight + niche] = weight;
    });
  }
}

/** Niches that a kind eats from, weighted by its diet against its largest share (4.8). */
function weightsOf({ diet }: CrewSpecies): { niche: number; weight: number }[] {
  const shares = NICHES.map((niche) => diet[niche] ?? 0);
  const largest = Math.max(...shares);
  return shares.flatMap((share, niche) => (share > 0 ? [{ niche, weight: share / largest }] : []));
}
