/**
 * Days on which something was kept that goes well, and what they settle. An event (a loss, a sign, an outage) stands
 * until that many such days have come after it: time alone settles nothing, and neither does a further bad sign. So no
 * input that gets worse can take an older worry away. Days and numbers are judgement: docs/model/next.md.
 */
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import type { Observation } from "../../engine/types/record.ts";
import { headsOf, type KnownOfTank } from "./known.ts";

/** A growth above this score is no good news. */
const MOST_CALM_SCORE = 2;
/** Growths that belong in a tank that is fed and lit. */
const USUAL_GROWTHS: ReadonlySet<string> = new Set([
  "film_glass",
  "film_rock",
  "film_sand",
  "detritus_sand",
  "detritus_crevice",
]);

export function isCalm(one: Observation, known: KnownOfTank): boolean {
  switch (one.kind) {
    case "reading":
      return one.flag === null;
    case "heads": {
      const expected = headsOf(known, one.animal);
      return expected === null ? one.seen > 0 : 2 * one.seen >= expected;
    }
    case "growth":
      return (
        one.growth !== "dinoflagellates" && (USUAL_GROWTHS.has(one.growth) || one.score <= MOST_CALM_SCORE)
      );
    case "film_back":
      return true;
    case "sign":
      return false;
  }
}

/** Distinct days, oldest first. */
export function calmDays(known: KnownOfTank): readonly string[] {
  const { observations, happenings } = known.record;
  const days = [
    ...observations.filter((one) => isCalm(one, known)).map(({ on }) => on),
    ...happenings
      .filter(({ kind }) => kind === "chore" || kind === "changed" || kind === "added")
      .map(({ on }) => on),
  ];
  return [...new Set(days)].sort();
}

/** `needed` calm days, the first of them at least `after` days later. */
export function isSettled(
  on: string,
  calm: readonly string[],
  { after, needed }: { readonly after: number; readonly needed: number },
): boolean {
  const from = addDays(on, after);
  return calm.filter((day) => day >= from).length >= needed;
}

/** Days since somebody last kept something that shows the tank well; null where nobody ever did. */
export function daysQuiet(known: KnownOfTank, calm: readonly string[]): number | null {
  const told = known.answeredOn === null ? [] : [known.answeredOn];
  const last = [...calm, ...told].sort().at(-1);
  return last === undefined ? null : Math.max(0, daysBetween(last, known.today));
}
