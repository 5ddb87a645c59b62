/**
 * How much a tank needs somebody: all that is asked for in it, the most urgent and weightiest first. Two tanks are
 * compared by their first, then by their second, and so on: nothing is added up, so nothing that is well outweighs a
 * danger, and whatever gets worse or is added can only move a tank up. A shorter list that is otherwise alike is less.
 */
import { type Advice, type AdviceUrgency, URGENCY_ORDER } from "../advice.ts";
import type { DeclinedAdvice } from "../bench/declined.ts";
import { isDanger } from "../bench/declined.ts";

export interface Asked {
  readonly urgency: AdviceUrgency;
  readonly weight: number;
}
export type Need = readonly Asked[];

/** A danger that was declined still counts for a visit: it can be put off for what is known, not away. */
const PUT_OFF = { urgency: "this_week", weight: 90 } as const;

export function needOf(standing: readonly Advice[], declined: readonly DeclinedAdvice[]): Need {
  const asked: Asked[] = [
    ...standing.filter(({ weight }) => weight > 0).map(({ urgency, weight }) => ({ urgency, weight })),
    ...declined.flatMap(({ advice }) => (isDanger(advice) ? [PUT_OFF] : [])),
  ];
  return asked.sort(compareAsked);
}

/** Below nought where `a` needs somebody more. */
export function compareNeed(a: Need, b: Need): number {
  for (let i = 0; i < Math.max(a.length, b.length); i += 1) {
    const [one, other] = [a[i], b[i]];
    if (one === undefined) return 1;
    if (other === undefined) return -1;
    const order = compareAsked(one, other);
    if (order !== 0) return order;
  }
  return 0;
}

const compareAsked = (a: Asked, b: Asked): number =>
  URGENCY_ORDER.indexOf(a.urgency) - URGENCY_ORDER.indexOf(b.urgency) || b.weight - a.weight;
