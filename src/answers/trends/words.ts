/** A quantity's trend in a few sentences, the first of which is its title. Danger is told first, in plain words. */
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { plain, type Sentence, told } from "../sentence.ts";
import { chance, counted, dateWords, lowered } from "../words.ts";
import { lineText, two, valueText, withUnit } from "./amounts.ts";
import { turned, turnedBefore } from "./turned.ts";

/** What is told, before it is told. */
export type Untold = Omit<QuantityTrend, "title" | "sentences">;

/** From this many of 20 on a limit is worth a sentence. */
const LIMIT_WORTH_OF_20 = 3;

export function sentencesOf(trend: Untold): { title: string; sentences: Sentence[] } {
  const way = wayOf(trend);
  const danger = dangerOf(trend);
  const sentences = [
    ...danger,
    way,
    ...trend.limits.flatMap((limit) => limitOf(trend, limit)),
    ...turnedBefore(trend),
    ...changesOf(trend),
    ...usualOf(trend),
    ...outliersOf(trend),
  ];
  const first = trend.danger?.stands === true && danger[0] !== undefined ? danger[0] : way;
  return { title: titleOf(plain(first)), sentences };
}

/** The finding without the figures that the sentence itself has: they are not doors in a heading. */
const titleOf = (sentence: string): string =>
  sentence.replace(/: (?:it changes|too few|one day|\d+ days).*$/, "").replace(/\.$/, "");

function readingText(
  { drawn: { step }, unit }: Untold,
  value: number,
  censored: "below" | "above" | null,
): string {
  const text = withUnit(valueText(value, step), unit);
  return censored === null ? text : `${censored} ${text}`;
}

function dangerOf(trend: Untold): Sentence[] {
  const { danger, label, latest } = trend;
  if (danger === null) return [];
  const what = `${label} of ${readingText(trend, danger.value, null)} on ${dateWords(danger.on)}`;
  if (danger.stands) return [[`${what} is dangerous; no later day's reading says otherwise.`]];
  const since = readingText(trend, latest.value, latest.censored);
  return [[`${what} was dangerous; the latest, of ${dateWords(latest.on)}, is ${since}.`]];
}

function wayOf(trend: Untold): Sentence {
  const { way, per_week, rising_of_20, figures } = trend;
  if (
    way === "not_enough" ||
    per_week === null ||
    rising_of_20 === null ||
    figures.slope === null ||
    figures.rising === null
  )
    return [notEnough(trend)];
  return turned(trend, wayWords) ?? wayWords(trend, null);
}

/** The line alone. @param settledOn told where the line begins on the day on which it came to rest */
function wayWords(trend: Untold, settledOn: string | null): Sentence {
  const { label, way, per_week: slope, rising_of_20: rising, figures, unit, window, lately } = trend;
  if (slope === null || rising === null || figures.slope === null || figures.rising === null)
    return [notEnough(trend)];
  const a = (figure: string) => withUnit(figure, unit);
  const over = settledOn === null ? overWords(window, trend) : ` since ${dateWords(settledOn)}`;
  const [least, most] = way === "falling" ? [-slope.high, -slope.low] : [slope.low, slope.high];
  const band = `${two(least)} to ${two(most)}`;
  const count = (of20: number) => told(chance(of20), figures.rising ?? "");
  if (way === "rising" || way === "falling") {
    const verb = way === "rising" ? "rises" : "falls";
    return [
      `${label} ${verb} by about `,
      told(`${a(two(Math.abs(slope.central)))} a week (${band})`, figures.slope),
      `${over}: `,
      count(way === "rising" ? rising : 20 - rising),
      ".",
    ];
  }
  const range = told(
    `${signed(slope.low)} and ${signed(slope.high)}${unit === "" ? "" : ` ${unit}`} a week`,
    figures.slope,
  );
  if (way === "level")
    return [`${label} is level${over}, as far as its test can tell: it changes by between `, range, "."];
  return [
    `${label === "it" ? "which way it goes now" : `Which way ${lowered(label)} goes`} can't be told yet${over}: it changes by between `,
    range,
    "; it rises: ",
    count(rising),
    lately === null
      ? "."
      : `. Its last ${lately.readings} readings ${lately.way === "rising" ? "rise" : "fall"} one after the other.`,
  ];
}

const signed = (value: number): string => (value > 0 ? `+${two(value)}` : two(value));

