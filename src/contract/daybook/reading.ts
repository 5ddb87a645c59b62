/**
 * A reading as it is kept: what was typed, how it was read, when. The typed text is the record: read again with the
 * same preferences it gives the same figure.
 */
import { z } from "zod";

/** Quantities that a keeper measures, by their names in a tank file; figures are in the unit the name ends in. */
export const MEASURED = [
  "salinity_psu",
  "temperature_c",
  "ph",
  "alkalinity_dkh",
  "no3_mg_per_l",
  "po4_mg_per_l",
  "tan_mg_n_per_l",
  "no2_mg_per_l",
  "calcium_mg_per_l",
  "magnesium_mg_per_l",
] as const;
export type Measured = (typeof MEASURED)[number];

export const readingBody = z.strictObject({
  quantity: z.enum(MEASURED),
  /** As typed, the unit chosen beside the field added where the text had none: "5 NO3-N". */
  text: z.string().max(200),
  /** Smallest step of the kit, as typed; null where not said. */
  kit_step: z.string().max(60).nullable(),
  /** When, as typed. */
  observed_text: z.string().max(60),
  /** Instant with its offset, where an hour was said; the day stands in the entry. */
  observed_at: z.string().nullable(),
  /** As read, in the unit of the quantity's name. */
  value: z.strictObject({ low: z.number(), central: z.number(), high: z.number() }),
  censored: z.enum(["below", "above"]).nullable(),
  /** Unusual or dangerous as read; what was said then stands in `said`. */
  flag: z.enum(["unusual", "danger"]).nullable(),
  said: z.string().max(1000).nullable(),
  note: z.string().max(10_000).nullable(),
});
export type ReadingBody = z.infer<typeof readingBody>;
