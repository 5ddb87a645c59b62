/**
 * What the readings say, quantity by quantity, the most pressing first: danger before limits, limits before changes. Pure;
 * of a long record only the last 90 days are paired, so a page may wait for it. docs/model/trends.md
 */
import type { QuantityTrend, TrendsOutput } from "../../contract/output/trends.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import { atOnce, type Steps } from "../../contract/steps.ts";
import type { ShownIn } from "../../contract/tank-file/shown-in.ts";
import { lineOn } from "../../engine/trends/line.ts";
import { daysFrom, seriesOf } from "../../engine/trends/series.ts";
import { STALE_DAYS, type Trend, trendOf } from "../../engine/trends/trend.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import type { ReadingSeen } from "../../engine/types/record.ts";
import { withConfidence } from "../figures/confidence.ts";
import type { RecordScene, Said } from "../record-scene.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import { chanceWord } from "../words.ts";
import { trendAdvice } from "./advice.ts";
import { trendFigures } from "./figures.ts";
import { type Happened, happenedIn } from "./happened.ts";
import { limitsOf, type TrendLimit } from "./limits.ts";
import { pressing } from "./pressing.ts";
import { type TrendQuantity, trendQuantities } from "./quantities.ts";
import { marksOf } from "./thin.ts";
import { sentencesOf, type Untold } from "./words.ts";

export type { TrendsOutput };

export interface TrendOptions {
  /** The keeper's units; those of a tank file's names where left out. */
  readonly shown?: ShownIn;
  /** What is drawn: four months, or all there is. */
  readonly span?: "recent" | "all";
}

/** Days drawn unless all are asked for: a mark a day is what a phone lays out without a halt. */
const RECENT_DAYS = 120;
const SEED = 1;
/** Days about a change that the daybook is asked for. */
const NEAR_DAYS = 3;

export const trendsOf = (scene: RecordScene, options: TrendOptions = {}): Said<TrendsOutput> =>
  atOnce(trendsInSteps(scene, options));

/** A step for each quantity: of ten years of readings one takes some hundredths of a second. */
export function* trendsInSteps(scene: RecordScene, options: TrendOptions = {}): Steps<Said<TrendsOutput>> {
  const { record, today, facts } = scene;
  const byQuantity = new Map<string, ReadingSeen[]>();
  for (const one of record.observations) {
    if (one.kind !== "reading") continue;
    const same = byQuantity.get(one.quantity);
    if (same === undefined) byQuantity.set(one.quantity, [one]);
    else same.push(one);
  }
  const happened = happenedIn(record);
  const all = trendQuantities(options.shown ?? null);
  const told: { readonly output: QuantityTrend; readonly figures: readonly Figure[] }[] = [];
  for (const quantity of all) {
    yield;
    const readings = byQuantity.get(quantity.reading) ?? [];
    const limits = limitsOf(quantity.id, quantity.fromNamed);
    const trend = trendOf({
      series: seriesOf(readings, today, quantity.scale),
      events: happened
        .filter(({ asked }) => asked)
        .map(({ on, entry }) => ({ day: daysFrom(today, on), entry })),
      ...{ limits, seed: SEED },
    });
    if (trend === null) continue;
    const output = outputOf(
      trend,
      { quantity, limits, happened, today, count: readings.length },
      options.span ?? "recent",
    );
    told.push({ output, figures: trendFigures(trend, output) });
  }
  told.sort((a, b) => pressing(b.output) - pressing(a.output));
  const quantities = told.map(({ output }) => output);
  return {
    output: {
      ...{ schema: "grazewell.trends/1", engine: ENGINE_VERSION, tank: { name: facts.name, as_of: today } },
      quantities,
      unread: all.filter(({ id }) => quantities.every((one) => one.id !== id)).map(({ label }) => label),
      statement: STATEMENT,
    },
    figures: withConfidence(told.flatMap(({ figures }): readonly Figure[] => figures)),
    advice: trendAdvice(quantities, today),
  };
}

interface Told {
  readonly quantity: TrendQuantity;
  readonly limits: readonly TrendLimit[];
  readonly happened: readonly Happened[];
  readonly today: string;
  readonly count: number;
}

