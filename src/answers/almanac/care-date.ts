/**
 * One dated piece of care, whoever asks for it: the almanac's own (glass, filter, tests, water change), start-up,
 * arrivals, holiday, waves. Parts other than the almanac give them as `(scene: RecordScene) => readonly CareDate[]`;
 * the almanac joins them, no duty twice. Limits: a duty, not advice: what is wrong today is `Advice` (answers/advice.ts).
 */
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import type { Figure } from "../../engine/types/figure.ts";
import type { Leads } from "../advice.ts";
import type { Sentence } from "../sentence.ts";

/** What sort of work it is; also what a page groups and a calendar files it under. */
export const CARE_KINDS = [
  "glass",
  "filter",
  "test",
  "water_change",
  "top_up",
  "stock",
  "count",
  "righting",
  "order",
  "wave",
  "start_up",
  "arrival",
  "quarantine",
  "medicine",
  "feeding",
  "holiday",
  "look",
] as const;
export type CareKind = (typeof CARE_KINDS)[number];

/** The daybook's own entry that says it is done, its form filled in as far as is known. */
export interface DoneBy {
  readonly kind: EntryKind;
  /** Field of the entry's form -> text, as ENTRY_FIELDS names them: `{ chore: "glass_wiped" }`. */
  readonly fields: Readonly<Record<string, string>>;
}

export interface CareDate {
  /**
   * The same while it is the same duty, whatever its day: `glass`, `test.no3_mg_n_per_l`, `water_change`, `wave.2`,
   * `quarantine.<entry>.end`. A calendar knows the event by it: letters, digits, `.`, `_` and `-` only.
   */
  readonly id: string;
  readonly kind: CareKind;
  /** The day it is due, or first due, in the tank's zone: ISO date, today or later; what is overdue is due today. */
  readonly on: string;
  /** Time of day in the tank's zone, "HH:MM"; null: any time that day. */
  readonly at: string | null;
  /** Comes again every so many days, as far as is known today; null: once. */
  readonly every: number | null;
  /** Last day that it may come again on; null: open. */
  readonly until: string | null;
  /** The condition that must hold, to be looked at before anything is done; null where there is none. A wave has one. */
  readonly gate: Sentence | null;
  /** One sentence, at most 20 words, the verb first. It stands alone as the title of a calendar's event. */
  readonly do: Sentence;
  readonly why: readonly Sentence[];
  readonly byWhen: Sentence;
  readonly wouldChange: Sentence;
  /** Figures that the sentences name, ids by `figureId.care(part, name)` where they are this part's own. */
  readonly figures: readonly Figure[];
  /** What it rests on, the same text while that stays the same: ids of entries, a state in words. */
  readonly restsOn: string;
  /** How doing it is logged; null where nothing is logged. */
  readonly done: DoneBy | null;
  /** The page that shows more of it; null: the almanac alone. */
  readonly leads: Leads | null;
}
