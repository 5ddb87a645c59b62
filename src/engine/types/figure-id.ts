/**
 * Names of all figures, in one place: outputs name them, workings answer to them. Dotted; an animal stands under its
 * catalogue id, a shelf, fact or limit under its wire name. Limits: names only, whether a tank has a figure is not said.
 */
import type { ShelfId } from "./shelf.ts";

export const figureId = {
  supply: (shelf: ShelfId) => `larder.${shelf}.supply`,
  pessimistic: (shelf: ShelfId) => `larder.${shelf}.pessimistic`,
  wanted: (shelf: ShelfId) => `larder.${shelf}.wanted`,
  balance: (shelf: ShelfId) => `larder.${shelf}.balance`,
  total: () => "larder.total",
  mouthNeed: (animal: string) => `larder.mouth.${animal}.need`,
  mouthMost: (animal: string) => `larder.mouth.${animal}.most`,
  mouthShelf: (animal: string, shelf: ShelfId) => `larder.mouth.${animal}.${shelf}`,

  count: (animal: string) => `plan.${animal}.count`,
  spareShells: (animal: string) => `plan.${animal}.spare_shells`,
  waveCount: (wave: number, animal: string) => `plan.wave.${wave}.${animal}.count`,
  waveShells: (wave: number, animal: string) => `plan.wave.${wave}.${animal}.spare_shells`,
  waveFrom: (wave: number) => `plan.wave.${wave}.from`,
  plannedShare: (wave: number) => `plan.wave.${wave}.planned_share`,
  waveShelf: (wave: number, shelf: ShelfId, which: "pessimistic" | "central" | "eaten") =>
    `plan.wave.${wave}.${shelf}.${which}`,
  offered: () => "plan.offered",
  lookAgain: () => "plan.look_again",
  alone: (animal: string) => `plan.${animal}.alone`,
  mend: (animal: string) => `plan.${animal}.cut`,
  handWork: (shelf: ShelfId) => `hand_work.${shelf}`,
  fedByHand: (animal: string) => `fed_by_hand.${animal}`,
  dryFeed: (animal: string) => `fed_by_hand.${animal}.dry_feed`,
  wishCost: (animal: string) => `wish.${animal}.cost`,
  wouldChange: (fact: string) => `would_change.${fact}`,
  limitCost: (limit: string) => `limit_cost.${limit}`,
  checkAlive: (animal: string) => `check.${animal}.alive`,
  checkAged: (animal: string) => `check.${animal}.aged`,
  checkCondition: (animal: string) => `check.${animal}.condition`,

  chance: (limit: string) => `ahead.${limit}.chance`,
  limit: (limit: string) => `ahead.${limit}.limit`,
  quantity: (quantity: string) => `ahead.${quantity}.value`,
  dawnOxygen: () => "ahead.dawn_oxygen",
  kind: (animal: string, what: "heads" | "alive" | "aged" | "starves" | "condition") =>
    `ahead.${animal}.${what}`,

  /** `what`: slope, today, usual, rising, step, change.N, limit.SIDE, chance.SIDE. */
  trend: (quantity: string, what: string) => `trend.${quantity}.${what}`,
  /** `what`: in, out, stays, freed, algae, dissolved, stays_hours or one way by its name. */
  flow: (element: "N" | "P", what: string) => `trend.flow.${element}.${what}`,

  heads: (
    animal: string,
    what:
      | "came"
      | "now"
      | "by_age"
      | "weeks_4"
      | "weeks_12"
      | "weeks_26"
      | "loss"
      | "seen"
      | "known"
      | "ratio"
      | "fed"
      | "hand_food"
      | "fewer"
      | "top_up",
  ) => `heads.${animal}.${what}`,

  /** A quantity that the daybook has taught of. */
  learned: (quantity: string) => `learned.${quantity}`,
  /** What a group of observations had to do with all that was learned. */
  learnedShare: (group: string) => `learned.share.${group}`,

  /** Chance that a cause is at work behind a growth, a sign or a loss. */
  growthCause: (effect: string, cause: string) => `growths.${effect}.${cause}.chance`,
  unfoundRise: () => "growths.unfound_death.rise",

  tank: (field: string) => `tank.${field}`,
  reading: (quantity: string) => `tank.reading.${quantity}`,
  present: (animal: string) => `tank.present.${animal}`,
  planned: (animal: string) => `tank.planned.${animal}`,

  /** A number of a sum's answer (answers/sums). */
  sum: (sum: string, name: string) => `sum.${sum}.${name}`,
  /** A number of a part of care: start-up, arrivals, medicines, feeding, holiday, weeks, almanac, orders. */
  care: (part: string, name: string) => `care.${part}.${name}`,

  need: (animal: string) => `animal.${animal}.need`,
  animal: (animal: string, fact: string) => `animal.${animal}.${fact}`,
} as const;
