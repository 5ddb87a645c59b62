/** Dates that come again, on the days that calendars were given: page, API and calendar speak of the same. */
import type { Almanac } from "../../answers/almanac/almanac.ts";
import type { LoadedTank, PageContext } from "../route.ts";
import { issueNow, placeOf } from "./calendar-of.ts";

export async function steadied(
  almanac: Almanac,
  tank: LoadedTank,
  { store, now }: Pick<PageContext, "store" | "now">,
): Promise<Almanac> {
  const { events } = await issueNow(store, placeOf(tank), almanac, now);
  const given = new Map(events.map((one) => [one.care, one.event.on]));
  const dates = almanac.dates.map((one) =>
    one.every === null ? { ...one, on: given.get(one.id) ?? one.on } : one,
  );
  return { ...almanac, dates: dates.toSorted((a, b) => a.on.localeCompare(b.on)) };
}
