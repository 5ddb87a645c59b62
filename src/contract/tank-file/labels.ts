/** Plain names of the facts of a tank, their units, and which entry of the file tells each. */
import type { TankFacts } from "../../engine/types/tank.ts";
import { ASSUMPTIONS, type AssumedField } from "./assumptions.ts";

export interface FactLabel {
  readonly label: string;
  readonly unit: string;
  /** Entry of the tank file that tells it. */
  readonly entry: string;
  /** How much the size of a crew hangs on it; judgement. */
  readonly matters: "much" | "some" | "little";
}

type FactField = Exclude<keyof TankFacts, "assumed" | "name" | "asOf">;

const of = (field: AssumedField, entry: string, matters: FactLabel["matters"], unit?: string): FactLabel => ({
  label: ASSUMPTIONS[field].label,
  unit: unit ?? ASSUMPTIONS[field].unit,
  entry,
  matters,
});

const is = (label: string, entry: string, matters: FactLabel["matters"], unit = ""): FactLabel => ({
  label,
  unit,
  entry,
  matters,
});

/** Facts that can be assumed, derived or stated, in the order they are shown. */
export const FACT_LABELS: Readonly<Partial<Record<FactField, FactLabel>>> = {
  waterL: is("Water", "water_l", "much", "L"),
  displayL: is("Water in the display", "compartments.display", "some", "L"),
  ageDays: of("ageDays", "first_seawater_on", "much"),
  glassM2: of("glassM2", "display_sides_cm", "some"),
  rockKg: of("rockKg", "rock.rock_kg", "some"),
  litRockM2: of("litRockM2", "rock.rock_kg", "much"),
  rockStart: is("Rock at the start", "rock.start", "some"),
  sandM2: of("sandM2", "floor", "much"),
  sandDepthMm: of("sandDepthMm", "floor.depth_mm", "some"),
  sandGrain: is("Sand grain", "floor.grain", "little"),
  lightHours: of("lightHours", "light.hours_per_day", "some"),
  parGlass: of("parGlass", "light.strength", "much"),
  parRock: of("parRock", "light.strength", "much"),
  parSand: of("parSand", "light.strength", "some"),
  temperatureC: of("temperatureC", "temperature_c", "some"),
  salinityPsu: of("salinityPsu", "salinity_psu", "little"),
  ph: of("ph", "ph", "little"),
  feedGPerDay: of("feedGPerDay", "feeding.foods", "much", "g a day"),
  feedCMgPerG: of("feedCMgPerG", "feeding.foods", "little"),
  feedNMgPerG: of("feedNMgPerG", "feeding.foods", "little"),
  feedPMgPerG: of("feedPMgPerG", "feeding.foods", "little"),
  uneatenShare: of("uneatenShare", "feeding.left_after_two_minutes", "much", ""),
  handFedMgCPerDay: is("Food given to the crew by hand", "feeding.hand_fed_to_crew", "little", "mg C a day"),
  fishWetG: of("fishWetG", "fish", "some"),
  filterChangeDays: of("filterChangeDays", "equipment.mechanical_filter", "some"),
  skimmer: is("Skimmer", "equipment.skimmer", "some"),
  refugium: is("Refugium", "equipment.refugium", "little"),
  waterChangeFraction: of("waterChangeFraction", "care.water_change_percent", "little", ""),
  waterChangeEveryDays: of("waterChangeEveryDays", "care.water_change_every_days", "little"),
  wipeGlassEveryDays: of("wipeGlassEveryDays", "care.wipe_glass_every_days", "some"),
  newWaterNo3NMgPerL: of("newWaterNo3NMgPerL", "source_water", "little"),
  newWaterPo4PMgPerL: of("newWaterPo4PMgPerL", "source_water", "little"),
  sourceWater: is("Source water", "source_water", "little"),
  keeperLevel: is("Keeper's experience", "keeper_experience", "some"),
  lid: is("Lid", "equipment.lid", "little"),
  pumpGuards: is("Pump guards", "equipment.pump_guards", "little"),
  rockCaves: is("Caves in the rock", "rock.caves", "little"),
  rockSecured: is("Rock secured", "rock.secured", "little"),
  corals: is("Corals", "corals", "some"),
};
