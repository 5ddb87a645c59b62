/**
 * Twenty ways a quantity could go, its readings, the line that matters, and on one date the twenty values as grains
 * with the count on each side. Pure: scales and paths for a drawing of a given width.
 */
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { chance, dateWords } from "../../answers/words.ts";
import { dayOf, monthStarts } from "./days.ts";
import { RUNS } from "./grain-row-view.ts";
import type { Step } from "./steps.ts";

export interface RunsFacts {
  /** "nitrate" */
  readonly name: string;
  /** "mg/L" */
  readonly unit: string;
  /** ISO date of each weekly value; the first one is today. */
  readonly weeks: readonly string[];
  /** Twenty, a value a week each. */
  readonly runs: readonly (readonly number[])[];
  /** Bounds of a reading are those of its test's own step. */
  readonly readings: readonly { readonly date: string; readonly low: number; readonly high: number }[];
  readonly limit: { readonly value: number; readonly words: string } | null;
  /** Place in `weeks` of the date at which the runs are counted. */
  readonly asked: number;
}

export interface RunsCount {
  readonly above: number;
  readonly below: number;
}

/** A value on the limit counts as below: the limit is still kept. */
export function runsCount({ runs, limit, asked }: RunsFacts): RunsCount {
  if (runs.length !== RUNS) throw new Error(`Cannot count runs: twenty are needed, received ${runs.length}`);
  const above = limit === null ? 0 : runs.filter((run) => run[asked]! > limit.value).length;
  return { above, below: RUNS - above };
}

export const amount = (value: number): string => {
  if (value === 0) return "0";
  const size = Math.floor(Math.log10(Math.abs(value)));
  return String(Number(value.toFixed(Math.max(0, 1 - size))));
};

/** "Nitrate stays under 20 mg/L: usually, 16 of 20, on 20 Jul 2026" */
export function runsFinding(facts: RunsFacts): string {
  const { name, unit, weeks, limit, asked } = facts;
  const on = dateWords(weeks[asked]!);
  if (limit === null) {
    const { low, high } = middleHalf(facts, asked);
    return `${name} lies between ${amount(low)} and ${amount(high)} ${unit} on ${on}: about even, 10 of 20`;
  }
  const { above, below } = runsCount(facts);
  return above > below
    ? `${name} is above ${amount(limit.value)} ${unit} on ${on}: ${chance(above)}`
    : `${name} is at or under ${amount(limit.value)} ${unit} on ${on}: ${chance(below)}`;
}

const at = (runs: RunsFacts["runs"], week: number) => runs.map((run) => run[week]!).sort((a, b) => a - b);

function middleHalf({ runs }: RunsFacts, week: number): { low: number; high: number } {
  const values = at(runs, week);
  return { low: values[5]!, high: values[14]! };
}

/** A row a month: lowest and highest of twenty and the middle half. */
export interface RunsRow {
  readonly date: string;
  readonly lowest: string;
  readonly half: string;
  readonly highest: string;
  readonly above: string | null;
}

const WEEKS_A_ROW = 4;

function rowWeeks({ weeks, asked }: RunsFacts): number[] {
  return weeks.map((_, week) => week).filter((week) => week % WEEKS_A_ROW === 0 || week === asked);
}

export function runsRows(facts: RunsFacts): readonly RunsRow[] {
  return rowWeeks(facts).map((week) => {
    const values = at(facts.runs, week);
    const { low, high } = middleHalf(facts, week);
    return {
      date: dateWords(facts.weeks[week]!),
      lowest: amount(values[0]!),
      half: `${amount(low)} to ${amount(high)}`,
      highest: amount(values.at(-1)!),
      above: facts.limit === null ? null : `${runsCount({ ...facts, asked: week }).above} of 20`,
    };
  });
}

export function runsSteps(facts: RunsFacts): readonly (Step & { readonly week: number })[] {
  return facts.weeks.map((date, week) => {
    const { low, high } = middleHalf(facts, week);
    const { above } = runsCount({ ...facts, asked: week });
    const side = facts.limit === null ? "" : `; above ${amount(facts.limit.value)}: ${chance(above)}`;
    return {
      week,
      label: dateWords(date),
      text: `10 of 20 runs between ${amount(low)} and ${amount(high)} ${facts.unit}${side}`,
    };
  });
}

/** Where things stand in a drawing. */
export interface RunsPlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Room right of the runs for the grains. */
  readonly stack: number;
  readonly grain: number;
}

export interface RunsDrawn {
  readonly paths: readonly string[];
  readonly yTicks: readonly { readonly y: number; readonly words: string }[];
  readonly months: readonly { readonly x: number; readonly date: string }[];
  readonly readings: readonly { readonly x: number; readonly top: number; readonly bottom: number }[];
  readonly limitY: number | null;
  readonly todayX: number;
  readonly askedX: number;
  readonly weekX: readonly number[];
  readonly grains: readonly { readonly x: number; readonly y: number; readonly above: boolean }[];
}

export function runsDrawn(facts: RunsFacts, place: RunsPlace, monthsEvery: number): RunsDrawn {
  const { weeks, runs, readings, limit, asked } = facts;
  const firstDate = [weeks[0]!, ...readings.map(({ date }) => date)].toSorted()[0]!;
  const lastDate = weeks.at(-1)!;
  const x = scaleLinear([dayOf(firstDate), dayOf(lastDate)], [place.left, place.right]);
  const most = Math.max(...runs.flat(), ...readings.map(({ high }) => high), (limit?.value ?? 0) * 1.15);
  const y = scaleLinear([0, most === 0 ? 1 : most], [place.bottom, place.top]).nice(4);
  const pathOf = line<number>(
    (_, week) => x(dayOf(weeks[week]!)),
    (value) => y(value),
  ).digits(1);
  return {
    paths: runs.map((run) => pathOf(run) ?? ""),
    yTicks: y.ticks(4).map((value) => ({ y: y(value), words: amount(value) })),
    months: monthStarts(firstDate, lastDate, monthsEvery).map((date) => ({ x: x(dayOf(date)), date })),
    readings: readings.map(({ date, low, high }) => ({ x: x(dayOf(date)), top: y(high), bottom: y(low) })),
    limitY: limit === null ? null : y(limit.value),
    todayX: x(dayOf(weeks[0]!)),
    askedX: x(dayOf(weeks[asked]!)),
    weekX: weeks.map((date) => x(dayOf(date))),
    grains: stacked(facts, y, place),
  };
}

/** Twenty values in bins as high as a grain, each bin a row to the right; none straddles the limit. */
function stacked(
  { runs, limit, asked }: RunsFacts,
  y: (value: number) => number,
  place: RunsPlace,
): RunsDrawn["grains"] {
  const limitY = limit === null ? place.bottom : y(limit.value);
  const bins = new Map<number, number>();
  const placed = at(runs, asked).map((value) => {
    const above = limit !== null && value > limit.value;
    // Bins are counted from the limit, so that each lies on one side of it.
    const bin = above
      ? Math.max(0, Math.floor((limitY - y(value)) / place.grain))
      : -1 - Math.max(0, Math.floor((y(value) - limitY) / place.grain));
    const upwards = limit === null ? Math.floor((place.bottom - y(value)) / place.grain) : bin;
    const row = bins.get(upwards) ?? 0;
    bins.set(upwards, row + 1);
    return { row, y: limitY - (upwards + 0.5) * place.grain, above };
  });
  const apart = Math.min(place.grain, place.stack / Math.max(1, ...bins.values()));
  return placed.map(({ row, y: height, above }) => ({
    x: place.right + 16 + (row + 0.5) * apart,
    y: height,
    above,
  }));
}
