/**
 * What happens to a tank at one instant: water changed, glass wiped, animals added, bodies found or not.
 * Every mg that an event moves goes into the ledger by name. Table: docs/model/balance.md, "Events".
 */
import type { InputSymbol } from "./inputs.ts";
import type { Ledger } from "./ledger.ts";
import {
  D,
  FF,
  FG,
  headsAt,
  K,
  M,
  MA,
  NO2,
  NO3,
  O,
  type Outside,
  PO4,
  POOL_INDEX,
  type Pool,
  PRK,
  PSB,
  R,
  reserveAt,
  S,
  TAN,
  W,
  XA,
  XN,
} from "./pools.ts";
import { ALGA, ALGA_COUNT, type World } from "./world.ts";

interface EventKinds {
  /** Concentrations of the new water in mg/L; `siphon` is the share of detritus on sand taken out with it. */
  waterChange: { fraction: number; newNO3N?: number; newPO4P?: number; newTAN?: number; siphon?: number };
  /** `removed`: share of what was wiped that leaves the tank; the rest floats. */
  wipeGlass: { fraction: number; removed: number };
  removeFilaments: { fraction: number };
  harvestRefugium: { fraction: number };
  changeFilter: object;
  renewSorbent: object;
  /** `condition`: reserve of the arrivals, share of a full one. */
  addAnimals: { species: string; count: number; condition?: number };
  removeAnimals: { species: string; count: number };
  crewDeath: { species: string; count: number; found: boolean };
  fishDeath: { grams: number; found: boolean };
  carrion: { mgC: number; mgN: number; mgP: number };
  dose: { pool: Pool; mg: number };
  stirSand: { fraction: number };
  /** Inputs that change: feed, light (0 is a dark day), fish, temperature, devices. */
  set: Partial<Record<InputSymbol, number>>;
}
export type EventKind = keyof EventKinds;

/** An event at day `t` of a run. */
export type TankEvent = {
  [Kind in EventKind]: { readonly t: number; readonly kind: Kind } & Readonly<EventKinds[Kind]>;
}[EventKind];

/** Reserve of a bought animal, share of full, where nobody says: new arrivals are thin. */
const ARRIVAL_CONDITION = 0.6;

/** Events that start a new transient; the integrator begins with a short step after them. */
export function disturbs(event: TankEvent): boolean {
  return event.kind !== "changeFilter" && event.kind !== "harvestRefugium";
}

