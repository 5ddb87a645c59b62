/**
 * Days in a file: which of day and month stands first is found in all cells of the column together, else taken from the
 * keeper's habit, else asked once for the whole file. A cell then becomes the ISO text that the one reader of dates takes;
 * what is no such cell goes to that reader as it stands.
 */
import { addDays, inWordsDate, isoDate } from "../quantity/calendar.ts";
import type { Preferences } from "../quantity/preferences.ts";
import type { Steps } from "../steps.ts";
import { type Answers, answered, ask, done, type FileQuestion, type Step } from "./asked.ts";

const CELLS_A_STEP = 2_000;

export type DateOrder = NonNullable<Preferences["dateOrder"]>;

export interface DateHabits {
  readonly order: DateOrder | null;
  /** Five figures are a spreadsheet's count of days. */
  readonly dayNumbers: boolean;
  /** How that was found, in words; null where nothing had to be. */
  readonly said: string | null;
}

const NUMERIC = /^(\d{1,2})([-/. ])(\d{1,2})\2(\d{4}|\d{2})(?:[ T,]+(.+))?$/;
const DAY_NUMBER = /^\d{5}(?:[.,]\d+)?$/;
/** Day 0 of the spreadsheets' count, with their leap day of 1900 that never was. */
const EPOCH = "1899-12-30";
const [FIRST_DAY, LAST_DAY] = [20_000, 80_000];

const isDayNumber = (cell: string): boolean =>
  DAY_NUMBER.test(cell) && Number.parseFloat(cell) > FIRST_DAY && Number.parseFloat(cell) < LAST_DAY;

/** @param habit the keeper's; null where nobody said */
export function* dateHabits(
  cells: Iterable<string>,
  habit: DateOrder | null,
  answers: Answers,
): Steps<Step<DateHabits>> {
  let [dayFirst, monthFirst, open, dotted] = [0, 0, 0, 0];
  let example: RegExpExecArray | null = null;
  let number: string | null = null;
  let seen = 0;
  for (const raw of cells) {
    if (seen++ % CELLS_A_STEP === 0) yield;
    const cell = raw.trim();
    const numeric = NUMERIC.exec(cell);
    if (numeric !== null) {
      const [first, second] = [Number(numeric[1]), Number(numeric[3])];
      if (first > 12 && second <= 12) dayFirst += 1;
      else if (second > 12 && first <= 12) monthFirst += 1;
      else if (first !== second) {
        open += 1;
        example ??= numeric;
      }
      if (numeric[2] === ".") dotted += 1;
    } else if (number === null && isDayNumber(cell)) number = cell;
  }
  const questions: FileQuestion[] = [];
  const evidence = dayFirst > 0 === monthFirst > 0 ? null : dayFirst > 0 ? "dmy" : "mdy";
  let order: DateOrder | null = evidence ?? (dotted > 0 && monthFirst === 0 ? "dmy" : habit);
  if (order === null && (open > 0 || (dayFirst > 0 && monthFirst > 0))) {
    const question = orderQuestion(example);
    order = answered(answers, question) as DateOrder | null;
    if (order === null) questions.push(question);
  }
  const dayNumbers = number === null ? null : numbersQuestion(number);
  const asNumbers = dayNumbers === null ? null : answered(answers, dayNumbers);
  if (dayNumbers !== null && asNumbers === null) questions.push(dayNumbers);
  if (questions.length > 0) return ask(...questions);
  const said = [
    dayFirst + monthFirst + open === 0 ? "" : `dates ${order === "mdy" ? "month first" : "day first"}`,
    asNumbers === "yes" ? "five figures as a spreadsheet's days" : "",
  ].filter((words) => words !== "");
  return done({ order, dayNumbers: asNumbers === "yes", said: said.length === 0 ? null : said.join(", ") });
}

function orderQuestion(example: RegExpExecArray | null): FileQuestion {
  const [first, second, year] = [
    Number(example?.[1] ?? 3),
    Number(example?.[3] ?? 4),
    yearOf(example?.[4] ?? "2026"),
  ];
  const words = (day: number, month: number) =>
    inWordsDate(isoDate(year, month, day) ?? isoDate(year, 1, 1) ?? "");
  const [dmy, mdy] = [words(first, second), words(second, first)];
  return {
    name: "dates",
    kind: "AMBIG",
    text: `Dates such as "${example?.[0] ?? "03/04/2026"}": ${dmy} or ${mdy}? One answer for the whole file`,
    choices: [
      { label: `${dmy}: day first`, value: "dmy" },
      { label: `${mdy}: month first`, value: "mdy" },
    ],
  };
}

function numbersQuestion(number: string): FileQuestion {
  const day = inWordsDate(addDays(EPOCH, Math.floor(Number.parseFloat(number))));
  return {
    name: "day_numbers",
    kind: "FORMAT",
    text: `"${number}" looks like a spreadsheet date: ${day}. Read the column so?`,
    choices: [
      { label: `Yes: ${day}`, value: "yes" },
      { label: "No", value: "no" },
    ],
  };
}

/** Two figures: of this century. */
const yearOf = (text: string): number => (text.length === 2 ? 2000 + Number(text) : Number(text));

/** @param time of a column of its own; empty where there is none */
export function whenText(raw: string, time: string, { order, dayNumbers }: DateHabits): string {
  const cell = raw.trim();
  const clock = clockText(time);
  if (dayNumbers && isDayNumber(cell)) {
    const [whole = 0, part = 0] = [
      Math.floor(Number(cell.replace(",", "."))),
      Number(cell.replace(",", ".")) % 1,
    ];
    const day = addDays(EPOCH, whole);
    const minutes = Math.round(part * 24 * 60);
    if (minutes === 0 || minutes >= 24 * 60) return joined(day, clock);
    return joined(day, `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`);
  }
  const numeric = NUMERIC.exec(cell);
  if (numeric === null || order === null) return joined(cell, clock);
  const [first, second, year] = [Number(numeric[1]), Number(numeric[3]), yearOf(numeric[4] ?? "")];
  const day = order === "dmy" ? isoDate(year, second, first) : isoDate(year, first, second);
  // A day that there is not is told by the reader of dates.
  if (day === null) return cell;
  const own = numeric[5] === undefined ? clock : clockText(numeric[5]);
  return own === null ? cell : joined(day, own);
}

const joined = (day: string, clock: string | null): string =>
  clock === null || clock === "" || /[T ]\d\d:\d\d/.test(day) ? day : `${day}T${clock}`;

/** "9:05 pm" as 21:05; empty for none; null for what is no time of day. */
function clockText(text: string): string | null {
  const typed = text.trim();
  if (typed === "") return "";
  const match = /^(\d{1,2})[:.h](\d\d)(?::\d\d(?:\.\d+)?)?\s*([ap]\.?m\.?)?(Z|[+-]\d\d:?\d\d)?$/i.exec(typed);
  if (match === null) return null;
  const [, hour = "", minute = "", half, offset = ""] = match;
  const base = half === undefined ? Number(hour) : Number(hour) % 12;
  return `${two(base + (/^p/i.test(half ?? "") ? 12 : 0))}:${minute}${offset}`;
}

const two = (value: number): string => String(value).padStart(2, "0");
