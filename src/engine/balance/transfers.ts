/**
 * Every flux by name: from which pool or outside place to which, of which element, and how it follows from the
 * kernel's process rates. The ledger adds these up; the positivity guard finds in them what each process
 * consumes; a test holds their sum against the kernel's derivatives.
 */
import { RATE } from "./kernel.ts";
import {
  D,
  type Element,
  FG,
  K,
  M,
  NICHE_COUNT,
  NICHE_POOL,
  NO2,
  NO3,
  O,
  type Outside,
  PO4,
  POOL_COUNT,
  POOLS,
  PRK,
  PSB,
  Q,
  R,
  S,
  TAN,
  W,
} from "./pools.ts";
import { ALGA, ALGA_COUNT, ELEMENT, KIND, SCALAR, type World } from "./world.ts";

/** A place that matter is in: a state index, or an outside place by name. */
export type Place = number | Outside;

export interface Transfer {
  /** What happens, in the words of docs/model/balance.md. */
  readonly name: string;
  readonly element: Element;
  readonly from: Place;
  readonly to: Place;
  /** Index of the process rate, and the amount per unit of it. */
  readonly rate: number;
  readonly per: number;
}

const ELEMENTS: readonly Element[] = ["C", "N", "P"];
const MINERAL: readonly Place[] = ["co2", TAN, PO4];
/** Order of the decay rates. */
const STUFFS = [W, K, S, D, Q, R, M, O];

/** Transfers of a world as it stands; made anew when an event changes inputs. */
export function transfersOf(world: World): Transfer[] {
  return [
    ...algae(world),
    ...dissolved(),
    ...feeding(world),
    ...decay(world),
    ...transport(world),
    ...crew(world),
  ].filter(({ per }) => per !== 0);
}

function algae(world: World): Transfer[] {
  return Array.from({ length: ALGA_COUNT }, (_, i) => {
    const crop = FG + i;
    const at = i * ALGA.stride;
    const qN = world.alga[at + ALGA.qN]!;
    const qP = world.alga[at + ALGA.qP]!;
    const settling = world.alga[at + ALGA.settling]!;
    const rate = RATE.alga + i * RATE.algaStride;
    const contents: readonly (readonly [Element, number])[] = [
      ["C", 1],
      ["N", qN],
      ["P", qP],
    ];
    // An alga is one pool, of carbon; its nitrogen and phosphorus follow at fixed ratio.
    const both = (name: string, from: Place, to: Place, process: number, amount: number): Transfer[] =>
      contents.map(([element, q]) => ({ name, element, from, to, rate: process, per: amount * q }));
    return [
      ...[TAN, NO3].flatMap((source, n): Transfer[] => [
        { name: "growth", element: "C", from: "co2", to: crop, rate: rate + n, per: 1 },
        { name: "growth", element: "N", from: source, to: crop, rate: rate + n, per: qN },
        { name: "growth", element: "P", from: PO4, to: crop, rate: rate + n, per: qP },
      ]),
      { name: "respiration", element: "C" as const, from: crop, to: "co2" as const, rate: rate + 2, per: 1 },
      { name: "respiration", element: "N" as const, from: crop, to: TAN, rate: rate + 2, per: qN },
      { name: "respiration", element: "P" as const, from: crop, to: PO4, rate: rate + 2, per: qP },
      ...contents.map(([element, q], e) => ({
        name: "sloughing",
        element,
        from: crop,
        to: S + e,
        rate: rate + 3,
        per: q,
      })),
      ...both("settling cells", "inoc", crop, RATE.one, settling),
    ];
  }).flat();
}

function dissolved(): Transfer[] {
  const flux = (name: string, element: Element, from: Place, to: Place, rate: number): Transfer => ({
    ...{ name, element, from, to, rate, per: 1 },
  });
  return [
    flux("ammonia oxidation", "N", TAN, NO2, RATE.nitA),
    flux("nitrite oxidation", "N", NO2, NO3, RATE.nitN),
    flux("denitrification", "N", NO3, "n2", RATE.den),
    flux("fixation", "N", "fix", TAN, RATE.fix),
    flux("sorbent", "P", PO4, PSB, RATE.sorb),
    flux("onto rock", "P", PO4, PRK, RATE.rockIn),
    flux("off rock", "P", PRK, PO4, RATE.rockOut),
  ];
}

function feeding(world: World): Transfer[] {
  const { c, element } = world;
  const excreted = [c[SCALAR.feedCo2]!, c[SCALAR.feedTan]!, c[SCALAR.feedPo4]!];
  const rows = ELEMENTS.flatMap((name, e): Transfer[] => {
    const at = e * ELEMENT.stride;
    const flux = (what: string, to: Place, per: number): Transfer => ({
      ...{ name: what, element: name, from: "feed", to, rate: RATE.one, per },
    });
    return [
      flux("uneaten feed", W + e, element[at + ELEMENT.feedW]!),
      flux("fish faeces", S + e, element[at + ELEMENT.feedS]!),
      flux("fish tissue", "fish", element[at + ELEMENT.feedFish]!),
      flux("fish excretion, organic", O + e, element[at + ELEMENT.feedO]!),
      flux("fish excretion", MINERAL[e]!, excreted[e]!),
    ];
  });
  const upkeep = c[SCALAR.endo]!;
  rows.push({ name: "fish upkeep", element: "N", from: "fish", to: TAN, rate: RATE.one, per: upkeep });
  return rows;
}

