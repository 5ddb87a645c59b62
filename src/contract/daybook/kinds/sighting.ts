/**
 * Something seen. A growth is scored 0 to 4 against worded anchors (growth-anchors.ts); a sign is counted, and keeps how
 * the lights stood, because a snail at the waterline by night says other things than one by day.
 */
import { z } from "zod";
import { GROWTHS } from "../../../engine/types/tank.ts";
import { entryCommon, heads, namedAnimal } from "./common.ts";

/** Signs that are no growth. */
export const SIGNS = [
  "waterline_snails",
  "fallen_snails",
  "empty_shells",
  "cast_shell",
  "hiding",
  "ill_animals",
  "white_dots",
  "hitchhiker",
  "cloudy_water",
] as const;
export type Sign = (typeof SIGNS)[number];

export const growthBody = z.strictObject({
  ...entryCommon,
  growth: z.enum(GROWTHS),
  /** 0 none, 1 trace, 2 thin, 3 thick, 4 covered: the anchors say what that is for each growth. */
  score: z.number().int().min(0).max(4),
  /** As typed: "2", "30 %", "all over". */
  score_text: z.string().max(60).optional(),
  /** Traits by which growths are told apart (facts/growths), by id, each seen or not. */
  traits: z.record(z.string().max(60), z.boolean()),
});

export const signBody = z.strictObject({
  ...entryCommon,
  sign: z.enum(SIGNS),
  /** Null where no animal is meant or the kind is not known. */
  animal_text: namedAnimal.animal_text.nullable(),
  animal: namedAnimal.animal,
  count: heads.nullable(),
  /** How many kinds were seen so, where several. */
  kinds_seen: z.number().int().min(1).max(100).nullable(),
  /** Hours since the lamps went out; negative: before; null where not said. */
  hours_from_lights_out: z.number().min(-24).max(24).nullable(),
  traits: z.record(z.string().max(60), z.boolean()),
});
