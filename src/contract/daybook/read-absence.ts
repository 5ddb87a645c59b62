/**
 * An absence: from a day to a day, who feeds meanwhile. Days may lie ahead, or behind where it is told afterwards.
 * Limits: one time away an entry; two that overlap are two entries, and the page says so.
 */
import { addDays, daysBetween, inWordsDate } from "../quantity/calendar.ts";
import { readPlain } from "../quantity/plain.ts";
import type { Gather } from "./gather.ts";
import { FED_BY, LONGEST_AWAY_DAYS } from "./kinds/care.ts";
import type { EntryBody } from "./kinds.ts";

/** A sitter who is told nothing else feeds on every second day: grown fish bear it, and less is left over. Judgement. */
const USUAL_EVERY_DAYS = 2;
const MOST_EVERY_DAYS = 7;

export function readAbsence(gather: Gather): EntryBody<"absence"> | undefined {
  const when = gather.when();
  const from = day(gather, "from");
  const to = day(gather, "to");
  const fedBy = gather.choice("fed_by", FED_BY);
  const every = readEvery(gather, fedBy ?? null);
  const portions = readPortions(gather, fedBy ?? null);
  if (from !== undefined && to !== undefined) {
    const days = daysBetween(from, to);
    if (days < 1 || days > LONGEST_AWAY_DAYS) {
      const words = `must be 1 to ${LONGEST_AWAY_DAYS} days after leaving, ${inWordsDate(from)}`;
      return gather.doubt("to", "RANGE", words);
    }
  }
  if (when === undefined || from === undefined || to === undefined || fedBy == null) return undefined;
  if (every === undefined || portions === undefined) return undefined;
  return { ...when, from, to, fed_by: fedBy, every_days: every, portions };
}

function day(gather: Gather, name: string): string | undefined {
  const read = gather.plannedDay(name);
  if (read !== null) return read;
  return gather.doubt(name, "MISSING", `nothing entered. Enter a date such as ${gather.context.today}`);
}

const LEAVE_EMPTY = [{ label: "leave it empty", text: "" }];

function readEvery(gather: Gather, fedBy: string | null): number | null | undefined {
  const typed = gather.text("every_days");
  if (fedBy !== null && fedBy !== "sitter")
    return typed === ""
      ? null
      : gather.doubt("every_days", "CONFLICT", "belongs to a sitter; leave it empty here", LEAVE_EMPTY);
  if (typed === "") return USUAL_EVERY_DAYS;
  const { preferences } = gather.context;
  const label = gather.label("every_days");
  const days = gather.take(
    "every_days",
    readPlain("days", typed, { preferences, label, unit: "d" }),
  )?.central;
  if (days === undefined) return undefined;
  if (Number.isInteger(days) && days >= 1 && days <= MOST_EVERY_DAYS) return days;
  return gather.doubt("every_days", "RANGE", `must be a whole number from 1 to ${MOST_EVERY_DAYS}`);
}

function readPortions(gather: Gather, fedBy: string | null): number | null | undefined {
  if (gather.text("portions") === "") return null;
  if (fedBy !== null && fedBy !== "sitter")
    return gather.doubt("portions", "CONFLICT", "are for a sitter; leave it empty here", LEAVE_EMPTY);
  const read = gather.heads("portions", "other");
  if (read === undefined) return undefined;
  return read.count ?? gather.doubt("portions", "FORMAT", "a figure is needed here, such as 6");
}

/** Days on which a sitter feeds: not on the day of leaving unless daily, then every so many. */
export function feedingDays(from: string, to: string, every: number): readonly string[] {
  return Array.from({ length: Math.max(0, daysBetween(from, to)) }, (_, d) => d)
    .filter((d) => d % every === 0 && (d > 0 || every === 1))
    .map((d) => addDays(from, d));
}
