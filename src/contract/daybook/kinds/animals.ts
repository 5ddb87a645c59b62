/** Entries that are about animals: counted, added, lost, moved, named anew. What was sold as and what was seen are two. */
import { z } from "zod";
import { entryCommon, heads, namedAnimal, sureness } from "./common.ts";

export const headCountBody = z.strictObject({
  ...entryCommon,
  ...namedAnimal,
  /** As typed: "8?", "many". */
  seen_text: z.string().max(60),
  /** Null for "many". */
  seen: heads.nullable(),
  sureness,
  /** Hours since the lamps went out; negative: before; null where not said. */
  hours_from_lights_out: z.number().min(-24).max(24).nullable(),
  torch: z.boolean().nullable(),
  food_offered: z.boolean().nullable(),
});

export const additionBody = z.strictObject({
  ...entryCommon,
  ...namedAnimal,
  /** The name on the label, where it was another. */
  sold_as: z.string().max(200).nullable(),
  /** Alive on arrival; 0 only where all came dead. */
  count: heads,
  dead_on_arrival: heads,
  condition: z.enum(["lively", "usual", "weak"]).nullable(),
  /** The wave it belongs to; null where it is none of the plan. */
  wave: z.number().int().min(1).max(50).nullable(),
  /** Why it was added though its gate was not met; null where the gate was met or there is none. */
  despite_gate: z.string().max(1000).nullable(),
});

/** Asked of a shop, not yet there. What arrives is an addition of its own: this one says no more than that it was asked. */
export const orderBody = z.strictObject({
  ...entryCommon,
  ...namedAnimal,
  count: heads.min(1),
  /** The wave it is for; null where it is none of the plan. */
  wave: z.number().int().min(1).max(50).nullable(),
  /** Day it should come, ISO date; null where not said. */
  expected: z.iso.date().nullable(),
  /** Of whom, as typed. */
  from_text: z.string().max(200).nullable(),
  /** Why it was ordered though its gate was not met; null where the gate was met or there is none. */
  despite_gate: z.string().max(1000).nullable(),
});

export const lossBody = z.strictObject({
  ...entryCommon,
  ...namedAnimal,
  count: heads.min(1),
  /** Found: a body or an empty shell. Feared: missing, and nothing was found. */
  certainty: z.enum(["found", "feared"]),
  /** Whether the body was taken out of the water; null where feared or not said. */
  body_removed: z.boolean().nullable(),
  /** What the keeper thinks it was. */
  cause: z.enum(["unknown", "starved", "eaten", "fell", "moult", "poisoned", "arrival", "age"]),
});

/** Animals that leave alive: never into the wild. */
export const departureBody = z.strictObject({
  ...entryCommon,
  ...namedAnimal,
  count: heads.min(1),
  /** Where to, as typed: another tank, a shop, a friend. */
  to_text: z.string().max(200),
});

/** What was taken for one animal is another. Entries before it stay as they are; the plan is made anew. */
export const identificationBody = z.strictObject({
  ...entryCommon,
  was_text: z.string().max(200),
  was: z.string().max(100).nullable(),
  ...namedAnimal,
  /** How many of them; null: all. */
  count: heads.min(1).nullable(),
});
