/** What the record says of growths: film that is gone, film that comes back slower, growths that come back. */

import { daysBetween } from "../stocking/suitability.ts";
import { SHELF_OF_GROWTH } from "../types/growth-shelf.ts";
import type { TankRecord } from "../types/record.ts";
import type { ShelfId } from "../types/shelf.ts";
import type { Growth } from "../types/tank.ts";

/** Days of bare glass, by at least two looks, before it counts. */
const BARE_DAYS = 7;
/** A look older than this says nothing of now. */
const STALE_DAYS = 14;

/** Days for which the glass has been seen bare, look after look; null where it is not, or nobody looked. */
export function bareGlassDays(record: TankRecord): number | null {
  const looks = record.observations.flatMap((one) =>
    one.kind === "growth" && one.growth === "film_glass" ? [one] : [],
  );
  let first: string | null = null;
  for (const look of looks.toReversed()) {
    if (look.score > 0) break;
    first = look.on;
  }
  const last = looks.at(-1);
  if (first === null || last === undefined) return null;
  // A wiped pane is bare for another reason.
  const wiped = record.happenings.some(
    (one) => one.kind === "chore" && one.chore === "glass_wiped" && one.on >= first,
  );
  if (wiped || daysBetween(last.on, record.asOf) > STALE_DAYS) return null;
  const days = daysBetween(first, last.on);
  return days >= BARE_DAYS ? days : null;
}

export interface FilmSlower {
  readonly days: number;
  readonly usualDays: number;
  readonly on: string;
}

/** The film's last return took at least twice as long as it usually does in this tank, by three times or more before. */
export function filmSlower(record: TankRecord): FilmSlower | null {
  const returns = record.observations.flatMap((one) => (one.kind === "film_back" ? [one] : []));
  const last = returns.at(-1);
  const before = returns.slice(0, -1).map(({ days }) => days);
  if (last === undefined || before.length < 3 || daysBetween(last.on, record.asOf) > 2 * STALE_DAYS)
    return null;
  const sorted = before.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const usualDays = sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
  return usualDays > 0 && last.days >= 2 * usualDays ? { days: last.days, usualDays, on: last.on } : null;
}

/** Growths that are thick now (3 or 4) and were less before. */
export function growthsBack(
  record: TankRecord,
): { readonly growth: Growth; readonly score: number; readonly on: string }[] {
  const byGrowth = new Map<Growth, { score: number; on: string }[]>();
  for (const one of record.observations) {
    if (one.kind === "growth") byGrowth.set(one.growth, [...(byGrowth.get(one.growth) ?? []), one]);
  }
  return [...byGrowth].flatMap(([growth, looks]) => {
    const last = looks.at(-1)!;
    const less = looks.slice(0, -1).some(({ score }) => score < last.score);
    const fresh = daysBetween(last.on, record.asOf) <= STALE_DAYS;
    return last.score >= 3 && less && fresh ? [{ growth, score: last.score, on: last.on }] : [];
  });
}

/** Shelves whose growth is thick again. Cyanobacteria and dinoflagellates are nobody's shelf. */
export const shelvesBack = (growths: ReturnType<typeof growthsBack>): ReadonlySet<ShelfId> =>
  new Set(growths.flatMap(({ growth }) => SHELF_OF_GROWTH[growth] ?? []));
