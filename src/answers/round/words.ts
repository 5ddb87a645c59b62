/** A row of the round in words: why now, what to do, by when, how old the data are. */
import { daysBetween } from "../../contract/quantity/calendar.ts";
import { plain, type Sentence } from "../sentence.ts";
import { dateWords } from "../words.ts";
import type { RoundRow } from "./round.ts";

const NOTHING: Sentence = ["Nothing that was told or measured asks for more."];
const NOTHING_SO_FAR: Sentence = [
  "No danger in what was told or measured; trends, heads and growths are still being read.",
];

export function whyNow({ first, declined, stillReading }: RoundRow): Sentence {
  const why = first?.why[0] === undefined ? undefined : firstSentence(first.why[0]);
  const put = declined[0];
  if (put === undefined) return why ?? (stillReading ? NOTHING_SO_FAR : NOTHING);
  const words = `Declined on ${dateWords(put.on)}: ${put.reason}`;
  return [...(why ?? put.advice.why[0] ?? []), ` ${words}${/[.!?]$/.test(words) ? "" : "."}`];
}

/** A reason's first sentence: the rest stands on the bench. */
function firstSentence(sentence: Sentence): Sentence {
  const parts: Sentence[number][] = [];
  for (const part of sentence) {
    const text = typeof part === "string" ? part : part.text;
    const end = typeof part === "string" ? /^[\s\S]*?[^\s.][.](?= [A-Z])/.exec(text)?.[0] : undefined;
    parts.push(end ?? part);
    if (end !== undefined) break;
  }
  return parts;
}

export const whatToDo = ({ first, declined, stillReading }: RoundRow): Sentence =>
  first?.do ??
  declined[0]?.advice.do ?? [stillReading ? "Look again in a minute." : "Keep things as they are."];

/** Said of the whole list while some tanks are not read to the end; null when all are. */
export function stillReadingWords(rows: readonly RoundRow[]): string | null {
  const some = rows.filter(({ stillReading }) => stillReading).length;
  if (some === 0) return null;
  const tanks = some === 1 ? "1 tank" : `${some} tanks`;
  return `Trends, heads and growths of ${tanks} are still being read: look again in a minute. Dangers stand here already.`;
}

/** "today", "by 18 Jun 2026", "this week". */
export function byWhen({ first }: RoundRow, today: string): string {
  if (first === null) return "nothing due";
  if (first.urgency === "today") return "today";
  if (first.by !== null && daysBetween(today, first.by) >= 0) return `by ${dateWords(first.by)}`;
  return first.urgency === "this_week" ? "this week" : "next visit";
}

/** "2 d", "today", "none". */
export const dataAge = ({ dataDays }: RoundRow): string =>
  dataDays === null
    ? "none yet"
    : dataDays === 0
      ? "today"
      : `${dataDays} ${dataDays === 1 ? "day" : "days"}`;

/** All that is shown of a row, for looking words up in it. */
export const roundText = (row: RoundRow): string =>
  [row.name, row.keeper, plain(whyNow(row)), plain(whatToDo(row))].join(" ");

/** The round's finding: how many need somebody today, and this week. */
export function roundFinding(rows: readonly RoundRow[]): string {
  const count = (urgency: string) => rows.filter(({ first }) => first?.urgency === urgency).length;
  const today = count("today");
  const week = count("this_week");
  const tanks = (n: number) => `${n} ${n === 1 ? "tank" : "tanks"}`;
  if (rows.length === 0) return "No tank is kept here yet.";
  if (today === 0 && week === 0) return `Of ${tanks(rows.length)}, none needs you this week.`;
  const parts = [
    ...(today === 0 ? [] : [`${today} today`]),
    ...(week === 0 ? [] : [`${week} more this week`.replace(today === 0 ? " more" : "", "")]),
  ];
  return `Of ${tanks(rows.length)}, you are needed at ${parts.join(", at ")}.`;
}