function overWords({ why, from, days }: Untold["window"], { latest }: Untold): string {
  if (latest.age_days > STALE_DAYS) return ` in the readings up to ${dateWords(latest.on)}`;
  if (why === "change") return ` since ${dateWords(from)}`;
  return why === "eight" ? ` over the last ${days} readings` : "";
}
const STALE_DAYS = 28;

function notEnough({ label, days, enough, latest, window: { why, from } }: Untold): string {
  const since = why === "change" ? ` since it changed on ${dateWords(from)}` : "";
  const have = `${days === 1 ? "one day" : `${days} days`} with a reading`;
  if (enough === null)
    return `Not enough data to say which way ${lowered(label)} goes${since}: no two readings bound it.`;
  const more = `${counted(enough.readings, "more reading")}${enough.readings === 1 ? "" : " on different days"}`;
  const last = addDays(latest.on, latest.age_days) < enough.not_before;
  const when = last ? `, the last on ${dateWords(enough.not_before)} or later,` : "";
  return `Not enough data to say which way ${lowered(label)} goes${since}: ${why === "change" ? "too few days" : have}. ${more}${when} would be enough.`;
}

function limitOf({ label, unit, id }: Untold, limit: Untold["limits"][number]): Sentence[] {
  const { value, side, of_20, already_of_20, within_days, first_on, figures } = limit;
  if (of_20 < LIMIT_WORTH_OF_20) return [];
  const the = told(withUnit(String(value), unit), figures.limit);
  const count = told(chance(of_20), figures.chance);
  const side_ = side === "above" ? "above" : "below";
  if (already_of_20 >= of_20)
    return [[`${label} is ${side_} `, the, ` today: `, count, `. The limit: ${limit.why}.`]];
  const when =
    first_on === null
      ? ""
      : ` First about ${dateWords(first_on.middle)} (${dateWords(first_on.early)} to ${dateWords(first_on.late)}).`;
  return [
    [
      `If ${id === "ph" ? "pH" : lowered(label)} goes on as it went, it is ${side_} `,
      the,
      ` within ${within_days} days: `,
      count,
      `.${when} The limit: ${limit.why}.`,
    ],
  ];
}

function changesOf({ changes, unit, label, drawn }: Untold): Sentence[] {
  return changes.slice(-2).map(({ on, shape, by, happened, figure }): Sentence => {
    const size = lineText(Math.abs(by.central), drawn.step);
    const what =
      shape === "step"
        ? told(`${withUnit(size, unit)} ${by.central > 0 ? "higher" : "lower"}`, figure)
        : told(
            `${withUnit(two(Math.abs(by.central)), unit)} a week ${by.central > 0 ? "more" : "less"}`,
            figure,
          );
    const near =
      happened.length === 0
        ? "The daybook has nothing within three days of it."
        : `About that day: ${happened.slice(0, 3).join(", ")}${happened.length > 3 ? ` and ${happened.length - 3} more` : ""}. Whether that was the cause, the readings can't say.`;
    return shape === "step"
      ? [`Since ${dateWords(on)} ${lowered(label)} stands `, what, `. ${near}`]
      : [`Since ${dateWords(on)} ${lowered(label)} gains `, what, `. ${near}`];
  });
}

function usualOf(trend: Untold): Sentence[] {
  const { usual, unit, drawn, latest } = trend;
  if (usual === null) return [];
  const v = (value: number) => valueText(value, drawn.step);
  const band = usual.low === usual.high ? "" : ` (${v(usual.low)} to ${v(usual.high)} on four of five days)`;
  const off =
    usual.latest === "within"
      ? ""
      : ` The latest, ${readingText(trend, latest.value, latest.censored)}, lies well ${usual.latest} that.`;
  return [
    [
      `Usual in this tank: `,
      told(`${withUnit(lineText(usual.central, drawn.step), unit)}${band}`, usual.figure),
      `, by ${usual.days} earlier days with readings.${off}`,
    ],
  ];
}

function outliersOf(trend: Untold): Sentence[] {
  const { outliers } = trend;
  if (outliers.length === 0) return [];
  const named = outliers
    .slice(-3)
    .map(({ on, value }) => `${readingText(trend, value, null)} on ${dateWords(on)}`);
  const more = outliers.length > 3 ? ` and ${outliers.length - 3} more` : "";
  return [[`Marked as far from the others, and kept: ${named.join(", ")}${more}.`]];
}
