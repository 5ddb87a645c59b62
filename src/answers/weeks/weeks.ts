/**
 * Weeks 1 to 26: one page of paper, driven by this tank. A line stands in the week in which it first holds; weeks that
 * bring nothing new are told with the one before. What a page has no room for is counted, never dropped in silence.
 * Limits: words and order, from answers and dated care that others worked out; it reckons nothing itself.
 */
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import type { CareDate, CareKind } from "../almanac/care-date.ts";
import { plain, type Sentence, told } from "../sentence.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { dateWords } from "../words.ts";
import { expected } from "./expected.ts";
import { fitted } from "./fit.ts";
import { fromPlan } from "./from-plan.ts";
import type { WeekItem, WeekList } from "./item.ts";

const WEEK_COUNT = 26;
const DAYS = 7;

export interface WeekRow {
  /** Number of the first and the last week that it tells of. */
  readonly from: number;
  readonly to: number;
  /** ISO dates: first day of the first, last day of the last. */
  readonly starts: string;
  readonly ends: string;
  readonly lists: Readonly<Record<WeekList, readonly Sentence[]>>;
  /** Lines that the page has no room for. */
  readonly more: number;
}

export interface Weeks {
  /** `age`: weeks since the tank first held seawater. `ahead`: it is older, and they count from today. */
  readonly counted: "age" | "ahead";
  readonly asOf: string;
  readonly finding: Sentence;
  readonly rows: readonly WeekRow[];
  /** Waves that come after week 26; null where none does. */
  readonly later: Sentence | null;
}

/** @param dates dated care of this tank, from its almanac */
export function weeksOf(answers: TankAnswers, dates: readonly CareDate[]): Weeks {
  const { as_of, age_days, figures } = answers.waves.tank;
  const age = Math.round(age_days.central);
  const isYoung = age < WEEK_COUNT * DAYS;
  const start = isYoung ? addDays(as_of, -age) : as_of;
  const items = [
    ...expected(answers.ahead),
    ...fromPlan(answers),
    ...dates.map((date) => ofCare(date, as_of)),
  ];
  const now = Math.max(1, Math.floor((isYoung ? age : 0) / DAYS) + 1);
  const weekOf = ({ inDays }: WeekItem): number =>
    Math.max(now, Math.floor(daysBetween(start, addDays(as_of, inDays)) / DAYS) + 1);
  const numbers = [...new Set([now, ...items.map(weekOf)])]
    .filter((week) => week <= WEEK_COUNT)
    .sort((a, b) => a - b);
  const rows = numbers.map((from, i) => {
    const to = (numbers[i + 1] ?? WEEK_COUNT + 1) - 1;
    return {
      ...{ from, to },
      starts: addDays(start, (from - 1) * DAYS),
      ends: addDays(start, to * DAYS - 1),
      items: items.filter((item) => weekOf(item) === from),
    };
  });
  return {
    counted: isYoung ? "age" : "ahead",
    asOf: as_of,
    finding: isYoung
      ? age < 0
        ? ["Water first comes in on ", told(dateWords(start), figures.age), "."]
        : ["This tank is in week ", told(String(now), figures.age), "."]
      : [
          "This tank is older than half a year: weeks are counted from today, ",
          told(`day ${age}`, figures.age),
          ".",
        ],
    rows: fitted(rows).map(({ items: kept, ...row }) => ({ ...row, lists: listsOf(kept) })),
    later: laterOf(answers, addDays(start, WEEK_COUNT * DAYS)),
  };
}

function laterOf({ waves: { waves } }: TankAnswers, end: string): Sentence | null {
  const later = waves.filter(({ from }) => from >= end);
  return later.length === 0
    ? null
    : [
        "After week 26: ",
        ...later.flatMap(({ number, from, figures }, i) => [
          ...(i === 0 ? [] : [", "]),
          `wave ${number} from `,
          told(dateWords(from), figures.from),
        ]),
        ".",
      ];
}

function listsOf(items: readonly WeekItem[]): WeekRow["lists"] {
  const of = (list: WeekList) => unique(items.filter((item) => item.list === list).map(({ text }) => text));
  return { expect: of("expect"), test: of("test"), do: of("do"), dont: of("dont"), buy: of("buy") };
}

const unique = (sentences: readonly Sentence[]): Sentence[] => [
  ...new Map(sentences.map((sentence) => [plain(sentence), sentence])).values(),
];

const LIST_OF: Partial<Readonly<Record<CareKind, WeekList>>> = {
  ...{ test: "test", start_up: "test", count: "test", look: "test", stock: "buy", order: "buy" },
};

/** A wave's own line says what to buy; the duty itself is a look at its gate. */
function ofCare({ kind, on, every, until, do: deed, gate }: CareDate, today: string): WeekItem {
  const often =
    every === null
      ? ""
      : ` (every ${every === 1 ? "day" : `${every} days`}${until === null ? "" : ` to ${dateWords(until)}`})`;
  const text: Sentence = often === "" ? deed : [...withoutStop(deed), `${often}.`];
  return {
    inDays: daysBetween(today, on),
    list: LIST_OF[kind] ?? "do",
    weight: gate === null ? 50 : 85,
    text,
  };
}

function withoutStop(sentence: Sentence): Sentence {
  const last = sentence.at(-1);
  return typeof last === "string" ? [...sentence.slice(0, -1), last.replace(/\.\s*$/, "")] : sentence;
}
