/**
 * Advice that the keeper did not take. It is not brought up again until what it rests on has changed. A danger can be
 * declined for what is known now, never for good: a new reading brings it back, and meanwhile it stays listed.
 */
import type { Declined } from "../../engine/types/record.ts";
import type { Advice } from "../advice.ts";
import { plain } from "../sentence.ts";

export interface DeclinedAdvice {
  readonly advice: Advice;
  readonly reason: string;
  /** ISO date. */
  readonly on: string;
  /** Entry of the daybook: taken away, the advice stands again. */
  readonly entry: string;
}

/** Longest text that is kept of it. */
const MOST_LETTERS = 4000;

/** What a piece of advice rests on, as it is kept when it is declined. */
export const restsOn = ({ restsOn: said, urgency, do: what }: Advice): string =>
  (said ?? `${urgency}: ${plain(what)}`).slice(0, MOST_LETTERS);

/** Declining keeps a thing of this weight in the list, and a tank with it in the round. */
export const isDanger = ({ urgency, weight }: Advice): boolean => urgency === "today" && weight >= 90;

export interface Sorted {
  readonly standing: readonly Advice[];
  readonly declined: readonly DeclinedAdvice[];
}

/** The latest word on each counts. One declined without what it rested on is brought up again. */
export function sortDeclined(all: readonly Advice[], declines: readonly Declined[]): Sorted {
  const latest = new Map(declines.map((one) => [one.advice, one]));
  const standing: Advice[] = [];
  const declined: DeclinedAdvice[] = [];
  for (const advice of all) {
    const word = latest.get(advice.id);
    if (word === undefined || word.restsOn !== restsOn(advice)) standing.push(advice);
    else declined.push({ advice, reason: word.reason, on: word.on, entry: word.entry });
  }
  return { standing, declined };
}
