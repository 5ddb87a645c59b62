/**
 * A tank's duties as a calendar file, and the memory of what was given: written only where something changed, so that the
 * same file is given as the same bytes.
 */
import { createHash } from "node:crypto";
import type { Almanac } from "../../answers/almanac/almanac.ts";
import {
  calendarEventOf,
  type GivenContent,
  type GivenEvent,
  type Issue,
  issueOf,
} from "../../answers/almanac/issue.ts";
import { calendarFileText } from "../../contract/calendar/file.ts";
import type { Desk, GivenRow, Json, Store } from "../../store/store.ts";
import type { LoadedTank } from "../route.ts";

/** A feed is worth asking for so often. */
const REFRESH_HOURS = 6;

/** An event's name for ever: tells nothing of the tank to who has the file. */
export const uidOf =
  (tank: string) =>
  (care: string): string =>
    `${createHash("sha256").update(`${tank}\n${care}`).digest("hex").slice(0, 32)}@grazewell.invalid`;

export interface Place {
  readonly id: string;
  readonly zone: string | null;
}

const asGiven = (row: GivenRow): GivenEvent => ({ ...row, event: row.event as unknown as GivenContent });
const asRow = (one: GivenEvent): GivenRow => ({ ...one, event: one.event as unknown as Json });

/** What the calendar would be given now; nothing is written. */
export async function issueNow(
  desk: Pick<Desk, "givenEvents">,
  { id, zone }: Place,
  { dates, today }: Almanac,
  now: string,
): Promise<Issue> {
  return issueOf(dates, (await desk.givenEvents(id)).map(asGiven), { today, now, zone });
}

export async function calendarOf(
  store: Store,
  place: Place,
  almanac: Almanac,
  { now, feed }: { readonly now: string; readonly feed: boolean },
): Promise<string> {
  let issue = await issueNow(store, place, almanac, now);
  if (issue.fresh.length > 0)
    issue = await store.together(async (desk) => {
      const latest = await issueNow(desk, place, almanac, now);
      await desk.giveEvents(place.id, latest.fresh.map(asRow));
      return latest;
    });
  return textOf("Grazewell almanac", issue.events, uidOf(place.id), feed);
}

export const textOf = (
  name: string,
  events: readonly GivenEvent[],
  uid: (care: string) => string,
  feed: boolean,
): string =>
  calendarFileText({
    name,
    events: events.map((one) => calendarEventOf(one, uid)),
    refreshHours: feed ? REFRESH_HOURS : null,
  });

export const placeOf = ({ row, zone }: Pick<LoadedTank, "row" | "zone">): Place => ({ id: row.id, zone });
