/** Invented chores and mishaps: every kind of event, dark days and deaths included, at whole and broken days. */
import type { EventKind, TankEvent } from "../events.ts";
import { POOLS } from "../pools.ts";
import type { World } from "../world.ts";
import { acrossScales, chance, type Draw, oneOf } from "./draw.ts";

type Maker = (draw: Draw, world: World, t: number) => TankEvent;

const kindOf = (draw: Draw, world: World): string => oneOf(draw, world.species).id;

const MAKERS: Readonly<Record<EventKind, Maker>> = {
  waterChange: (draw, _, t) => ({
    ...{ t, kind: "waterChange", fraction: draw.between(0, 1), siphon: draw.between(0, 1) },
    ...{ newNO3N: draw.between(0, 2), newPO4P: draw.between(0, 0.2), newTAN: draw.between(0, 0.5) },
  }),
  wipeGlass: (draw, _, t) => ({
    ...{ t, kind: "wipeGlass", fraction: draw.between(0, 1) },
    removed: oneOf(draw, [0, 0.3, 1]),
  }),
  removeFilaments: (draw, _, t) => ({ t, kind: "removeFilaments", fraction: draw.between(0, 1) }),
  harvestRefugium: (draw, _, t) => ({ t, kind: "harvestRefugium", fraction: draw.between(0, 1) }),
  changeFilter: (_draw, _world, t) => ({ t, kind: "changeFilter" }),
  renewSorbent: (_draw, _world, t) => ({ t, kind: "renewSorbent" }),
  addAnimals: (draw, world, t) => ({
    ...{ t, kind: "addAnimals", species: kindOf(draw, world), count: draw.whole(1, 10) },
    condition: draw.between(0, 1),
  }),
  removeAnimals: (draw, world, t) => ({
    ...{ t, kind: "removeAnimals", species: kindOf(draw, world), count: draw.whole(1, 10) },
  }),
  crewDeath: (draw, world, t) => ({
    ...{ t, kind: "crewDeath", species: kindOf(draw, world), count: draw.whole(1, 10) },
    found: chance(draw, 0.5),
  }),
  fishDeath: (draw, world, t) => ({
    ...{ t, kind: "fishDeath", grams: world.inputs.fish * draw.between(0, 1.5), found: chance(draw, 0.5) },
  }),
  carrion: (draw, _, t) => {
    const mgC = acrossScales(draw, 1, 1000);
    return { t, kind: "carrion", mgC, mgN: mgC / 4, mgP: mgC / 40 };
  },
  dose: (draw, world, t) => ({
    ...{ t, kind: "dose", pool: oneOf(draw, POOLS), mg: world.inputs.V * draw.between(0, 2) },
  }),
  stirSand: (draw, _, t) => ({ t, kind: "stirSand", fraction: draw.between(0, 1) }),
  set: (draw, world, t) =>
    oneOf<TankEvent>(draw, [
      { t, kind: "set", light: 0 },
      { t, kind: "set", light: draw.between(0, 1) },
      { t, kind: "set", T: draw.between(18, 31), pH: draw.between(7.7, 8.5) },
      { t, kind: "set", feed: world.inputs.fish * draw.between(0, 0.2) },
      { t, kind: "set", filterOn: 0, skimOn: 1 },
      { t, kind: "set", macLight: draw.between(0, 1) },
    ]),
};

const NEEDS_ANIMALS: ReadonlySet<EventKind> = new Set(["addAnimals", "removeAnimals", "crewDeath"]);

export const EVENT_KINDS = Object.keys(MAKERS) as readonly EventKind[];

/** Events sorted by day. */
export function inventEvents(draw: Draw, world: World, days: number, most = 8): TankEvent[] {
  const kinds = EVENT_KINDS.filter((kind) => world.species.length > 0 || !NEEDS_ANIMALS.has(kind));
  return Array.from({ length: draw.whole(0, most) }, () => {
    const t = chance(draw, 0.5) ? draw.whole(0, days) : draw.between(0, days);
    return MAKERS[oneOf(draw, kinds)](draw, world, t);
  }).toSorted((a, b) => a.t - b.t);
}
