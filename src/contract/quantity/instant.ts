/**
 * When something was seen: a day, or a day with its time. A time with an offset is an instant; one without is
 * local, and where the clocks were changed it can be no instant or two. Then it asks.
 */

import { inWordsDate } from "./calendar.ts";
import { type DateContext, readDate } from "./date.ts";
import { asked, kept, type MessageKind, type Outcome, refused } from "./outcome.ts";
import { shown } from "./show.ts";
import { offsetAt } from "./zone.ts";

export interface Seen {
  /** The day, in the tank's own zone or as the keeper wrote it. */
  readonly day: string;
  /** The instant in UTC with the offset it was given in; null where the hour is unknown. */
  readonly at: { readonly utc: string; readonly offsetMinutes: number } | null;
}

export interface InstantContext extends DateContext {
  /** The clock's instant, ISO UTC; null where there is no clock, and days alone are compared. */
  readonly now: string | null;
  /** IANA zone of the tank; null where unknown: then a time without offset is kept as its day. */
  readonly zone: string | null;
}

/** A phone's clock may be this far ahead. */
const TOLERANCE_MS = 10 * 60_000;
const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const PATTERN = /^(\d{4}-\d\d-\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:\.\d+)?)?\s*(Z|[+-]\d\d:?\d\d)?$/i;

export function readInstant(text: string, context: InstantContext): Outcome<Seen> {
  const label = context.label ?? "Date";
  const original = { text, unit: null };
  const say = (kind: MessageKind, words: string) => ({ kind, text: `${label} "${shown(text)}": ${words}` });
  const match = PATTERN.exec(text.trim());
  if (match === null) {
    const outcome = readDate(text, context);
    return "value" in outcome ? { ...outcome, value: { day: outcome.value, at: null } } : outcome;
  }
  const [, day = "", hour = "", minute = "", second = "00", offset] = match;
  const clock = Date.parse(`${day}T${hour}:${minute}:${second}Z`);
  // The day is judged for itself; whether its hour lies ahead is judged below.
  const asDay = readDate(day, { ...context, today: later(day, context.today) });
  if (!("value" in asDay))
    return {
      ...asDay,
      original,
      message: { ...asDay.message, text: asDay.message.text.replace(`"${day}"`, `"${shown(text)}"`) },
    };
  if (Number.isNaN(clock)) return refused(original, say("FORMAT", "there is no such time of day"));
  if (offset !== undefined) {
    const offsetMinutes = minutesOf(offset);
    return judge(clock - offsetMinutes * MINUTE_MS, offsetMinutes);
  }
  if (context.zone === null) {
    if (day > context.today) return ahead();
    return kept("convert", { day, at: null }, original, say("ECHO", `kept as the day, ${inWordsDate(day)}`));
  }
  const { zone } = context;
  const offsets = [...new Set([-24, -3, 0, 3, 24].map((hours) => offsetAt(clock + hours * HOUR_MS, zone)))];
  const instants = offsets.map((minutes) => ({ at: clock - minutes * MINUTE_MS, minutes }));
  const real = instants
    .filter(({ at, minutes }) => offsetAt(at, zone) === minutes)
    .sort((a, b) => a.at - b.at);
  const [only, ...others] = real;
  if (only !== undefined && others.length === 0) return judge(only.at, only.minutes);
  const offered = (only === undefined ? instants : real).sort((a, b) => a.at - b.at);
  const choices = offered.map(({ at }, i) => ({
    label: `${only === undefined ? "" : i === 0 ? "first, " : "second, "}${iso(at).slice(11, 16)} UTC`,
    text: iso(at),
  }));
  const why =
    only === undefined
      ? "the clocks went forward and this time did not exist"
      : "the clocks went back and this time came twice";
  return asked(original, say("AMBIG", `${why}. ${choices.map((c) => c.label).join(" or ")}?`), choices);

  function judge(at: number, offsetMinutes: number): Outcome<Seen> {
    if (context.future === "refuse") {
      const late = context.now === null ? day > context.today : at > Date.parse(context.now) + TOLERANCE_MS;
      if (late) return ahead();
    }
    return kept("accept", { day, at: { utc: iso(at), offsetMinutes } }, original);
  }

  function ahead(): Outcome<Seen> {
    return refused(
      original,
      say("FUTURE", `can't be after today, ${inWordsDate(context.today)}. Plan it instead?`),
    );
  }
}

const later = (a: string, b: string): string => [a, b].sort()[1] ?? b;

const iso = (at: number): string => `${new Date(at).toISOString().slice(0, 19)}Z`;

function minutesOf(offset: string): number {
  if (/^z$/i.test(offset)) return 0;
  const [, sign, hours = "0", minutes = "0"] = /^([+-])(\d\d):?(\d\d)$/.exec(offset) ?? [];
  return (sign === "-" ? -1 : 1) * (60 * Number(hours) + Number(minutes));
}
