/** Dates in words: "6 weeks ago", "May 2026", "14 Jun", "Mon 1st of June 2026". */
import { MONTHS } from "./calendar.ts";

/** What was said of a day; the year may be left out. */
export type Parts = { readonly year: number | null; readonly month: number; readonly day: number };

const UNIT_DAYS = { day: 1, week: 7, month: 365.25 / 12, year: 365.25 };
const COUNT_WORDS: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
};

const NEAR: ReadonlyMap<string, number> = new Map([
  ["today", 0],
  ["yesterday", -1],
  ["tomorrow", 1],
]);

/** Days from today: "yesterday", "6 weeks ago". */
export function daysAway(typed: string): number | null {
  const near = NEAR.get(typed);
  if (near !== undefined) return near;
  const ago = /^(?:about |some )?(\d{1,4}|an?|one|two|three|four|five|six) (day|week|month|year)s? ago$/.exec(
    typed,
  );
  if (ago === null) return null;
  const count = COUNT_WORDS[ago[1] ?? ""] ?? Number(ago[1]);
  return -Math.round(count * UNIT_DAYS[ago[2] as keyof typeof UNIT_DAYS]);
}

/** "May 2026", "2026-05": year and month. */
export function monthOnly(typed: string): [number, number] | null {
  const [, figures, named] = /^(\d{4}-\d{1,2})$|^([a-z]{3,9}\.? \d{4})$/.exec(typed) ?? [];
  if (figures !== undefined) {
    const [year = 0, month = 0] = figures.split("-").map(Number);
    return month >= 1 && month <= 12 && year >= 1000 ? [year, month] : null;
  }
  const parts = named === undefined ? null : namedMonth(`1 ${named}`);
  return parts === null || parts.year === null ? null : [parts.year, parts.month];
}

export function namedMonth(typed: string): Parts | null {
  const words = typed
    .replace(/^(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?[\s,.]+/, "")
    .replace(/\bof\b/g, " ")
    .replace(/(\d)(?:st|nd|rd|th)\b/, "$1")
    .replace(/[.,]/g, " ")
    .trim()
    .split(/[\s-]+/);
  const names = words.filter((word) => /^[a-z]/.test(word));
  const [name = ""] = names;
  const month =
    name.length < 3
      ? -1
      : MONTHS.findIndex((full) => full.toLowerCase().startsWith(name.replace("sept", "sep")));
  const figures = words.filter((word) => /^\d+$/.test(word)).map(Number);
  if (names.length !== 1 || month < 0 || figures.length + 1 !== words.length || figures.length > 2)
    return null;
  const year = figures.find((n) => n > 31) ?? null;
  const day = figures.find((n) => n <= 31);
  if (day === undefined || (figures.length === 2 && year === null)) return null;
  return { year, month: month + 1, day };
}
