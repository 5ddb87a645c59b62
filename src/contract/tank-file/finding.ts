/** What is wrong with a file, and what was read in a way worth saying. */
import type { Choice, Message, MessageKind } from "../quantity/outcome.ts";

/** Place in the file: keys and positions from the top. */
export type Path = readonly (string | number)[];

interface Placed {
  /** `animals_present[1].count` */
  readonly path: string;
  readonly label: string;
  /** Line in the file, from 1; null where the place is not in it. */
  readonly line: number | null;
}

/** Keeps the file from being used until it is mended. */
export interface Finding extends Placed {
  readonly typed: string | null;
  readonly message: Message;
  /** Likely fixes; `text` is what to write instead. */
  readonly choices: readonly Choice[];
}

/** Does not: how something was read, or that it is unusual or dangerous. */
export interface Notice extends Placed {
  readonly kind: MessageKind;
  readonly text: string;
}

export function pathText(path: Path): string {
  return path
    .map((step, i) => (typeof step === "number" ? `[${step}]` : i === 0 ? step : `.${step}`))
    .join("");
}

const LABELS: Readonly<Record<string, string>> = {
  grazewell_tank: "File version",
  name: "Name",
  note: "Note",
  as_of: "As of",
  preferences: "Preferences",
  locale: "Locale",
  gallon: "Gallon",
  length: "Length unit",
  dates: "Order of dates",
  zone: "Time zone",
  water_l: "Water volume",
  display_sides_cm: "Tank sides",
  sides_cm: "Sides",
  compartments: "Compartments",
  display: "Display",
  sump: "Sump",
  rear_chamber: "Rear chamber",
  first_seawater_on: "First seawater",
  rock: "Rock",
  start: "Rock at the start",
  rock_kg: "Rock",
  caves: "Caves",
  secured: "Rock secured",
  floor: "Floor",
  kind: "Kind",
  depth_mm: "Sand depth",
  grain: "Sand grain",
  area_m2: "Sand area",
  light: "Light",
  hours_per_day: "Light hours",
  strength: "Light strength",
  par_umol_m2_s: "Light at the rock",
  temperature_c: "Temperature",
  salinity_psu: "Salinity",
  ph: "pH",
  ph_scale: "pH scale",
  feeding: "Feeding",
  foods: "Foods",
  g_per_day: "Feed a day",
  left_after_two_minutes: "Left after two minutes",
  hand_fed_to_crew: "Fed to the crew by hand",
  fish: "Fish",
  animals_present: "Animals present",
  animals_planned: "Animals planned",
  animal: "Animal",
  count: "Head count",
  on: "Date",
  size: "Size",
  length_cm: "Length",
  weight_g: "Weight",
  equipment: "Equipment",
  mechanical_filter: "Mechanical filter",
  filter_change_days: "Filter change",
  skimmer: "Skimmer",
  refugium: "Refugium",
  light_hours_per_day: "Refugium light",
  macroalgae_most_g: "Macroalgae",
  phosphate_remover_g: "Phosphate remover",
  lid: "Lid",
  pump_guards: "Pump guards",
  corals: "Corals",
  care: "Care",
  water_change_percent: "Water change",
  water_change_every_days: "Days between water changes",
  wipe_glass_every_days: "Days between wiping the glass",
  source_water: "Source water",
  readings: "Readings",
  tan_mg_n_per_l: "Ammonia",
  no2_mg_per_l: "Nitrite",
  no3_mg_per_l: "Nitrate",
  po4_mg_per_l: "Phosphate",
  alkalinity_dkh: "Alkalinity",
  calcium_mg_per_l: "Calcium",
  magnesium_mg_per_l: "Magnesium",
  kit_steps: "Smallest steps of the kits",
  sightings: "Sightings",
  keeper_experience: "Keeper's experience",
  medicines: "Medicines",
  trouble: "Trouble",
  stock_list: "Stock list",
  shop: "Shop",
  lead_days: "Days from asking to coming",
  least_heads: "Least order, heads",
  packs: "Sold in packs of",
  heads: "Heads in a pack",
  holds_below_c: "Sends nothing below",
  holds_above_c: "Sends nothing above",
  wishes: "Wishes",
  exclusions: "Exclusions",
  price_band_max: "Highest price band",
  film_glass: "Film on glass",
  film_rock: "Film on rock",
  film_sand: "Film on sand",
  diatoms: "Diatoms",
  hair_algae: "Hair algae",
  bubble_algae: "Bubble algae",
  cyanobacteria: "Cyanobacteria",
  dinoflagellates: "Dinoflagellates",
  detritus_sand: "Detritus on sand",
  detritus_crevice: "Detritus in crevices",
  leftovers: "Leftovers",
};

/** The label of a place: that of its last name. */
export function labelOf(path: Path): string {
  const name = path.findLast((step) => typeof step === "string");
  if (name === undefined) return "Tank file";
  return (Object.hasOwn(LABELS, name) ? LABELS[name] : undefined) ?? String(name).replaceAll("_", " ");
}
