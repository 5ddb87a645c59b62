/**
 * The tank file on the wire, version 1: names in snake_case with their unit at the end, one basis each.
 * A number is in the unit its name ends in; text may carry its own unit and is read by the quantity readers.
 * This checks shape and words only; what the figures mean is judged in read.ts.
 */
import { z } from "zod";
import { GROWTHS } from "../../engine/types/tank.ts";
import { FED_BY } from "../daybook/kinds/care.ts";
import { isZone } from "../quantity/zone.ts";
import { FOODS, type FoodKind } from "./assumptions.ts";
import { SHOWN_IN } from "./shown-in.ts";

export const TANK_FILE_VERSION = 1;

const amount = z
  .union([z.number(), z.string()])
  .meta({ description: "A number in the unit of the name, or text with its unit" });
const yesNo = z.union([z.boolean(), z.enum(["yes", "no"])]);
const day = z.string().meta({ description: "A date, such as 2026-06-15" });
const text = z.string();
const sides = z.union([z.string(), z.tuple([z.number(), z.number(), z.number()])]).meta({
  description: "Length, width, height: 90x45x45, or 36x18x18 in",
});
const list = <T extends z.ZodType>(item: T) => z.array(item).max(500);

const compartment = z.strictObject({ water_l: amount.optional(), sides_cm: sides.optional() });

const food = z.strictObject({
  kind: z.enum(Object.keys(FOODS) as [FoodKind, ...FoodKind[]]),
  g_per_day: amount.optional(),
});
const size = z.enum(["small", "medium", "large"]);
const sized = { size: size.optional(), length_cm: amount.optional(), weight_g: amount.optional() };

const animal = z.strictObject({
  animal: text,
  count: z.union([z.number(), z.string()]).optional(),
  on: day.optional(),
  ...sized,
});

const fish = z.strictObject({
  animal: text.optional(),
  count: z.union([z.number(), z.string()]).optional(),
  on: day.optional(),
  ...sized,
});

const measured = {
  tan_mg_n_per_l: amount.optional(),
  no2_mg_per_l: amount.optional(),
  no3_mg_per_l: amount.optional(),
  po4_mg_per_l: amount.optional(),
  salinity_psu: amount.optional(),
  temperature_c: amount.optional(),
  ph: amount.optional(),
  alkalinity_dkh: amount.optional(),
  calcium_mg_per_l: amount.optional(),
  magnesium_mg_per_l: amount.optional(),
};

const readings = z.strictObject({
  on: day.optional(),
  ...measured,
  kit_steps: z
    .strictObject(measured)
    .optional()
    .meta({ description: "Smallest step of each kit, in the unit of the name" }),
});

const seen = z
  .union([z.enum(["none", "trace", "patches", "covered"]), z.number(), z.string()])
  .meta({ description: "none, trace, patches, covered, or a share such as 30 %" });

