/**
 * Clocks of a place: how far ahead of UTC they are at an instant, and which instants a wall clock's reading can mean.
 * Rules come from the runtime's own table of zones. Limits: whole minutes, as every zone has had for decades.
 */

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

const known = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat {
  const had = known.get(zone);
  if (had !== undefined) return had;
  const made = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });
  known.set(zone, made);
  return made;
}

/** What a wall clock in that zone shows at an instant, as milliseconds of a calendar without zones. */
function wallClock(at: number, zone: string): number {
  const parts = formatOf(zone).formatToParts(new Date(at));
  const of = (type: Intl.DateTimeFormatPartTypes) => Number(parts.find((part) => part.type === type)?.value);
  return Date.UTC(of("year"), of("month") - 1, of("day"), of("hour"), of("minute"), of("second"));
}

/** Minutes that a zone's clocks are ahead of UTC at an instant. */
export const offsetAt = (at: number, zone: string): number =>
  Math.round((wallClock(at, zone) - at) / MINUTE_MS);

/** The day that it is in a zone at an instant: ISO date. */
export const dayIn = (instant: string, zone: string): string =>
  new Date(wallClock(Date.parse(instant), zone)).toISOString().slice(0, 10);

/** An IANA name that this runtime knows; an offset such as +01:00 is no zone, as it knows no summer. */
export function isZone(text: string): boolean {
  if (!/^[A-Za-z][\w+-]*(?:\/[\w+-]+)*$/.test(text)) return false;
  try {
    formatOf(text);
    return true;
  } catch {
    return false;
  }
}

/**
 * The instant that a wall clock's reading means. Twice there: the first; not there, as clocks went forward: by the offset
 * from before, as calendars take it (RFC 5545, 3.3.5).
 */
export function instantOf(wall: number, zone: string): number {
  const before = offsetAt(wall - 24 * HOUR_MS, zone);
  const after = offsetAt(wall + 24 * HOUR_MS, zone);
  const fits = [before, after].map((minutes) => ({ at: wall - minutes * MINUTE_MS, minutes }));
  const real = fits.filter(({ at, minutes }) => offsetAt(at, zone) === minutes).sort((a, b) => a.at - b.at);
  return (real[0] ?? fits[0]!).at;
}
