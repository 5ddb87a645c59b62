/**
 * Readings of one quantity over time: each as high as its test could tell, bounds open, the line with its 90 % band, the
 * limit, what the daybook has below. Pure: scales and paths for a drawing of a given width.
 */
import { scaleLinear } from "d3-scale";
import { valueText, withUnit } from "../../answers/trends/amounts.ts";
import { dateWords } from "../../answers/words.ts";
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { dayOf, monthStarts, shortDate } from "./days.ts";
import type { Step } from "./steps.ts";

export type CourseFacts = Pick<QuantityTrend, "label" | "unit" | "drawn" | "line" | "limits">;
type Mark = QuantityTrend["drawn"]["marks"][number];

export interface CoursePlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface CourseDrawn {
  readonly yTicks: readonly { readonly y: number; readonly words: string }[];
  readonly xTicks: readonly { readonly x: number; readonly words: string }[];
  /** One path a kind of mark, so that two hundred readings are a handful of elements. */
  readonly readings: string;
  readonly bins: string;
  readonly bounds: string;
  readonly outliers: string;
  readonly dangers: string;
  readonly line: string;
  readonly band: string;
  readonly limits: readonly { readonly y: number; readonly words: string }[];
  readonly happened: string;
  readonly markX: readonly number[];
}

/** A limit further off than this many heights of the readings is told, not drawn: it would press them flat. */
const LIMIT_WITHIN = 1.5;
const SERIF = 4;

export function courseDrawn(facts: CourseFacts, place: CoursePlace): CourseDrawn {
  const { drawn, line, limits } = facts;
  const { marks, from, to, step } = drawn;
  const last = [to, ...line.map(({ on }) => on)].toSorted().at(-1)!;
  const x = scaleLinear([dayOf(from), Math.max(dayOf(last), dayOf(from) + 1)], [place.left, place.right]);
  const shownLine = line.filter(({ on }) => on >= from);
  const values = [
    ...marks.flatMap(({ low, value, high }) => [low, value, high ?? value]),
    ...shownLine.map(({ central }) => central),
  ];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const height = Math.max(most - least, 2 * step);
  const near = limits.filter(
    ({ value }) => value <= most + LIMIT_WITHIN * height && value >= least - LIMIT_WITHIN * height,
  );
  // The band is drawn whole where it is no more than a height of the readings beyond them.
  const band = shownLine.flatMap(({ low, high }) => [
    Math.max(low, least - height),
    Math.min(high, most + height),
  ]);
  const ends = [least, least + height, ...band, ...near.map(({ value }) => value)];
  // What can't be negative begins at nought where it comes near it.
  const floor = least >= 0 && Math.min(...ends) < 0.5 * height ? 0 : Math.min(...ends);
  const y = scaleLinear([floor, Math.max(...ends)], [place.bottom, place.top]).nice(4);
  const at = (value: number) => round(Math.min(place.bottom, Math.max(place.top - 6, y(value))));
  const px = (on: string) => round(x(dayOf(on)));
  const of = (...kinds: Mark["what"][]) => marks.filter(({ what }) => kinds.includes(what));
  const tick = ({ on, to: until, low, high, value }: Mark) => {
    const [middle, top, bottom] = [round((px(on) + px(until)) / 2), at(high ?? value), at(low)];
    const under = Math.max(bottom, top + 1);
    return `M${middle} ${top}V${under}M${middle - SERIF} ${top}h${2 * SERIF}M${middle - SERIF} ${under}h${2 * SERIF}`;
  };
  /** Open towards where the value may be: an arrow away from the bound. */
  const bound = ({ on, value, censored }: Mark) => {
    const [middle, edge, way] = [px(on), at(value), censored === "below" ? 1 : -1];
    return `M${middle - SERIF} ${edge}h${2 * SERIF}M${middle} ${edge}v${10 * way}l-3 ${-4 * way}m3 ${4 * way}l3 ${-4 * way}`;
  };
  const exact = (mark: Mark) => mark.censored === null;
  return {
    yTicks: y.ticks(4).map((value) => ({ y: round(y(value)), words: String(Number(value.toPrecision(6))) })),
    xTicks: datesOf(from, last, place).map(({ on, words }) => ({ x: px(on), words })),
    readings: of("reading", "outlier", "danger").filter(exact).map(tick).join(""),
    bins: of("bin")
      .map((mark) => {
        const middle = round((px(mark.on) + px(mark.to)) / 2);
        return `M${middle} ${at(mark.high ?? mark.value)}V${Math.max(at(mark.low), at(mark.high ?? mark.value) + 1)}M${middle - 2} ${at(mark.value)}h4`;
      })
      .join(""),
    bounds: of("reading", "outlier", "danger")
      .filter((mark) => !exact(mark))
      .map(bound)
      .join(""),
    outliers: of("outlier")
      .map((mark) => ring(px(mark.on), at(mark.value)))
      .join(""),
    dangers: of("danger")
      .map((mark) => square(px(mark.on), at(mark.value)))
      .join(""),
    line: polyline(shownLine.map(({ on, central }) => [px(on), at(central)])),
    band:
      polyline(shownLine.map(({ on, low }) => [px(on), at(low)])) +
      polyline(shownLine.map(({ on, high }) => [px(on), at(high)])),
    limits: near.map(({ value }) => ({ y: at(value), words: `limit ${value}` })),
    happened: [...new Set(drawn.happened.map(({ on }) => px(on)))]
      .map((middle) => `M${middle} ${place.bottom + 3}v7`)
      .join(""),
    markX: marks.map(({ on, to: until }) => round((px(on) + px(until)) / 2)),
  };
}