function decay(world: World): Transfer[] {
  const { c } = world;
  const dom = [SCALAR.domW, SCALAR.domK, SCALAR.domD, SCALAR.domD, SCALAR.domD, -1, SCALAR.domD, -1];
  return STUFFS.flatMap((pool, stuff) =>
    ELEMENTS.flatMap((element, e): Transfer[] => {
      const rate = RATE.decay + 3 * stuff + e;
      const flux = (to: Place, per: number): Transfer => ({
        ...{ name: "decay", element, from: pool + e, to, rate, per },
      });
      const toDom = dom[stuff]! < 0 ? 0 : c[dom[stuff]!]!;
      const crumbs = pool === W ? c[SCALAR.crumbW]! : pool === K ? c[SCALAR.crumbK]! : 0;
      const refractory = pool === S || pool === D || pool === Q ? c[SCALAR.refD]! : 0;
      return [
        flux(O + e, toDom),
        flux(S + e, crumbs),
        flux(R + e, refractory),
        flux(MINERAL[e]!, 1 - toDom - crumbs - refractory),
      ];
    }),
  );
}

function transport(world: World): Transfer[] {
  const onSand = world.c[SCALAR.shD]!;
  return ELEMENTS.flatMap((element, e): Transfer[] => {
    const flux = (name: string, from: Place, to: Place, rate: number, per: number): Transfer => ({
      ...{ name, element, from, to, rate: rate + e, per },
    });
    return [
      flux("settling", S + e, D + e, RATE.settle, onSand),
      flux("settling", S + e, Q + e, RATE.settle, 1 - onSand),
      flux("mechanical filter", S + e, M + e, RATE.filter, 1),
      flux("skimming", S + e, "skim", RATE.skimS, 1),
      flux("skimming", O + e, "skim", RATE.skimO, 1),
      flux("lifted from sand", D + e, S + e, RATE.lift, 1),
    ];
  });
}

function crew(world: World): Transfer[] {
  const { c, kind } = world;
  const count = world.species.length;
  const faecD = c[SCALAR.faecD]!;
  const phi0 = c[SCALAR.phi0]!;
  return world.species.flatMap(({ id }, s): Transfer[] => {
    const at = s * KIND.stride;
    const block = RATE.kind + s * RATE.kindStride;
    const reserve = POOL_COUNT + count + s;
    const egested = kind[at + KIND.egested]!;
    const mucus = kind[at + KIND.mucus]!;
    const eta = kind[at + KIND.eta]!;
    const rows: Transfer[] = [];
    for (let j = 0; j < NICHE_COUNT; j += 1) {
      if (kind[at + KIND.weight + j] === 0) continue;
      const pool = NICHE_POOL[j]!;
      ELEMENTS.forEach((element, e) => {
        const from = j < 4 ? pool : pool + e;
        const rate = block + 3 * j + e;
        const flux = (name: string, to: Place, per: number): void => {
          rows.push({ name: `${name}, ${id}`, element, from, to, rate, per });
        };
        flux("faeces", D + e, egested * faecD);
        flux("faeces", Q + e, egested * (1 - faecD));
        if (e === 0) {
          flux("mucus", O, mucus);
          flux("assimilated", reserve, eta * phi0);
          flux("respired at once", "co2", eta * (1 - phi0));
        } else {
          flux("absorbed and excreted", MINERAL[e]!, 1 - egested);
        }
        if (j < 4) flux("loosened", S + e, c[SCALAR.disl]!);
      });
    }
    const upkeep = { name: `upkeep, ${id}`, element: "C" as const, from: reserve, to: "co2" as const };
    rows.push({ ...upkeep, rate: block + RATE.upkeep, per: 1 });
    const reserveOfDead = { name: `reserve of the dead, ${id}`, element: "C" as const, from: reserve, to: K };
    rows.push({ ...reserveOfDead, rate: block + RATE.reserveLost, per: 1 });
    ELEMENTS.forEach((element, e) => {
      const per = kind[at + KIND.bC + e]!;
      rows.push({
        name: `the dead, ${id}`,
        element,
        from: "dead",
        to: K + e,
        rate: block + RATE.deaths,
        per,
      });
    });
    return rows;
  });
}

/** Plain name of a place: a pool, `E.kind`, or the outside place itself. */
export function placeName(place: Place, world: World): string {
  if (typeof place === "string") return place;
  if (place < POOL_COUNT) return POOLS[place]!;
  const count = world.species.length;
  return `E.${world.species[place - POOL_COUNT - count]?.id ?? "?"}`;
}
