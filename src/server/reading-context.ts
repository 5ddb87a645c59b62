/** What the reader of readings must know of a tank: the keeper's habits, the day, and what lives in it since when. */
import type { ReadingContext } from "../contract/daybook/read-reading.ts";
import { addDays } from "../contract/quantity/calendar.ts";
import { preferencesOf } from "../contract/tank-file/preferences-of.ts";
import type { LoadedTank } from "./route.ts";

export function readingContextOf(
  { document, facts }: Pick<LoadedTank, "document" | "facts">,
  { today, now }: { readonly today: string; readonly now: string },
): ReadingContext {
  return {
    preferences: preferencesOf(document.preferences),
    today,
    now,
    // A tank file names no zone yet: a time without its offset is kept as its day.
    zone: null,
    // Nobody said that nothing lives in it: a dangerous reading is then told as one.
    stocked:
      facts.present.length > 0 ||
      (document.fish?.length ?? 0) > 0 ||
      (document.animals_present === undefined && document.fish === undefined),
    notBefore: facts.assumed.includes("ageDays") ? null : addDays(facts.asOf, -facts.ageDays.central),
  };
}