const round = (value: number): number => Math.round(value * 10) / 10;
const polyline = (points: readonly (readonly [number, number])[]): string =>
  points.map(([px, py], i) => `${i === 0 ? "M" : "L"}${px} ${py}`).join("");
const ring = (px: number, py: number): string => `M${px - 7} ${py}a7 7 0 1 0 14 0a7 7 0 1 0 -14 0`;
const square = (px: number, py: number): string => `M${px - 6} ${py - 6}h12v12h-12Z`;

const YEAR_DAYS = 365;
/** Room for a date's words. */
const APART = 62;

function datesOf(from: string, to: string, { left, right }: CoursePlace): { on: string; words: string }[] {
  const days = dayOf(to) - dayOf(from);
  const most = Math.max(1, Math.floor((right - left) / APART));
  if (days > 2 * YEAR_DAYS) {
    const [first, last] = [Number(from.slice(0, 4)) + 1, Number(to.slice(0, 4))];
    const every = Math.max(1, Math.ceil((last - first + 1) / most));
    return Array.from({ length: Math.floor((last - first) / every) + 1 }, (_, i) => {
      const year = String(first + i * every);
      return { on: `${year}-01-01`, words: year };
    });
  }
  const months = Math.max(1, Math.ceil(days / 30.4 / most));
  const starts = monthStarts(from, to, months);
  if (starts.length > 0) return starts.map((on) => ({ on, words: shortDate(on).replace(/^1 /, "") }));
  return [{ on: from, words: shortDate(from) }];
}

/** "12 mg/L", "below 0.02 mg/L", "8 to 14 mg/L, middle 10 mg/L". */
function markText(
  { value, low, high, censored, what, readings }: Mark,
  { unit, drawn: { step } }: CourseFacts,
): string {
  const text = (one: number) => valueText(one, step);
  if (what === "bin") {
    const most = high ?? value;
    const range = low === most ? text(value) : `${text(low)} to ${text(most)}, middle ${text(value)}`;
    const bound = censored === null ? "" : `${censored} `;
    return `${bound}${withUnit(range, unit)} (${readings} readings)`;
  }
  const bound = censored === null ? "" : `${censored} `;
  const said = what === "danger" ? ", dangerous" : what === "outlier" ? ", far from the others" : "";
  return `${bound}${withUnit(text(value), unit)}${said}`;
}

const markDates = ({ on, to }: Mark): string =>
  on === to ? dateWords(on) : `${dateWords(on)} to ${dateWords(to)}`;

export const courseSteps = (facts: CourseFacts): readonly Step[] =>
  facts.drawn.marks.map((mark) => ({ label: markDates(mark), text: markText(mark, facts) }));

/** A row a mark: when, what was read, what the test could tell. */
export function courseRows(facts: CourseFacts): readonly (readonly string[])[] {
  const { step } = facts.drawn;
  return facts.drawn.marks.map((mark) => [
    markDates(mark),
    markText(mark, facts),
    mark.what === "bin" || mark.high === null || mark.censored !== null
      ? ""
      : `${valueText(mark.low, step / 10)} to ${valueText(mark.high, step / 10)}`,
  ]);
}
