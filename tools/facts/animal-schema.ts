/** The shape of facts/animals/<id>.yaml. Its vocabulary is that of src/engine/types/animal.ts. */
import { z } from "zod";
import type { AnimalGroup, AnimalRisk, AnimalRole, KeeperLevel } from "../../src/engine/types/animal.ts";
import { SHELVES } from "../../src/engine/types/shelf.ts";
import {
  flagged,
  measure,
  measures,
  nonNegative,
  paragraph,
  positive,
  said,
  share,
  spread,
  text,
} from "./fact.ts";

const GROUPS = [
  "snail",
  "conch",
  "hermit",
  "crab",
  "shrimp",
  "star",
  "urchin",
  "cucumber",
  "slug",
  "pod",
  "worm",
  "fish",
] as const satisfies AnimalGroup[];

const ROLES = [
  "crew",
  "crew_with_caution",
  "hitchhiker",
  "compatibility_only",
] as const satisfies AnimalRole[];
const LEVELS = ["first-tank", "experienced", "specialist"] as const satisfies KeeperLevel[];

const RISKS = [
  "may_starve",
  "mis_sold",
  "copper_sensitive",
  "bulldozer",
  "grows_too_large",
  "falls_and_dies",
  "escapes",
  "jumps",
  "cool_water",
  "reproduces_in_tank",
  "eats_coral_polyps",
  "single_per_tank",
  "eats_worms_pods",
  "eats_snails",
  "eats_hermits",
  "eats_shrimp",
  "eats_fish",
  "eats_crabs",
  "eats_urchins",
  "eats_coralline",
  "carries_objects",
  "venomous_or_spiny",
  "spine_hazard",
  "toxic_if_eaten",
  "releases_toxin_on_death",
  "eggs_toxic",
  "pump_intake_hazard",
  "inks",
  "needs_target_feeding",
  "steals_food_from_corals",
  "pair_only",
  "territorial",
  "undermines_rock",
  "buries_corals",
] as const satisfies AnimalRisk[];

const id = z.string().regex(/^[a-z]+(-[a-z]+)*$/);
const yesOrNo = said(z.boolean());
const reachScore = z.union([z.literal(0), z.literal(1), z.literal(2)]);
const score = z.number().int().min(0).max(3);
const links = z.record(id, said(z.enum(["likely", "possible"])));
const provenance = flagged.shape;

export const animalSchema = z.strictObject({
  id,
  names: z.strictObject({
    common: said(text),
    also_sold_as: said(z.array(text)),
    scientific: said(text),
    certainty: said(text),
  }),
  kind: z.strictObject({
    group: said(z.enum(GROUPS)),
    role: said(z.enum(ROLES)),
    keeper_level: said(z.enum(LEVELS)),
    price_band: measure("band 1-4", z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)])),
  }),
  diet: measures([...SHELVES, "other"], "fraction", share).extend({ other_foods: said(text).nullable() }),
  body: z.strictObject({
    adult_size: spread("mm"),
    measured_as: said(text),
    live_mass: spread("g"),
    soft_tissue: spread("g").nullable(),
  }),
  carbon: z.strictObject({
    intake: spread("mg C/day"),
    intake_mass_exponent: measure("1", positive),
    maintenance: measure("mg C/day", positive),
    absorption: measure("fraction", share),
    break_even: measure("mg C/day", positive),
    starvation_tolerance: spread("days"),
  }),
  life: z.strictObject({ lifespan: spread("years"), annual_loss: spread("fraction") }),
  water: z.strictObject({
    temperature: z.strictObject({
      min: z.number(),
      optimum_low: z.number(),
      optimum_high: z.number(),
      max: z.number(),
      unit: z.literal("°C"),
      ...provenance,
    }),
    cool_water: yesOrNo,
    salinity: z.strictObject({ low: positive, high: positive, unit: z.literal("PSU"), ...provenance }),
    salinity_sensitivity: said(z.enum(["low", "medium", "high"])),
  }),
  tank: z.strictObject({
    min_volume: measure("L", positive),
    min_age: measure("days", nonNegative),
    min_age_reason: said(text),
    spacing: spread("L/animal"),
    phase: said(z.enum(["first wave", "second wave", "late"])),
  }),
  company: z.strictObject({
    social: said(text),
    group_min: measure("animals", z.number().int().min(1)),
    max_per_tank: measure("animals", z.number().int().min(1).nullable()),
  }),
  reach: measures(["glass", "rock", "crevices", "sand_surface", "inside_sand"], "score 0-2", reachScore),
  habits: z.strictObject({
    active: said(z.enum(["day", "night", "both"])),
    can_right_itself: said(z.enum(["yes", "poorly", "no", "disputed", "not-applicable"])),
  }),
  needs: z.strictObject({
    empty_shells: spread("shells/animal").nullable(),
    shell_kind: said(text).nullable(),
    sand_depth: measure("mm", nonNegative),
    sand_grain: said(text).nullable(),
    sand_area: measure("cm2", nonNegative),
    rock_caves: yesOrNo,
    calcium_alkalinity: yesOrNo,
    lid: yesOrNo,
    swimming_room: yesOrNo,
    pump_guard: yesOrNo,
    host: said(text).nullable(),
  }),
  risks: z.partialRecord(z.enum(RISKS), flagged),
  eaten_by: links,
  eats_animals: links,
  services: measures(
    [
      "film_scraping",
      "hair_algae_removal",
      "bubble_algae_removal",
      "detritus_stirring",
      "sand_turning",
      "leftover_and_carrion_removal",
    ],
    "score 0-3",
    score,
  ),
  side_effects: measures(["bulldozing", "sand_on_corals"], "score 0-3", score),
  hand_feeding: said(text).nullable(),
  notes: paragraph,
  only_if: z.array(z.string().regex(/^Only (if|with|where) .+\.$/)).min(1),
  law_check: paragraph.extend({ text: z.string().regex(/\bcheck\b/) }).nullable(),
});

export type AnimalFile = z.infer<typeof animalSchema>;
