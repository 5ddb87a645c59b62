/**
 * Names whose scores readings can move: those of the balance and of what a tank is and gets, and the daybook's own. What
 * only sizes the larder, or is overruled by a fact, is left to the prior.
 */
import { drawnNames } from "../larder/members.ts";
import { SIZING_SYMBOLS } from "../larder/sizing.ts";
import { OWN_NAMES } from "../types/learned.ts";

/** Of the larder's sizing, those that a run begins with. */
const BEGINS_WITH: readonly string[] = [
  ...["tanUsual", "no3Usual", "po4Usual", "cropGlass", "cropRock", "colonised", "sorbentRate"],
];
/** A fact stands for it (uneatenShare), no reading moves it, or nothing in the run depends on it. */
const LEFT_OUT: readonly string[] = ["u0", "kSorb", "capSorb", "handFedMgCPerDay", "ageDays"];
/** How far today's water lies off the run: worked out at the end, not learned as a score. */
export const TODAY_NAMES = ["tanToday", "no2Today", "no3Today", "po4Today"] as const;

export function learnableNames(): string[] {
  const sizing = new Set<string>(SIZING_SYMBOLS);
  const today = new Set<string>(TODAY_NAMES);
  return [
    ...drawnNames().filter(
      (name) => !LEFT_OUT.includes(name) && (!sizing.has(name) || BEGINS_WITH.includes(name)),
    ),
    ...OWN_NAMES.filter((name) => !today.has(name)),
  ];
}