export const tankFileSchema = z
  .strictObject({
    grazewell_tank: z.literal(TANK_FILE_VERSION),
    name: text.optional(),
    note: text.optional(),
    as_of: day.optional().meta({ description: "The day the file speaks of; today where left out" }),
    preferences: z
      .strictObject({
        locale: text.optional(),
        gallon: z.enum(["us", "imperial"]).optional(),
        length: z.enum(["cm", "in"]).optional(),
        dates: z.enum(["dmy", "mdy"]).optional(),
        zone: text
          .max(100)
          .refine(isZone)
          .optional()
          .meta({ description: "IANA time zone where the tank stands, such as Europe/London" }),
        shown_in: z
          .strictObject({
            volume: z.enum(SHOWN_IN.volume).optional(),
            length: z.enum(SHOWN_IN.length).optional(),
            temperature: z.enum(SHOWN_IN.temperature).optional(),
            salinity: z.enum(SHOWN_IN.salinity).optional(),
            alkalinity: z.enum(SHOWN_IN.alkalinity).optional(),
            nitrate: z.enum(SHOWN_IN.nitrate).optional(),
            phosphate: z.enum(SHOWN_IN.phosphate).optional(),
          })
          .optional()
          .meta({ description: "Units that pages show and offer first; what was typed stays as it was" }),
      })
      .optional(),
    water_l: amount.optional(),
    display_sides_cm: sides.optional(),
    compartments: z
      .strictObject({
        display: compartment.optional(),
        sump: compartment.optional(),
        rear_chamber: compartment.optional(),
      })
      .optional(),
    first_seawater_on: day.optional(),
    rock: z
      .strictObject({
        start: z.enum(["live", "dry", "mixed", "none"]).optional(),
        rock_kg: amount.optional(),
        caves: yesNo.optional(),
        secured: yesNo.optional(),
      })
      .optional(),
    floor: z
      .strictObject({
        kind: z.enum(["bare", "sand", "rubble"]).optional(),
        depth_mm: amount.optional(),
        grain: z.enum(["fine", "medium", "coarse"]).optional(),
        area_m2: amount.optional(),
      })
      .optional(),
    light: z
      .strictObject({
        hours_per_day: amount.optional(),
        strength: z.enum(["low", "medium", "high"]).optional(),
        par_umol_m2_s: amount.optional(),
      })
      .optional(),
    temperature_c: amount.optional(),
    salinity_psu: amount.optional(),
    ph: amount.optional(),
    ph_scale: z.enum(["nbs", "total"]).optional(),
    feeding: z
      .strictObject({
        foods: list(food).optional(),
        left_after_two_minutes: z.enum(["none", "some", "a_lot"]).optional(),
        hand_fed_to_crew: list(food).optional(),
      })
      .optional(),
    fish: list(fish).optional(),
    animals_present: list(animal).optional(),
    animals_planned: list(animal).optional(),
    equipment: z
      .strictObject({
        mechanical_filter: z.enum(["none", "floss", "sock", "cartridge", "roller"]).optional(),
        filter_change_days: amount.optional(),
        skimmer: yesNo.optional(),
        refugium: z
          .strictObject({ light_hours_per_day: amount.optional(), macroalgae_most_g: amount.optional() })
          .optional(),
        phosphate_remover_g: amount.optional(),
        lid: yesNo.optional(),
        pump_guards: yesNo.optional(),
      })
      .optional(),
    corals: yesNo.optional(),
    care: z
      .strictObject({
        water_change_percent: amount.optional(),
        water_change_every_days: amount.optional(),
        wipe_glass_every_days: amount.optional(),
      })
      .optional(),
    source_water: z.enum(["tap", "conditioned", "purified"]).optional(),
    readings: list(readings).optional(),
    sightings: z
      .strictObject(
        Object.fromEntries(GROWTHS.map((g) => [g, seen.optional()])) as Record<
          (typeof GROWTHS)[number],
          z.ZodOptional<typeof seen>
        >,
      )
      .optional(),
    keeper_experience: z.enum(["first-tank", "experienced", "specialist"]).optional(),
    medicines: list(text).optional(),
    trouble: text.optional(),
    stock_list: list(text).optional(),
    shop: z
      .strictObject({
        lead_days: amount.optional(),
        least_heads: amount.optional(),
        packs: list(z.strictObject({ animal: text, heads: amount })).optional(),
        holds_below_c: amount.optional(),
        holds_above_c: amount.optional(),
      })
      .optional()
      .meta({
        description: "How the shop sells and sends: days to come, least order, packs, weather it holds in",
      }),
    absences: list(
      z.strictObject({
        from: day,
        to: day,
        fed_by: z.enum(FED_BY).optional(),
        every_days: amount.optional(),
      }),
    )
      .optional()
      .meta({
        description: "When its keeper is away from home, who feeds, and a sitter on every so many days",
      }),
    wishes: list(text).optional(),
    exclusions: list(text).optional(),
    price_band_max: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]).optional(),
  })
  .meta({
    description:
      "What a keeper knows about one tank. Only the water volume, or sides to work it out from, is needed.",
  });

export type TankFile = z.infer<typeof tankFileSchema>;
export type MeasuredKey = keyof typeof measured;
