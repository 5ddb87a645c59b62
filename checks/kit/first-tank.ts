/**
 * A first tank as the trade knows it: sand, rock, two small fish, a little feed, past its first algae. Written as a tank
 * file and read by the one reader, so that what is checked of it holds for what a keeper types.
 */
import { findAnimal } from "../../src/catalogue/index.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";

const AS_OF = "2026-06-15";

/** @param changes entries of the tank file that differ; `undefined` leaves one out */
export function firstTank(
  litres: number,
  ageDays: number,
  changes: Readonly<Record<string, unknown>> = {},
): TankFacts {
  const file = {
    grazewell_tank: 1,
    name: `${litres} L, ${ageDays} days`,
    as_of: AS_OF,
    water_l: litres,
    first_seawater_on: new Date(Date.parse(AS_OF) - ageDays * 86_400_000).toISOString().slice(0, 10),
    rock: { start: "dry", rock_kg: Math.round(litres) / 10, caves: true, secured: false },
    floor: { kind: "sand", depth_mm: 30, grain: "fine" },
    light: { hours_per_day: 9, strength: "medium" },
    temperature_c: 25.5,
    salinity_psu: 35,
    feeding: { foods: [{ kind: "dry_pellet", g_per_day: Math.round(1.77 * litres) / 1000 }] },
    fish: [{ animal: "clownfish", count: 2, size: "small" }],
    equipment: { mechanical_filter: "floss", skimmer: true, lid: true, pump_guards: false },
    corals: false,
    care: { water_change_percent: 10, water_change_every_days: 7, wipe_glass_every_days: 7 },
    source_water: "purified",
    readings: [{ on: AS_OF, no3_mg_per_l: 8, po4_mg_per_l: 0.06 }],
    sightings: { film_glass: "patches", film_rock: "patches", diatoms: "patches", hair_algae: "trace" },
    keeper_experience: "first-tank",
    ...changes,
  };
  const result = readTankFile(JSON.stringify(file), { today: AS_OF, findAnimal });
  if (result.ok) return result.facts;
  throw new Error(
    `Cannot make a first tank of ${litres} L: ${result.findings.map(({ message }) => message.text).join(" ")}`,
  );
}
