/**
 * Invented tanks, each the whole of a TankFacts that a keeper could have typed: 10 to 2,000 L, not yet filled to years
 * old, bare or sanded, with and without rock, fish, crew, wishes, readings, medicine. Same seed, same tank.
 * Wider than real tanks on purpose: what holds here holds for any file that passes the reader. A little more than half
 * are kind: warm, lit, salt enough, without hunters, so that many plans have somebody in them.
 */
import { animals } from "../../src/catalogue/index.ts";
import type { Animal } from "../../src/engine/types/animal.ts";
import type { Estimate, Known, Origin } from "../../src/engine/types/estimate.ts";
import {
  type AnimalCount,
  type Cover,
  GROWTHS,
  type Reading,
  type TankFacts,
} from "../../src/engine/types/tank.ts";
import { Chance } from "./chance.ts";

const ORIGINS: readonly Origin[] = ["stated", "derived", "assumed"];
const COVERS: readonly Cover[] = ["none", "trace", "patches", "covered"];
const AS_OF = "2026-06-15";

const crewKinds = animals.filter(({ group, role }) => group !== "fish" && role !== "compatibility_only");
const fishKinds = animals.filter(({ group }) => group === "fish");
/** Fish that decide what else may live there. */
const HUNTERS = ["pufferfish", "large-wrasse", "six-line-wrasse", "triggerfish", "lionfish"];

export function randomTank(seed: number): TankFacts {
  const chance = new Chance(seed, 1);
  const kind = chance.is(0.6);
  const rarely = (p: number): boolean => chance.is(kind ? p / 4 : p);
  const exact = chance.is(0.3);
  const estimate = (central: number, mostFactor = 2.5, most = Number.POSITIVE_INFINITY): Estimate => {
    const origin = chance.pick(ORIGINS);
    const how = "invented";
    if (exact || chance.is(0.2)) return { low: central, central, high: central, origin, how };
    const factor = chance.between(1.02, mostFactor);
    return { low: central / factor, central, high: Math.min(most, central * factor), origin, how };
  };
  const known = <T>(value: T): Known<T> => ({ value, origin: chance.pick(ORIGINS) });

  const litres = chance.logBetween(kind ? 40 : 10, 2000);
  const sump = chance.is(0.4) ? chance.between(1.05, 1.4) : 1;
  const bare = rarely(0.4);
  const noRock = rarely(0.2);
  const rockKg = noRock ? 0 : litres * chance.between(0.02, 0.2);
  const cold = rarely(0.2);
  const age = rarely(0.2) ? chance.whole(-5, 3) : chance.logBetween(kind ? 30 : 4, 2000);
  const fed = rarely(0.25) ? 0 : litres * chance.logBetween(2e-4, 8e-3);
  const present = [...fishIn(chance, litres, kind), ...crewIn(chance, litres)];
  const fishWet = present
    .map(({ id, count }) => ({ animal: fishKinds.find((fish) => fish.id === id), count }))
    .reduce((sum, { animal, count }) => sum + (animal?.liveWetMassG.central ?? 0) * count, 0);
  const strangers = chance.is(0.3) ? litres * chance.between(0, 0.3) : 0;
  const catalogueIds = animals.map(({ id }) => id);
  const glass = (litres / 100) ** (2 / 3) * 0.75;

  return {
    name: `invented ${seed}`,
    asOf: AS_OF,
    waterL: estimate(litres * sump, 1.4),
    displayL: estimate(litres, 1.4),
    ageDays: ageOf(chance, age, exact),
    rockStart: known(noRock ? "none" : chance.pick(["live", "dry", "mixed"] as const)),
    glassM2: estimate(glass * chance.between(0.4, 1.2)),
    litRockM2: estimate(noRock ? 0 : rockKg * chance.between(0.015, 0.06)),
    sandM2: estimate(bare ? 0 : glass * chance.between(0.1, 0.35)),
    rockKg: estimate(rockKg),
    sandDepthMm: estimate(bare ? 0 : chance.pick([5, 15, 25, 40, 55, 80, 120])),
    sandGrain: known(
      bare ? "none" : chance.pick(["fine", "medium", "coarse", "rubble", "unknown", "fine"] as const),
    ),
    parGlass: estimate(chance.logBetween(5, 200)),
    parRock: estimate(chance.logBetween(kind ? 40 : 10, 400)),
    parSand: estimate(chance.logBetween(5, 250)),
    lightHours: estimate(chance.between(kind ? 6 : 0, 14), 1.4, 24),
    temperatureC: estimate(cold ? chance.between(10, 20) : chance.between(23, kind ? 27 : 29.5), 1.06),
    salinityPsu: estimate(rarely(0.3) ? chance.between(20, 41) : chance.between(33.5, 35.8), 1.05),
    ph: estimate(chance.between(7.7, 8.5), 1.02),
    phScale: chance.pick(["nbs", "total"] as const),
    feedGPerDay: estimate(fed),
    feedCMgPerG: estimate(chance.pick([420, 90, 380]), 1.3),
    feedNMgPerG: estimate(chance.pick([77, 18, 60]), 1.3),
    feedPMgPerG: estimate(chance.pick([9, 2, 14]), 1.5),
    uneatenShare: estimate(chance.between(0.01, 0.5), 2, 0.95),
    handFedMgCPerDay: estimate(chance.is(0.2) ? chance.between(1, 60) : 0, 1.5),
    fishWetG: estimate(fishWet + strangers, 2),
    filterChangeDays: chance.is(0.4) ? chance.whole(1, 30) : null,
    skimmer: known(chance.is(0.5)),
    refugium: chance.is(0.15)
      ? { light: chance.between(0.05, 1), maxMgC: litres * chance.between(50, 800) }
      : null,
    phosphateSorbentMgP: chance.is(0.15) ? litres * chance.between(0.2, 5) : null,
    waterChangeFraction: estimate(chance.is(0.15) ? 0 : chance.between(0.03, 0.5), 1.3, 1),
    waterChangeEveryDays: estimate(chance.whole(1, 60), 1.3),
    wipeGlassEveryDays: estimate(chance.is(0.2) ? 0 : chance.whole(1, 21), 1.3),
    newWaterNo3NMgPerL: estimate(chance.is(0.7) ? 0.02 : chance.between(0.1, 6), 2),
    newWaterPo4PMgPerL: estimate(chance.is(0.7) ? 0.002 : chance.between(0.01, 0.6), 2),
    sourceWater: known(chance.pick(["tap", "conditioned", "purified"] as const)),
    keeperLevel: known(chance.pick(["first-tank", "experienced", "specialist"] as const)),
    lid: known(chance.is(0.5)),
    pumpGuards: known(chance.is(0.5)),
    rockCaves: known(!noRock && chance.is(0.8)),
    rockSecured: known(chance.is(0.5)),
    corals: known(chance.is(0.5)),
    medicines: rarely(0.06) ? [chance.pick(["copper", "praziquantel", "formalin"])] : [],
    trouble: rarely(0.05) ? "a fish is gasping" : null,
    sightings: sightingsOf(chance),
    readings: readingsOf(chance),
    present,
    planned: plannedOf(chance, kind),
    unknownAnimals: chance.is(0.1) ? ["mystery snail"] : [],
    wishes: chance.is(0.3) ? chance.some(catalogueIds, 4) : [],
    exclusions: chance.is(0.2) ? chance.some(catalogueIds, 6) : [],
    stockList: rarely(0.25) ? chance.some(catalogueIds, 30) : null,
    priceBandMax: rarely(0.5) ? chance.pick([1, 2, 3] as const) : 4,
    assumed: [],
  };
}

