/**
 * The round: all tanks, the neediest first; each with why now, what to do, by when, and how old its data are. What is
 * shown of a tank is the first of its bench's list, judged from record and facts alone, beside what the engine, trends,
 * heads and growths asked for when they last had a word. Pure: tanks and today are handed in.
 */
import { daysBetween } from "../../contract/quantity/calendar.ts";
import type { Declined } from "../../engine/types/record.ts";
import type { Advice, AdviceUrgency } from "../advice.ts";
import { agreeing, compareAdvice } from "../bench/agreeing.ts";
import { type DeclinedAdvice, sortDeclined } from "../bench/declined.ts";
import type { KnownOfTank } from "../bench/known.ts";
import { quickAdvice } from "../bench/next.ts";
import { compareNeed, type Need, needOf } from "./need.ts";

/** What is held of a tank between two rounds. */
export interface RoundSummary {
  readonly quick: readonly Advice[];
  readonly declines: readonly Declined[];
  /** Day of the latest entry, ISO date; null where there is none. */
  readonly lastOn: string | null;
}

export interface RoundTank extends RoundSummary {
  readonly id: string;
  readonly name: string;
  readonly keeper: string;
  readonly demonstration: boolean;
  /** What the engine asked for when it last had a word, and trends, heads and growths; empty where they had none. */
  readonly engine: readonly Advice[];
  /** Trends, heads and growths are not read yet as the tank stands now. */
  readonly stillReading?: boolean;
}

export interface RoundRow {
  readonly id: string;
  readonly name: string;
  readonly keeper: string;
  readonly demonstration: boolean;
  /** Null where nothing is due. */
  readonly first: Advice | null;
  /** How many more matters there are. */
  readonly more: number;
  /** Dangers that were declined: they stay listed, with the reason. */
  readonly declined: readonly DeclinedAdvice[];
  readonly need: Need;
  /** Days since the latest entry; null where there is none. */
  readonly dataDays: number | null;
  readonly stillReading: boolean;
}

export const summaryOf = (known: KnownOfTank): RoundSummary => {
  const days = [...known.record.observations, ...known.record.happenings].map(({ on }) => on).sort();
  return { quick: quickAdvice(known), declines: known.record.declined, lastOn: days.at(-1) ?? null };
};

export function rowOf(tank: RoundTank, today: string): RoundRow {
  const { id, name, keeper, demonstration, quick, engine, declines, lastOn, stillReading = false } = tank;
  const all = [...quick, ...engine];
  const sorted = sortDeclined(agreeing(all, null), declines);
  const standing = sorted.standing.toSorted(compareAdvice);
  // Of all that is asked for: what a worse matter silences in the list still counts for the tank's place.
  const asked = sortDeclined(all, declines);
  const need = needOf(asked.standing, asked.declined);
  return {
    ...{ id, name, keeper, demonstration, need, stillReading },
    first: standing[0] ?? null,
    more: Math.max(0, standing.length - 1),
    declined: sorted.declined.filter(({ advice }) => advice.weight >= 90),
    dataDays: lastOn === null ? null : Math.max(0, daysBetween(lastOn, today)),
  };
}

export const ROUND_SORTS = ["need", "name", "stale"] as const;
export type RoundSort = (typeof ROUND_SORTS)[number];

export interface RoundFilter {
  readonly keeper: string | null;
  readonly urgency: AdviceUrgency | "nothing_due" | null;
  /** Each has to be in the tank's, the keeper's or the advice's words. */
  readonly words: string;
  readonly sort: RoundSort;
}
export const NO_FILTER: RoundFilter = { keeper: null, urgency: null, words: "", sort: "need" };

export const urgencyOf = ({ first, need }: RoundRow): AdviceUrgency | "nothing_due" =>
  first?.urgency ?? need[0]?.urgency ?? "nothing_due";

const byName = (a: RoundRow, b: RoundRow): number =>
  a.name.localeCompare(b.name, "en") || a.id.localeCompare(b.id);
const ORDER: Readonly<Record<RoundSort, (a: RoundRow, b: RoundRow) => number>> = {
  need: (a, b) => compareNeed(a.need, b.need) || byName(a, b),
  name: byName,
  // Without any data is the stalest.
  stale: (a, b) =>
    (b.dataDays ?? Number.MAX_SAFE_INTEGER) - (a.dataDays ?? Number.MAX_SAFE_INTEGER) || byName(a, b),
};

/** `textOf`: what words are looked for in. */
export function filtered(
  rows: readonly RoundRow[],
  { keeper, urgency, words, sort }: RoundFilter,
  textOf: (row: RoundRow) => string,
): readonly RoundRow[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return rows
    .filter(
      (row) =>
        (keeper === null || row.keeper === keeper) &&
        (urgency === null || urgencyOf(row) === urgency) &&
        (wanted.length === 0 || wanted.every((word) => textOf(row).toLowerCase().includes(word))),
    )
    .toSorted(ORDER[sort]);
}
