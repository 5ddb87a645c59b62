/**
 * A day as keepers write it: 2026-06-14, 14 Jun, June 14 2026, today, 03/04/2026. Day and month are never
 * guessed: the order comes from the keeper's preference, or from the figures, or is asked for.
 */
import { addDays, daysInMonth, inWordsDate, isoDate, MONTHS } from "./calendar.ts";
import { daysAway, monthOnly, namedMonth, type Parts } from "./date-words.ts";
import { asked, isKept, kept, type MessageKind, type NotKept, type Outcome, refused } from "./outcome.ts";
import { tidy } from "./parse.ts";
import type { Preferences } from "./preferences.ts";
import { shown } from "./show.ts";

export interface DateContext {
  readonly preferences: Preferences;
  readonly label?: string;
  /** Today where the tank stands, ISO date. */
  readonly today: string;
  /** What a date after today means: `planned` (kept, said so), or `refuse` for what has been seen or measured. */
  readonly future: "planned" | "refuse";
  /** The tank's first day; nothing in it happened before. Null where unknown. */
  readonly notBefore?: string | null;
}

const EARLIEST_YEAR = 1970;
/** Day 0 of the spreadsheets' count, with their leap day of 1900 that never was. */
const SPREADSHEET_EPOCH = "1899-12-30";

export function readDate(text: string, context: DateContext): Outcome<string> {
  const label = context.label ?? "Date";
  const original = { text, unit: null };
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  const no = (kind: MessageKind, words: string, fix?: string): NotKept =>
    refused(original, say(kind, words), fix === undefined ? [] : [{ label: inWordsDate(fix), text: fix }]);
  const typed = text.length > 100 ? "?" : tidy(text).toLowerCase();
  if (typed === "") {
    return refused(original, {
      kind: "MISSING",
      text: `${label}: nothing entered. Enter a date such as ${context.today}`,
    });
  }
  const away = daysAway(typed);
  if (away !== null) return judge(addDays(context.today, away), true);
  const month = monthOnly(typed);
  if (month !== null) {
    const days = [1, 15, daysInMonth(...month)].flatMap((day) => isoDate(...month, day) ?? []);
    return offer(days, "FORMAT", () => "which day? The middle of the month will do");
  }
  if (/^\d{5}$/.test(typed) && Number(typed) > 20_000 && Number(typed) < 80_000) {
    const day = addDays(SPREADSHEET_EPOCH, Number(typed));
    const words = `looks like a spreadsheet date: ${inWordsDate(day)}. Read it so?`;
    return asked(original, say("FORMAT", words), [{ label: inWordsDate(day), text: day }]);
  }
  const read = partsOf(typed, context);
  if (read === null)
    return no("FORMAT", `enter a date such as ${context.today} or ${shortDate(context.today)}`);
  const { ways, rewritten } = read;
  const possible = [...new Set(ways.flatMap((parts) => dayOf(parts, context.today) ?? []))];
  const [only, ...others] = possible;
  if (only === undefined) return no("FORMAT", noSuchDay(ways));
  if (others.length === 0) return judge(only, rewritten);
  return offer(possible, "AMBIG", (labels) => `${labels.join(" or ")}?`);

  /** Asks which of some days was meant; those that could not be kept are not on offer. */
  function offer(
    days: readonly string[],
    kind: MessageKind,
    words: (labels: string[]) => string,
  ): Outcome<string> {
    const choices = days
      .filter((day) => isKept(judge(day, false)))
      .map((day) => ({ label: inWordsDate(day), text: day }));
    const [first = context.today] = days;
    return choices.length === 0
      ? judge(first, true)
      : asked(original, say(kind, words(choices.map(({ label }) => label))), choices);
  }

  function judge(day: string, echo: boolean): Outcome<string> {
    const year = Number(day.slice(0, 4));
    if (year < EARLIEST_YEAR) {
      const nearby = isoDate(year + 100, Number(day.slice(5, 7)), Number(day.slice(8)));
      const fix = nearby !== null && nearby <= context.today ? nearby : undefined;
      const guess = fix === undefined ? "" : `. Did you mean ${fix.slice(0, 4)}?`;
      return no("RANGE", `must be 1970 or later${guess}`, fix);
    }
    if (day > context.today) {
      if (context.future === "refuse") {
        return no("FUTURE", `can't be after today, ${inWordsDate(context.today)}. Plan it instead?`);
      }
      return kept(echo ? "convert" : "accept", day, original, say("ECHO", `planned for ${inWordsDate(day)}`));
    }
    if (context.notBefore != null && day < context.notBefore) {
      return no("CONFLICT", `before the tank's first day, ${inWordsDate(context.notBefore)}`);
    }
    return echo
      ? kept("convert", day, original, say("ECHO", `read as ${inWordsDate(day)}`))
      : kept("accept", day, original);
  }
}

function partsOf(typed: string, { preferences }: DateContext): { ways: Parts[]; rewritten: boolean } | null {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(typed);
  if (iso !== null) {
    const [, year, month, day] = iso.map(Number);
    return {
      ways: [{ year: year ?? 0, month: month ?? 0, day: day ?? 0 }],
      rewritten: !/^\d{4}-\d\d-\d\d$/.test(typed),
    };
  }
  const named = namedMonth(typed);
  if (named !== null) return { ways: [named], rewritten: true };
  const numeric = /^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4})$/.exec(typed);
  if (numeric === null) return null;
  const [, first = 0, second = 0, year = 0] = numeric.map(Number);
  const dmy: Parts = { year, month: second, day: first };
  const mdy: Parts = { year, month: first, day: second };
  const order = preferences.dateOrder;
  return { ways: order === "dmy" ? [dmy] : order === "mdy" ? [mdy] : [dmy, mdy], rewritten: true };
}

/** A day without a year is the nearest such day that is not ahead, or the next one within a month. */
function dayOf({ year, month, day }: Parts, today: string): string | null {
  if (year !== null) return isoDate(year, month, day);
  const thisYear = Number(today.slice(0, 4));
  const here = isoDate(thisYear, month, day);
  return here !== null && here <= addDays(today, 31) ? here : isoDate(thisYear - 1, month, day);
}

function noSuchDay(ways: readonly Parts[]): string {
  const way = ways.find(({ month, day }) => month >= 1 && month <= 12 && day <= 31);
  if (way === undefined) return "there is no such day";
  const year = way.year ?? 2000;
  return `${MONTHS[way.month - 1]} ${year} has ${daysInMonth(year, way.month)} days`;
}

const shortDate = (iso: string): string => inWordsDate(iso).replace(/ \d{4}$/, "");