/** @throws RangeError when an event names a kind of animal that the world does not hold. */
export function applyEvent(world: World, y: Float64Array, event: TankEvent, ledger: Ledger | null): void {
  const kinds = world.species.length;
  const position = (id: string): number => {
    const index = world.species.findIndex((species) => species.id === id);
    if (index < 0) throw new RangeError(`Cannot apply ${event.kind}: the run holds no kind "${id}"`);
    return index;
  };
  const out = (name: string, place: Outside, pool: number, share: number, element: "C" | "N" | "P"): void => {
    const amount = share * y[pool]!;
    y[pool] = y[pool]! - amount;
    ledger?.add(name, element, pool, place, amount);
  };
  const stuffOut = (name: string, place: Outside, first: number, share: number): void => {
    out(name, place, first, share, "C");
    out(name, place, first + 1, share, "N");
    out(name, place, first + 2, share, "P");
  };
  const algaOut = (name: string, crop: number, share: number, removed: number, place: Outside): void => {
    const at = (crop - FG) * ALGA.stride;
    const amount = share * y[crop]!;
    const contents = [1, world.alga[at + ALGA.qN]!, world.alga[at + ALGA.qP]!] as const;
    y[crop] = y[crop]! - amount;
    (["C", "N", "P"] as const).forEach((element, e) => {
      const held = amount * contents[e]!;
      ledger?.add(name, element, crop, place, held * removed);
      if (removed === 1) return;
      y[S + e] = y[S + e]! + held * (1 - removed);
      ledger?.add(name, element, crop, S + e, held * (1 - removed));
    });
  };
  const into = (
    name: string,
    place: Outside,
    pool: number,
    amount: number,
    element: "C" | "N" | "P",
  ): void => {
    y[pool] = y[pool]! + amount;
    ledger?.add(name, element, place, pool, amount);
  };

  switch (event.kind) {
    case "waterChange": {
      const { fraction, siphon = 0 } = event;
      const litres = fraction * world.inputs.V;
      for (const pool of [TAN, NO2, NO3]) out("water change", "waterOut", pool, fraction, "N");
      out("water change", "waterOut", PO4, fraction, "P");
      stuffOut("water change", "waterOut", S, fraction);
      stuffOut("water change", "waterOut", O, fraction);
      into("water change", "waterIn", TAN, litres * (event.newTAN ?? 0), "N");
      into("water change", "waterIn", NO3, litres * (event.newNO3N ?? 0), "N");
      into("water change", "waterIn", PO4, litres * (event.newPO4P ?? 0), "P");
      stuffOut("siphon", "siphoned", D, siphon);
      stuffOut("siphon", "siphoned", R, siphon);
      return;
    }
    case "wipeGlass":
      algaOut("glass wiped", FG, event.fraction, event.removed, "wiped");
      return;
    case "removeFilaments":
      algaOut("algae pulled", FF, event.fraction, 1, "harvest");
      return;
    case "harvestRefugium":
      algaOut("refugium harvest", MA, event.fraction, 1, "harvest");
      return;
    case "changeFilter":
      stuffOut("filter cleaned", "filterWaste", M, 1);
      return;
    case "renewSorbent":
      out("sorbent renewed", "sorbentOut", PSB, 1, "P");
      return;
    case "addAnimals": {
      const s = position(event.species);
      const reserve = event.count * world.species[s]!.eFull * (event.condition ?? ARRIVAL_CONDITION);
      y[headsAt(s)] = y[headsAt(s)]! + event.count;
      into(`added, ${event.species}`, "stocked", reserveAt(s, kinds), reserve, "C");
      return;
    }
    case "removeAnimals":
    case "crewDeath": {
      const s = position(event.species);
      const heads = y[headsAt(s)]!;
      const share = heads > 0 ? Math.min(1, event.count / heads) : 0;
      // subtracted as it stands, so that whole heads stay whole
      y[headsAt(s)] = Math.max(0, heads - event.count);
      const reserveAtS = reserveAt(s, kinds);
      const reserve = share * y[reserveAtS]!;
      if (event.kind === "removeAnimals" || event.found) {
        out(`taken out, ${event.species}`, "removed", reserveAtS, share, "C");
      } else {
        y[reserveAtS] = y[reserveAtS]! - reserve;
        buryCrew(world, y, s, share * heads, reserve, ledger);
      }
      return;
    }
    case "fishDeath": {
      const grams = Math.min(event.grams, world.inputs.fish);
      if (!event.found) {
        const { fishCperG, fishNperG, fishPperG } = world.parameters;
        into("fish dead, not found", "fish", K, event.grams * fishCperG, "C");
        into("fish dead, not found", "fish", K + 1, event.grams * fishNperG, "N");
        into("fish dead, not found", "fish", K + 2, event.grams * fishPperG, "P");
      }
      world.set({ fish: world.inputs.fish - grams });
      return;
    }
    case "carrion":
      into("carrion added", "dosed", K, event.mgC, "C");
      into("carrion added", "dosed", K + 1, event.mgN, "N");
      into("carrion added", "dosed", K + 2, event.mgP, "P");
      return;
    case "dose":
      dose(world, y, POOL_INDEX[event.pool], event.mg, ledger);
      return;
    case "stirSand":
      for (const first of [D, R]) {
        for (let e = 0; e < 3; e += 1) {
          const amount = event.fraction * y[first + e]!;
          y[first + e] = y[first + e]! - amount;
          y[S + e] = y[S + e]! + amount;
          ledger?.add("sand stirred", (["C", "N", "P"] as const)[e]!, first + e, S + e, amount);
        }
      }
      return;
    case "set": {
      const { t: _t, kind: _kind, ...changes } = event;
      world.set(changes);
    }
  }
}

/** Bodies and reserve of crew that died and was not found become carrion. */
export function buryCrew(
  world: World,
  y: Float64Array,
  species: number,
  heads: number,
  reserveMgC: number,
  ledger: Ledger | null,
): void {
  const { id, bC, bN, bP } = world.species[species]!;
  const reserve = reserveAt(species, world.species.length);
  const body = [bC, bN, bP];
  (["C", "N", "P"] as const).forEach((element, e) => {
    const amount = heads * body[e]!;
    y[K + e] = y[K + e]! + amount;
    ledger?.add(`the dead, ${id}`, element, "dead", K + e, amount);
  });
  y[K] = y[K]! + reserveMgC;
  ledger?.add(`reserve of the dead, ${id}`, "C", reserve, K, reserveMgC);
}

/**
 * Adds to one pool. An alga brings its nitrogen and phosphorus along; capacities of the nitrifiers are no matter
 * and stay out of the ledger.
 */
function dose(world: World, y: Float64Array, pool: number, mg: number, ledger: Ledger | null): void {
  y[pool] = y[pool]! + mg;
  if (pool === XA || pool === XN) return;
  const alga = pool - FG;
  if (alga >= 0 && alga < ALGA_COUNT) {
    const at = alga * ALGA.stride;
    const contents = [1, world.alga[at + ALGA.qN]!, world.alga[at + ALGA.qP]!] as const;
    (["C", "N", "P"] as const).forEach((element, e) => {
      ledger?.add("dosed", element, "dosed", pool, mg * contents[e]!);
    });
    return;
  }
  ledger?.add("dosed", elementOf(pool), "dosed", pool, mg);
}

/** Element of a pool that holds one alone. */
function elementOf(pool: number): "C" | "N" | "P" {
  if (pool === PO4 || pool === PSB || pool === PRK) return "P";
  if (pool < PO4) return "N";
  return (["C", "N", "P"] as const)[(pool - W) % 3]!;
}
