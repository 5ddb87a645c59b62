/**
 * From what was said to facts an engine can count with: derives what follows, assumes the rest, and says which.
 * The assumptions are data (assumptions.ts); here is only how one fact follows from another.
 */
import type { Estimate, Known } from "../../engine/types/estimate.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { daysBetween } from "../quantity/calendar.ts";
import {
  ASSUMPTIONS,
  type AssumedField,
  assumedBand,
  LIGHT_SHARE,
  MACROALGAE_MG_C_PER_G,
  NEW_WATER,
  PH_SCALE_DOUBT,
  READING_DOUBT,
  REFUGIUM,
  SORBENT_MG_P_PER_G,
  STRENGTH,
  UNEATEN,
} from "./assumptions.ts";
import { exactly, product, scaled, withDoubt } from "./bands.ts";
import { estimate, type Filler } from "./estimates.ts";
import { feedOf } from "./feed-facts.ts";
import type { AnswerField, Stated, Told } from "./stated.ts";
import { surfacesOf } from "./surfaces.ts";

export function completeFacts(stated: Stated): TankFacts {
  const { waterL, displayL, sizeL, ...surfaces } = surfacesOf(stated);
  const assumed: string[] = [...surfaces.assumed];
  const assume = (field: AssumedField): Estimate => {
    assumed.push(field);
    return estimate("assumed", assumedBand(field, sizeL), ASSUMPTIONS[field].why);
  };
  const told = (value: Told | undefined, field: AssumedField, doubt = 0): Estimate =>
    value === undefined
      ? assume(field)
      : estimate("stated", doubt === 0 ? value : withDoubt(value, doubt), value.how);
  const known = <T>(value: T | undefined, otherwise: T, field: string): Known<T> => {
    if (value !== undefined) return { value, origin: "stated" };
    assumed.push(field);
    return { value: otherwise, origin: "assumed" };
  };
  const answer = (field: AnswerField, otherwise: boolean, name: string) =>
    known(stated.answers[field], otherwise, name);
  const { amounts } = stated;
  const feed = feedOf(stated, { assume, assumed });
  const source = known<NonNullable<Stated["sourceWater"]>>(stated.sourceWater, "purified", "sourceWater");
  const newWater = (field: "newWaterNo3NMgPerL" | "newWaterPo4PMgPerL", key: "n" | "p"): Estimate =>
    source.origin === "assumed"
      ? assume(field)
      : estimate("derived", NEW_WATER[source.value][key], `from ${source.value} water`);
  const rockless = surfaces.rockKg.high === 0;
  return {
    name: stated.name,
    asOf: stated.asOf,
    waterL,
    displayL,
    ageDays: ageOf(stated, assume),
    rockStart: rockless ? { value: "none", origin: "stated" } : known(stated.rockStart, "mixed", "rockStart"),
    glassM2: surfaces.glassM2,
    litRockM2: surfaces.litRockM2,
    sandM2: surfaces.sandM2,
    rockKg: surfaces.rockKg,
    sandDepthMm: surfaces.sandDepthMm,
    sandGrain: grainOf(stated, assumed),
    ...lightOf(stated, assume),
    lightHours: told(amounts.lightHours, "lightHours"),
    temperatureC: told(amounts.temperatureC, "temperatureC", READING_DOUBT.temperature_c),
    salinityPsu: told(amounts.salinityPsu, "salinityPsu", READING_DOUBT.salinity_psu),
    ph: told(
      amounts.ph,
      "ph",
      Math.hypot(READING_DOUBT.ph, stated.phScale === undefined ? PH_SCALE_DOUBT : 0),
    ),
    phScale: stated.phScale ?? "nbs",
    ...feed,
    uneatenShare:
      stated.leftAfterTwoMinutes === undefined
        ? assume("uneatenShare")
        : estimate(
            "derived",
            UNEATEN[stated.leftAfterTwoMinutes],
            `left after two minutes: ${stated.leftAfterTwoMinutes.replace("_", " ")}`,
          ),
    filterChangeDays: filterOf(stated, assume),
    skimmer: answer("skimmer", sizeL >= 100, "skimmer"),
    refugium: refugiumOf(stated.refugium, assumed),
    phosphateSorbentMgP:
      amounts.phosphateRemoverG === undefined ? null : amounts.phosphateRemoverG.central * SORBENT_MG_P_PER_G,
    waterChangeFraction:
      amounts.waterChangePercent === undefined
        ? assume("waterChangeFraction")
        : estimate("stated", scaled(amounts.waterChangePercent, 0.01), amounts.waterChangePercent.how),
    waterChangeEveryDays: told(amounts.waterChangeEveryDays, "waterChangeEveryDays"),
    wipeGlassEveryDays: told(amounts.wipeGlassEveryDays, "wipeGlassEveryDays"),
    newWaterNo3NMgPerL: newWater("newWaterNo3NMgPerL", "n"),
    newWaterPo4PMgPerL: newWater("newWaterPo4PMgPerL", "p"),
    sourceWater: source,
    keeperLevel: known(stated.keeperLevel, "first-tank", "keeperLevel"),
    lid: answer("lid", false, "lid"),
    pumpGuards: answer("pumpGuards", false, "pumpGuards"),
    rockCaves: answer("caves", !rockless, "rockCaves"),
    rockSecured: answer("secured", false, "rockSecured"),
    corals: answer("corals", true, "corals"),
    medicines: stated.medicines,
    trouble: stated.trouble,
    sightings: stated.sightings,
    readings: stated.readings,
    present: stated.present,
    planned: stated.planned,
    unknownAnimals: stated.unknownAnimals,
    wishes: stated.wishes,
    exclusions: stated.exclusions,
    ...(stated.shop === undefined ? {} : { shop: stated.shop }),
    ...(stated.absences === undefined ? {} : { absences: stated.absences }),
    stockList: stated.stockList,
    priceBandMax: stated.priceBandMax,
    assumed: [...new Set(assumed)],
  };
}

