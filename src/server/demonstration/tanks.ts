/**
 * Four tanks of our own invention, for trying out: one whose feed was doubled a month ago, a small one of which little is
 * known, one in its first weeks, a large one where a mouth is missing. Days are counted back from the day they are made.
 */
import { addDays } from "../../contract/quantity/calendar.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { DaybookName } from "./daybooks.ts";

export interface Demonstration {
  /** Of an invented keeper. */
  readonly keeper: string;
  readonly document: TankFile;
  readonly daybook: DaybookName;
  /** Days ago that its answers were given: the daybook goes on from there. */
  readonly givenDaysAgo: number;
}

/** The ISO date so many days before. */
export const before = (today: string, days: number): string => addDays(today, -days);

export const demonstrations = (today: string): readonly Demonstration[] => [
  {
    keeper: "Ada (invented)",
    daybook: "feed doubled",
    givenDaysAgo: 61,
    document: {
      grazewell_tank: 1,
      name: "Hallway reef (invented)",
      note: "An invented tank. Ten months old, a small crew, readings twice a week.",
      water_l: "180 L",
      display_sides_cm: "100x45x50",
      first_seawater_on: before(today, 305),
      rock: { start: "mixed", rock_kg: "16 kg", caves: "yes", secured: "yes" },
      floor: { kind: "sand", depth_mm: "30 mm", grain: "fine" },
      light: { hours_per_day: 9, strength: "medium" },
      temperature_c: "25.4 C",
      salinity_psu: "35 psu",
      feeding: {
        foods: [
          { kind: "dry_pellet", g_per_day: "0.35 g" },
          { kind: "frozen_mysis", g_per_day: "1 g" },
        ],
        left_after_two_minutes: "some",
      },
      fish: [
        { animal: "clownfish", count: 2, size: "medium" },
        { animal: "tailspot-blenny", count: 1 },
      ],
      animals_present: [
        { animal: "trochus-snail", count: 3, on: before(today, 190) },
        { animal: "nassarius-snail", count: 2, on: before(today, 190) },
      ],
      equipment: {
        mechanical_filter: "sock",
        filter_change_days: 4,
        skimmer: "yes",
        lid: "yes",
        pump_guards: "yes",
      },
      corals: "yes",
      care: { water_change_percent: 10, water_change_every_days: 7, wipe_glass_every_days: 5 },
      source_water: "purified",
      sightings: {
        film_glass: "patches",
        hair_algae: "patches",
        film_rock: "covered",
        detritus_sand: "trace",
      },
      keeper_experience: "experienced",
    },
  },
  {
    keeper: "Ada (invented)",
    daybook: "tests read nothing",
    givenDaysAgo: 45,
    document: {
      grazewell_tank: 1,
      name: "Desk ten (invented)",
      note: "An invented tank. Two and a half gallons on a desk; little is known of it.",
      water_l: "2.5 US gal",
      first_seawater_on: before(today, 75),
      rock: { start: "live" },
      fish: [],
      sightings: { film_glass: "trace" },
      keeper_experience: "first-tank",
      preferences: { gallon: "us", locale: "en-US" },
    },
  },
  {
    keeper: "Bo (invented)",
    daybook: "first weeks",
    givenDaysAgo: 20,
    document: {
      grazewell_tank: 1,
      name: "Cellar tank (invented)",
      note: "An invented tank. Three weeks old, dry rock, nobody in it yet.",
      water_l: "240 L",
      first_seawater_on: before(today, 21),
      rock: { start: "dry", rock_kg: "22 kg" },
      floor: { kind: "bare" },
      light: { hours_per_day: 6, strength: "low" },
      fish: [],
      equipment: { mechanical_filter: "floss", skimmer: "yes", lid: "no" },
      source_water: "purified",
      sightings: { film_glass: "none" },
      keeper_experience: "first-tank",
    },
  },
  {
    keeper: "Cleo (invented)",
    daybook: "hermits dwindle",
    givenDaysAgo: 60,
    document: {
      grazewell_tank: 1,
      name: "Library reef (invented)",
      note: "An invented tank. Four years old; sand that nobody turns, and hair algae that nobody eats.",
      water_l: "520 L",
      first_seawater_on: before(today, 1460),
      rock: { start: "live", rock_kg: "50 kg", caves: "yes", secured: "yes" },
      floor: { kind: "sand", depth_mm: "60 mm", grain: "fine" },
      light: { hours_per_day: 10, strength: "high" },
      temperature_c: "26 C",
      feeding: {
        foods: [
          { kind: "dry_flake", g_per_day: "1 g" },
          { kind: "frozen_mysis", g_per_day: "3 g" },
        ],
        left_after_two_minutes: "a_lot",
      },
      fish: [
        { animal: "yellow-tang", count: 1 },
        { animal: "clownfish", count: 2 },
        { animal: "cardinalfish", count: 4 },
      ],
      animals_present: [
        { animal: "scarlet-hermit", count: 4 },
        { animal: "skunk-cleaner-shrimp", count: 2 },
      ],
      equipment: { mechanical_filter: "roller", skimmer: "yes", lid: "yes", pump_guards: "yes" },
      corals: "yes",
      care: { water_change_percent: 15, water_change_every_days: 14, wipe_glass_every_days: 7 },
      source_water: "purified",
      sightings: {
        hair_algae: "covered",
        film_sand: "patches",
        detritus_sand: "covered",
      },
      keeper_experience: "specialist",
    },
  },
];