/** Ages may lie below zero, where a factor would turn low and high round. */
function ageOf(chance: Chance, central: number, exact: boolean): Estimate {
  const doubt = exact ? 0 : Math.abs(central) * chance.between(0, 0.3);
  return {
    low: central - doubt,
    central,
    high: central + doubt,
    origin: chance.pick(ORIGINS),
    how: "invented",
  };
}

function fishIn(chance: Chance, litres: number, kind: boolean): AnimalCount[] {
  if (chance.is(0.25)) return [];
  const fitting = fishKinds.filter(({ id }) => !kind || !HUNTERS.includes(id));
  const rows = chance
    .some(fitting, 1 + Math.floor(litres / 100))
    .filter(({ liveWetMassG }) => liveWetMassG.central < litres)
    .map((animal) => resident(chance, animal, chance.whole(1, animal.maxPerTank ?? 4)));
  if (!kind && chance.is(0.1)) rows.push({ id: chance.pick(HUNTERS), count: 1, on: null });
  return rows;
}

function crewIn(chance: Chance, litres: number): AnimalCount[] {
  if (chance.is(0.5)) return [];
  const overstocked = chance.is(0.2);
  const rows = chance.some(crewKinds, 6).map((animal) => {
    const room = Math.max(1, Math.floor(litres / animal.spacingLitresPerAnimal.central));
    const most = Math.min(overstocked ? 60 : 25, overstocked ? room * 4 : room);
    return resident(chance, animal, chance.whole(1, most));
  });
  // Some keepers write one kind in two lines, by the day of purchase.
  if (rows.length > 0 && chance.is(0.15)) rows.push({ ...rows[0]!, on: "2026-03-01" });
  return rows;
}

const resident = (chance: Chance, { id }: Animal, count: number): AnimalCount => ({
  id,
  count,
  on: chance.is(0.5) ? null : "2026-01-10",
});

function plannedOf(chance: Chance, kind: boolean): AnimalCount[] {
  if (chance.is(kind ? 0.85 : 0.6)) return [];
  const kinds = chance.is(0.5)
    ? chance.some(fishKinds, 3)
    : [...chance.some(fishKinds, 2), ...chance.some(crewKinds, 2)];
  return kinds.map((animal) => ({
    id: animal.id,
    count: chance.whole(1, animal.maxPerTank ?? 3),
    on: chance.pick([null, "2026-07-10", "2026-10-01", "2027-06-01"]),
  }));
}

function sightingsOf(chance: Chance): TankFacts["sightings"] {
  if (chance.is(0.3)) return {};
  return Object.fromEntries(
    GROWTHS.filter(() => chance.is(0.4)).map((growth) => [growth, chance.pick(COVERS)]),
  );
}

/** Quantity, least and most of a reading, step of its kit. */
const READ = [
  ["tan_mg_n_per_l", 0.01, 2, 0.05],
  ["no2_mg_n_per_l", 0.005, 1, 0.02],
  ["no3_mg_n_per_l", 0.05, 20, 0.25],
  ["po4_mg_p_per_l", 0.002, 0.7, 0.01],
] as const;

function readingsOf(chance: Chance): Reading[] {
  return READ.filter(() => chance.is(0.5)).flatMap(([quantity, least, most, step]): Reading[] => {
    const on = chance.pick([null, "2026-06-01", "2026-06-14"]);
    if (chance.is(0.25)) {
      return [{ quantity, value: { low: 0, central: step / 2, high: step }, censored: "below", on }];
    }
    const central = chance.logBetween(least, most);
    const doubt = chance.is(0.3) ? 0 : step;
    const value = { low: Math.max(0, central - doubt), central, high: central + doubt };
    return [{ quantity, value, censored: chance.is(0.05) ? "above" : null, on }];
  });
}
