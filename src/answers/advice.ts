/**
 * One piece of advice, whoever gives it: dangers, trends, heads, growths, the plan. Four parts: do, why, by when, what
 * would change it; waiting stands beside acting in the same weight. A list of them is ranked in bench/next.ts.
 */

import type { Sentence } from "./sentence.ts";
import type { CrisisId } from "./wrong/list-ids.ts";

export const URGENCY_ORDER = ["today", "this_week", "next_visit", "cannot_tell"] as const;
export type AdviceUrgency = (typeof URGENCY_ORDER)[number];

/** Where an action leads; the page knows the address. */
export type Leads =
  | "wrong"
  /** One list of "Something is wrong": somebody under stress is not asked which. */
  | `wrong:${CrisisId}`
  | "waves"
  | "readings"
  | "larder"
  | "questions"
  | "ahead"
  | "daybook"
  | "trends"
  | "heads"
  | "growths"
  | "errands"
  | "learned"
  | "start-up"
  | "arrivals"
  | "holiday";

export interface Advice {
  /**
   * What it is about, the same from day to day while it stays the same advice: `danger.tan_mg_n_per_l`, `wave.2`,
   * `growth.dinoflagellates`, `heads.trochus-snail.short`. Declining goes by it.
   */
  readonly id: string;
  readonly urgency: AdviceUrgency;
  /** Among those of one urgency the weightier goes first; 0 to 100. A danger to life in the tank is 90 and more. */
  readonly weight: number;
  readonly about:
    | "danger"
    | "trouble"
    | "medicine"
    | "wave"
    | "nothing_yet"
    | "hungry"
    | "hand_work"
    | "missing"
    | "trend"
    | "growth"
    | "sign"
    | "heads"
    | "top_up"
    | "way_down"
    | "silence"
    | "start_up"
    | "arrival"
    | "absence";
  /** One sentence, at most 20 words, the verb first. */
  readonly do: Sentence;
  readonly why: readonly Sentence[];
  readonly byWhen: Sentence;
  /** ISO date it is due by; null where none can be said. */
  readonly by: string | null;
  readonly wouldChange: Sentence;
  /**
   * What it rests on, the same text while that stays the same (ids of entries, a state in words): once declined, it is
   * brought up again when this changes. Without it, the urgency and the words of `do` are taken.
   */
  readonly restsOn?: string;
  readonly act: { readonly words: string; readonly leads: Leads };
  /** In the same weight; what waiting means here. */
  readonly wait: { readonly words: string; readonly leads: Leads };
}
