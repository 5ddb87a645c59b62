/**
 * An invented tank for a twin experiment, as its keeper would write it down: read by the one reader, so that its facts
 * carry the bands that real ones carry. Settled, lit, fed, with a crew: tanks that a daybook can say something of.
 */
import { animalById, findAnimal } from "../../src/catalogue/index.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import { crewKind } from "../../src/engine/ahead/start.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { Chance } from "../kit/chance.ts";

/** The day that the keeper asks, and days of daybook before it. */
export const TODAY = "2026-06-15";
export const DAYBOOK_DAYS = 56;

/** Crew kinds that graze, clean up or stir, small enough for any of the tanks. */
const CREW = [
  ["trochus-snail", 2, 5],
  ["astraea-snail", 2, 6],
  ["florida-cerith", 2, 8],
  ["nassarius-snail", 2, 6],
  ["blue-leg-hermit", 2, 6],
] as const;

export function twinFacts(seed: number): TankFacts {
  const chance = new Chance(seed, 11);
  const litres = Math.round(chance.logBetween(60, 500));
  const age = Math.round(chance.logBetween(120, 900));
  const kinds = [...CREW].filter(([id]) => animalById.has(id) && chance.is(0.6));
  const file = {
    grazewell_tank: 1,
    name: `twin ${seed}`,
    as_of: TODAY,
    water_l: litres,
    first_seawater_on: isoBefore(TODAY, age),
    rock: {
      start: chance.pick(["dry", "live", "mixed"] as const),
      rock_kg: Math.round(litres * chance.between(0.06, 0.16)),
      caves: "yes",
      secured: "yes",
    },
    floor: { kind: "sand", depth_mm: chance.pick([20, 30, 40]), grain: "fine" },
    light: { hours_per_day: chance.whole(7, 11), strength: chance.pick(["low", "medium", "high"] as const) },
    temperature_c: chance.between(24.5, 26.5).toFixed(1),
    salinity_psu: 35,
    ph: 8.1,
    feeding: {
      foods: [{ kind: "dry_pellet", g_per_day: (litres * chance.logBetween(8e-4, 4e-3)).toFixed(2) }],
    },
    fish: [{ animal: "clownfish", count: 2, size: "small" }],
    equipment: {
      mechanical_filter: chance.is(0.5) ? "floss" : "none",
      ...{ filter_change_days: 4, skimmer: chance.is(0.6) ? "yes" : "no" },
    },
    care: {
      water_change_percent: 10,
      water_change_every_days: 7,
      wipe_glass_every_days: chance.pick([5, 7, 10]),
    },
    source_water: "purified",
    animals_present: kinds.map(([animal, low, high]) => ({
      animal,
      count: chance.whole(low, high),
      on: isoBefore(TODAY, Math.min(age - 30, DAYBOOK_DAYS + chance.whole(10, 60))),
    })),
  };
  const read = readTankFile(JSON.stringify(file), { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(`Twin ${seed} can't be read: ${read.findings[0]?.message.text}`);
  return read.facts;
}

/** The same tank on an earlier day, nothing else told. */
export const factsBefore = (facts: TankFacts, days: number): TankFacts => ({
  ...facts,
  asOf: isoBefore(facts.asOf, days),
  ageDays: {
    ...facts.ageDays,
    low: facts.ageDays.low - days,
    central: facts.ageDays.central - days,
    high: facts.ageDays.high - days,
  },
});

export const crewOf = (facts: TankFacts) =>
  facts.present.flatMap(({ id, count }) => {
    const animal = animalById.get(id);
    return animal === undefined || animal.group === "fish" ? [] : [crewKind(animal, count)];
  });

export const isoBefore = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - days * 86_400_000).toISOString().slice(0, 10);
