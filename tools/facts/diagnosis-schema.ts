/** The shapes of facts/growths, facts/hitchhikers and facts/causes. Words: docs/model/diagnosis.md. */
import { z } from "zod";
import { SHELVES } from "../../src/engine/types/shelf.ts";
import { GROWTHS } from "../../src/engine/types/tank.ts";
import { flagged, measure, paragraph, said, text } from "./fact.ts";

const id = z.string().regex(/^[a-z]+(-[a-z]+)*$/);
/** Traits and clues are kept in sightings: short, lower case, underscores. */
const trait = z.string().regex(/^[a-z][a-z_]{1,58}$/);
/** Never 0 or 1: one wrong answer must not rule a thing out for good. */
const likelihood = z.number().min(0.01).max(0.98);
const chance = measure("chance", likelihood);
const lines = z.array(paragraph);

export const EFFECTS = [
  ...GROWTHS,
  ...["snail_loss", "crew_loss", "waterline_snails", "fallen_snails", "empty_shells"],
  ...["hiding", "ill_animals", "cloudy_water"],
] as const;
const effect = z.enum(EFFECTS);

const names = z.strictObject({ common: said(text), also: said(z.array(text)), scientific: said(text) });
const described = {
  id,
  names,
  prior: measure("share", z.number().positive().max(1)),
  looks: paragraph,
  chances: z.record(trait, chance),
  do: lines,
  dont: lines,
  stop: paragraph,
};

export const growthSchema = z.strictObject({
  ...described,
  sighting: z.enum(GROWTHS).nullable(),
  shelf: z.enum(SHELVES).nullable(),
  eaters: z.record(id, said(z.enum(["eats", "nibbles", "refuses", "harmed"]))),
  crew: said(z.enum(["yes", "partly", "no"])),
  crew_said: paragraph,
  closes_gates: z.boolean(),
  toxin: paragraph.nullable(),
});

export const hitchhikerSchema = z.strictObject({
  ...described,
  animal: id.nullable(),
  shelves: z.array(z.enum(SHELVES)),
  verdict: said(z.enum(["leave", "watch", "remove"])),
  because: paragraph,
  dangers: z.array(z.enum(["stings", "toxin", "bites", "cuts"])),
});

const effort = z.enum(["eye", "night", "tool"]);
const yesOrNo = z.strictObject({
  ask: text,
  how: text.optional(),
  effort,
  yes: text,
  no: text,
  /** Chance of a yes in a thing whose file says nothing. */
  otherwise: likelihood,
  record: trait.optional(),
});
const oneOf = z.strictObject({
  ask: text,
  how: text.optional(),
  effort,
  options: z.record(trait, text),
});
export const questionsSchema = z.record(trait, z.union([yesOrNo, oneOf]));

export const cluesSchema = z.record(
  trait,
  z.strictObject({ from: z.enum(["record", "asked"]), ask: text, yes: text, no: text, test: text }),
);

export const causeSchema = z.strictObject({
  id,
  name: paragraph,
  ask_first: z.array(effect),
  explains: z.partialRecord(effect, chance),
  clues: z.record(
    trait,
    z.strictObject({ if: likelihood, else: likelihood, unit: z.literal("chance"), ...flagged.shape }),
  ),
  do: lines,
  dont: lines,
  stop: paragraph,
});

export const artefactsSchema = z.record(
  id,
  z.strictObject({
    of: z.enum([
      ...["tan_mg_n_per_l", "no2_mg_per_l", "no3_mg_per_l", "po4_mg_per_l", "salinity_psu"],
      ...["temperature_c", "ph", "alkalinity_dkh", "calcium_mg_per_l", "magnesium_mg_per_l"],
    ] as const),
    shows: z.enum(["high", "low", "step"]),
    says: paragraph,
    speaks_for: z.array(trait),
    check: paragraph,
  }),
);

export const waterlineSchema = z.record(id, said(z.enum(["leaves", "edge"])));

export type GrowthFile = z.infer<typeof growthSchema>;
export type HitchhikerFile = z.infer<typeof hitchhikerSchema>;
export type QuestionsFile = z.infer<typeof questionsSchema>;
export type CluesFile = z.infer<typeof cluesSchema>;
export type CauseFile = z.infer<typeof causeSchema>;
export type ArtefactsFile = z.infer<typeof artefactsSchema>;
export type WaterlineFile = z.infer<typeof waterlineSchema>;
