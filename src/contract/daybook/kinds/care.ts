/** Entries that are about what was done or befell: chores, changes, treatments, outages, a move, advice declined. */
import { z } from "zod";
import { entryCommon, heads } from "./common.ts";

export const CHORES = [
  "water_change",
  "glass_wiped",
  "sand_siphoned",
  "sand_stirred",
  "algae_removed",
  "filter_changed",
  "sorbent_renewed",
  "refugium_harvested",
  "fallen_snails_righted",
] as const;
export type Chore = (typeof CHORES)[number];

export const choreBody = z.strictObject({
  ...entryCommon,
  chore: z.enum(CHORES),
  /** As typed: "10 %", "20 L", "half of it"; null where not said. */
  amount_text: z.string().max(60).nullable(),
  /** As read: share of the water, or of what was there; null where not said. */
  share: z.number().min(0).max(1).nullable(),
  /** Of wiping: days since the glass was last clean until it needed it again; null where not said. */
  film_days: z.number().min(0).max(365).nullable(),
});

export const CHANGED = ["feed", "light_hours", "light_strength", "skimmer", "other"] as const;
export type Changed = (typeof CHANGED)[number];

/** From that day on it is so. */
export const changeBody = z.strictObject({
  ...entryCommon,
  changed: z.enum(CHANGED),
  /** As typed: "0.4 g pellet", "8 h", "half the strength". */
  to_text: z.string().max(200),
  /** Feed: g a day as fed; hours a day; strength as a share of before; skimmer 0 or 1; null for other. */
  to: z.number().min(0).max(100_000).nullable(),
  /** Of feed: its kind in the tank file's words. */
  food: z.string().max(60).nullable(),
});

export const treatmentBody = z.strictObject({
  ...entryCommon,
  /** Active ingredient, as typed. */
  substance: z.string().max(200),
  /** Put in; ended: tested gone or taken out. */
  step: z.enum(["started", "ended"]),
});

export const outageBody = z.strictObject({
  ...entryCommon,
  of: z.enum(["power", "pumps", "heater", "lamp", "skimmer"]),
  hours: z.number().min(0).max(2000),
});

/** The tank itself was moved: another place, another zone. */
export const relocationBody = z.strictObject({
  ...entryCommon,
  to_text: z.string().max(200),
  /** IANA zone from that day on; null where it stays. */
  zone: z.string().max(100).nullable(),
});

export const FED_BY = ["nobody", "sitter", "feeder"] as const;
export type FedBy = (typeof FED_BY)[number];
/** Longer away is a matter for somebody who keeps the tank, not for packed portions. */
export const LONGEST_AWAY_DAYS = 42;

/** The keeper is away from home: planned, under way or over. */
export const absenceBody = z.strictObject({
  ...entryCommon,
  /** ISO dates: the day of leaving, and the day of coming back. */
  from: z.iso.date(),
  to: z.iso.date(),
  fed_by: z.enum(FED_BY),
  /** Of a sitter: feeds on every so many days, not on the day of leaving; null where nobody or a feeder feeds. */
  every_days: z.number().int().min(1).max(7).nullable(),
  /** Portions packed for a sitter; null where not said. */
  portions: heads.nullable(),
});

/** Advice that the keeper does not take, and why: it is not brought up again until what it rests on changes. */
export const declineBody = z.strictObject({
  ...entryCommon,
  /** Id of the advice, as answers/advice.ts makes it. */
  advice: z.string().max(200),
  reason: z.string().max(1000),
  /** What the advice rested on when it was declined: it comes back when that has changed. */
  rests_on: z.string().max(4000).optional(),
});
