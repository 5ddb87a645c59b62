/** Days of the calendar as ISO dates, by arithmetic alone: no clock, no zone. */

export const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

const DAY_MS = 86_400_000;

export function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** `2026-06-15`; null where there is no such day. */
export function isoDate(year: number, month: number, day: number): string | null {
  if (year < 1000 || year > 9999 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month))
    return null;
  return `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

const at = (iso: string): number => Date.parse(`${iso}T00:00:00Z`);

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export const daysBetween = (from: string, to: string): number => Math.round((at(to) - at(from)) / DAY_MS);

export const addDays = (iso: string, days: number): string =>
  new Date(at(iso) + days * DAY_MS).toISOString().slice(0, 10);

/** `15 June 2026`. */
export function inWordsDate(iso: string): string {
  const [year = "", month = "", day = ""] = iso.split("-");
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? ""} ${year}`;
}