function outputOf(
  trend: Trend,
  { quantity, limits, happened, today, count }: Told,
  span: "recent" | "all",
): QuantityTrend {
  const { days, latest, line, window, usual, danger, enough, turn } = trend;
  const { id, label, unit } = quantity;
  const on = (day: number) => addDays(today, day);
  const figure = (what: string) => figureId.trend(id, what);
  const current = line !== null && latest.day >= -STALE_DAYS;
  const outliers = line?.outliers ?? [];
  const drawnDays = span === "all" ? days : days.filter(({ day }) => day > latest.day - RECENT_DAYS);
  const drawnFrom = drawnDays[0]!.on;
  const lineDays = line === null ? [] : along(window.fromDay, current ? 0 : latest.day);
  const untold: Untold = {
    ...{ id, label, unit, readings: count, days: days.length, first_on: days[0]!.on },
    latest: {
      ...{ on: latest.on, age_days: -latest.day, value: latest.value },
      ...{ censored: latest.censored, danger: latest.danger },
    },
    danger:
      danger === null
        ? null
        : {
            ...{ on: danger.point.on, value: danger.point.value, stands: danger.stands },
            entries: [...danger.point.entries],
          },
    way: trend.way,
    window: { from: on(window.fromDay), to: latest.on, days: window.days, why: window.why },
    per_week: line === null ? null : times(line.perDay, 7),
    rising_of_20: trend.risingOf20,
    lately: trend.lately,
    enough: enough === null ? null : { readings: enough.readings, not_before: on(enough.inDays) },
    today: line !== null && current ? rounded(noneAtLeast(lineOn(line, 0))) : null,
    usual:
      usual === null
        ? null
        : {
            ...rounded({ low: usual.from, central: usual.central, high: usual.to }),
            ...{ days: usual.days, latest: usual.latest, figure: figure("usual") },
          },
    limits: trend.crossings.map((crossing) => {
      const { why, parameter } = limits.find((one) => one.id === crossing.limit.id)!;
      const { side, value } = crossing.limit;
      return {
        ...{ side, value, why, parameter, of_20: crossing.of20, already_of_20: crossing.alreadyOf20 },
        within_days: crossing.withinDays,
        first_on:
          crossing.days === null
            ? null
            : {
                early: on(Math.round(crossing.days.low)),
                middle: on(Math.round(crossing.days.central)),
                late: on(Math.round(crossing.days.high)),
              },
        word: chanceWord(crossing.of20),
        figures: { limit: figure(`limit.${side}`), chance: figure(`chance.${side}`) },
      };
    }),
    changes: trend.changes.map((change, i) => {
      const per = change.shape === "bend" ? 7 : 1;
      const half = 1.645 * change.error;
      return {
        ...{
          on: on(change.day),
          shape: change.shape,
          asked: change.asked,
          figure: figure(`change.${i + 1}`),
        },
        by: times({ low: change.by - half, central: change.by, high: change.by + half }, per),
        happened: nearby(happened, today, change.day),
      };
    }),
    turn:
      turn === null
        ? null
        : {
            ...{ shape: turn.shape, on: on(turn.day), figure: figure("turn") },
            settled_on: turn.settledDay === null ? null : on(turn.settledDay),
          },
    outliers: outliers.map((point) => ({ on: point.on, value: point.value, entries: [...point.entries] })),
    line: line === null ? [] : lineDays.map((day) => ({ on: on(day), ...rounded(lineOn(line, day)) })),
    drawn: {
      ...{ from: drawnFrom, to: latest.on, step: trend.step },
      ...marksOf(drawnDays, new Set(outliers.map((point) => point.on))),
      happened: happened
        .filter((one) => one.on >= drawnFrom)
        .map(({ on: day, words }) => ({ on: day, words })),
    },
    figures: {
      slope: line === null ? null : figure("slope"),
      rising: line === null ? null : figure("rising"),
      today: current ? figure("today") : null,
    },
  };
  const { title, sentences } = sentencesOf(untold);
  return { ...untold, title, sentences: sentences.map((sentence) => [...sentence]) };
}

/** What could have changed the water within three days of a day, in the daybook's order. */
function nearby(happened: readonly Happened[], today: string, day: number): string[] {
  return happened
    .filter((one) => one.asked && Math.abs(daysFrom(today, one.on) - day) <= NEAR_DAYS)
    .map(({ words }) => words);
}

const LINE_POINTS = 24;
/** Days from one to another, evenly, both ends included. */
function along(from: number, to: number): number[] {
  const count = Math.max(1, Math.min(LINE_POINTS, to - from));
  const days = Array.from({ length: count + 1 }, (_, i) => Math.round(from + ((to - from) * i) / count));
  return [...new Set(days)];
}

const five = (value: number): number => (Number.isFinite(value) ? Number(value.toPrecision(5)) : value);
/** A straight line goes on below nothing; no quantity that is tested does. */
const noneAtLeast = ({ low, central, high }: Spread): Spread => ({
  low: Math.max(0, low),
  central: Math.max(0, central),
  high: Math.max(0, high),
});
const rounded = ({ low, central, high }: Spread): Spread => ({
  low: five(low),
  central: five(central),
  high: five(high),
});
const times = ({ low, central, high }: Spread, factor: number): Spread =>
  rounded({ low: low * factor, central: central * factor, high: high * factor });