function ageOf({ firstSeawaterOn, asOf }: Stated, assume: Filler["assume"]): Estimate {
  if (firstSeawaterOn === undefined) return assume("ageDays");
  return estimate(
    "derived",
    exactly(daysBetween(firstSeawaterOn, asOf)),
    `first seawater on ${firstSeawaterOn}`,
  );
}

function grainOf({ floorKind, grain }: Stated, assumed: string[]): TankFacts["sandGrain"] {
  if (floorKind === "bare") return { value: "none", origin: "stated" };
  if (floorKind === "rubble") return { value: "rubble", origin: "stated" };
  if (grain !== undefined) return { value: grain, origin: "stated" };
  assumed.push("sandGrain");
  return { value: "unknown", origin: "assumed" };
}

function lightOf(
  { amounts: { par }, lightStrength }: Stated,
  assume: Filler["assume"],
): Pick<TankFacts, "parGlass" | "parRock" | "parSand"> {
  const at = (place: "glass" | "rock" | "sand", field: AssumedField): Estimate => {
    if (par !== undefined)
      return estimate("derived", product(par, LIGHT_SHARE[place]), `${par.how} at the rock`);
    if (lightStrength === undefined) return assume(field);
    return estimate("derived", STRENGTH[lightStrength][place], `light said to be ${lightStrength}`);
  };
  return {
    parGlass: at("glass", "parGlass"),
    parRock: at("rock", "parRock"),
    parSand: at("sand", "parSand"),
  };
}

/** Days between changes of sock or floss; null only where there is no mechanical filter. */
function filterOf({ mechanicalFilter, amounts }: Stated, assume: Filler["assume"]): number | null {
  if (mechanicalFilter === "none") return null;
  return amounts.filterChangeDays?.central ?? assume("filterChangeDays").central;
}

function refugiumOf(said: Stated["refugium"], assumed: string[]): TankFacts["refugium"] {
  if (said === null) return null;
  const { lightHours, mostG } = said;
  if (lightHours === undefined || mostG === undefined) assumed.push("refugium");
  return {
    light: (lightHours ?? REFUGIUM.lightHours) / 24,
    maxMgC: (mostG ?? REFUGIUM.mostG) * MACROALGAE_MG_C_PER_G,
  };
}
