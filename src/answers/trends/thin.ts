/**
 * Readings as marks of a drawing: each day a mark where there are few, else a bin a mark with its lowest, middle and
 * highest, so that ten years are as quick to draw as ten weeks. Dangers and outliers keep marks of their own: thinning
 * hides none.
 */
import type { QuantityTrend } from "../../contract/output/trends.ts";
import { median, type Point } from "../../engine/trends/series.ts";

type Mark = QuantityTrend["drawn"]["marks"][number];

/** Marks that a phone draws, steps through and lists at ease. */
const MOST_MARKS = 120;
const BINS = 90;
/** Marks of their own: more outliers than these are a way of reading, and stay in their bins. */
const MOST_APART = 20;

/** @param days one point a day, oldest first @param outliers days to be marked */
export function marksOf(
  days: readonly Point[],
  outliers: ReadonlySet<string>,
): { marks: Mark[]; thinned: number | null } {
  const what = ({ danger, on }: Point): Mark["what"] =>
    danger ? "danger" : outliers.has(on) ? "outlier" : "reading";
  const one = (point: Point): Mark => ({
    ...{ on: point.on, to: point.on, low: clean(point.low), value: point.value },
    ...{ high: Number.isFinite(point.high) ? clean(point.high) : null, censored: point.censored },
    ...{ what: what(point), readings: point.entries.length },
  });
  if (days.length <= MOST_MARKS) return { marks: days.map(one), thinned: null };
  // The latest dangers go before the latest outliers.
  const kept = (kind: Mark["what"], most: number) =>
    days.filter((point) => what(point) === kind).slice(-most);
  const apart = [...kept("danger", MOST_APART), ...kept("outlier", MOST_APART)].map(one);
  return {
    marks: [...binned(days), ...apart].sort((a, b) => a.on.localeCompare(b.on)),
    thinned: days.length,
  };
}

function binned(days: readonly Point[]): Mark[] {
  const [first, last] = [days[0]!.day, days.at(-1)!.day];
  const width = (last - first + 1) / BINS;
  const bins = new Map<number, Point[]>();
  for (const point of days) {
    const bin = Math.floor((point.day - first) / width);
    const same = bins.get(bin);
    if (same === undefined) bins.set(bin, [point]);
    else same.push(point);
  }
  return [...bins.values()].map((same): Mark => {
    const values = same.map(({ value }) => value);
    const bounds = same.filter(({ censored }) => censored !== null);
    return {
      ...{ on: same[0]!.on, to: same.at(-1)!.on, what: "bin" },
      low: Math.min(...same.map((point) => (point.censored === "below" ? point.low : point.value))),
      value: median(values),
      high: Math.max(...values),
      // A bin of nothing but bounds is one.
      censored: bounds.length === same.length ? same[0]!.censored : null,
      readings: same.reduce((sum, { entries }) => sum + entries.length, 0),
    };
  });
}

/** Half a step off a reading, without the last bit's noise. */
const clean = (value: number): number => Number(value.toPrecision(8));
