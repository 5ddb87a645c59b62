/** What `grazewell water --json` prints. A change that breaks a reader gets a new number in `schema`. */
import { z } from "zod";

/** A number of a run; JSON knows no infinity. */
const figure = z.number();

const band = z.strictObject({ low: figure, high: figure });

/** Where a band lies against a limit: `either` when the limit is inside it. */
const against = z.enum(["below", "either", "above"]);

export const waterOutput = z.strictObject({
  schema: z.literal("grazewell.water/1"),
  readings: z
    .array(
      z.strictObject({
        field: z.string(),
        text: z.string().describe("as typed"),
        value: figure,
        low: figure,
        high: figure,
        unit: z.string(),
      }),
    )
    .describe("what was typed, and how it was read"),
  salinity_psu: figure,
  temperature_c: figure,
  ph: figure.nullable().describe("as read, on ph_scale"),
  ph_scale: z.enum(["nbs", "total"]).nullable(),
  ph_total: figure.nullable().describe("the same on the total hydrogen ion scale"),
  altitude_m: figure,
  air_pressure_atm: figure,
  density_kg_per_m3: figure,
  specific_gravity_25_25: figure,
  specific_gravity_20_20: figure,
  conductivity_mS_per_cm: figure.describe("at temperature_c, as an uncorrected meter shows it"),
  conductivity_at_25_c_mS_per_cm: figure.describe("as a meter that corrects to 25 C shows it"),
  oxygen_saturation_mg_per_l: figure,
  unionised_ammonia_fraction: figure.nullable().describe("share of total ammonia; null without a pH"),
  tan_mg_n_per_l: figure.nullable(),
  unionised_ammonia_mg_n_per_l: figure.nullable().describe("null without a pH and total ammonia"),
  unionised_ammonia_mg_nh3_per_l: figure.nullable(),
  ammonia_limits: z
    .strictObject({
      chronic_mg_n_per_l: figure,
      acute_mg_n_per_l: figure,
      against_chronic: against,
      against_acute: against,
      source: z.string(),
    })
    .nullable(),
  bands: z.record(z.string(), band).describe("figure's key → its range"),
  confidence: z
    .record(z.string(), z.enum(["fitted", "low"]))
    .describe("low: beyond the equation's own range"),
  sources: z.record(z.string(), z.array(z.string()).min(1)).describe("figure's key → what it rests on"),
  notes: z.array(z.string()),
});

export type WaterOutput = z.infer<typeof waterOutput>;
