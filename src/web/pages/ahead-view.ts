/** The weeks ahead as a page tells them: which quantities, in which unit, against which limit, on which day. Pure. */
import type { TankAnswers } from "../../answers/tank-answers.ts";
import type { Reading } from "../../engine/types/tank.ts";
import { type RunsFacts, runsCount } from "../charts/twenty-runs-view.ts";
import { INTERESTS, type Interest, two } from "./interests.ts";

type Ahead = TankAnswers["ahead"];
type Outlook = Ahead["as_it_is"];
export type Chance = Outlook["chances"][number];
export type KindAhead = Outlook["kinds"][number];
type Quantity = Outlook["quantities"][number];

export interface RunsShown {
  readonly id: string;
  readonly facts: RunsFacts;
  readonly figure: string;
  /** Of the limit that it is held against. */
  readonly limitFigure: string | null;
  /** What it would take to tell this tank's own course; null where enough is known. */
  readonly missing: string | null;
}

/** Name of a quantity's chart, and of its file of numbers. */
export const aheadChart = (quantity: string): string => `ahead-${quantity}`;

/** @param asked week at which the runs are counted */
export function runsShown(ahead: Ahead, readings: readonly Reading[], asked: number): RunsShown[] {
  return INTERESTS.flatMap(({ id, per, unit, reading }): RunsShown[] => {
    const quantity = ahead.as_it_is.quantities.find((one) => one.id === id);
    if (quantity === undefined) return [];
    const chance = ahead.as_it_is.chances.find((one) => one.quantity === id);
    return [
      {
        id,
        figure: quantity.figure,
        limitFigure: chance?.figures.limit ?? null,
        missing: chance?.missing ?? null,
        facts: {
          name: quantity.label,
          unit,
          weeks: ahead.weeks,
          runs: scaled(quantity, per),
          readings: reading === undefined ? [] : ticks(readings, reading),
          limit: chance === undefined ? null : { value: two(chance.limit * per), words: chance.why },
          asked,
        },
      },
    ];
  });
}

/** The one on which the runs are furthest from one mind; of several, the first. */
export function openest(shown: readonly RunsShown[]): RunsShown | undefined {
  const apart = ({ facts }: RunsShown): number => {
    const { above, below } = runsCount(facts);
    return Math.min(above, below);
  };
  return [...shown].sort((a, b) => apart(b) - apart(a))[0];
}

const scaled = ({ runs }: Quantity, per: number): number[][] =>
  per === 1 ? runs : runs.map((run) => run.map((value) => value * per));

const ticks = (
  readings: readonly Reading[],
  [quantity, convert]: NonNullable<Interest["reading"]>,
): RunsFacts["readings"] =>
  readings.flatMap(({ quantity: of, value, on }) =>
    of === quantity && on !== null
      ? [{ date: on, low: Math.max(0, convert(value.low)), high: convert(value.high) }]
      : [],
  );

/** Week asked for: within the run, a quarter of a year where nothing was asked. */
export function weekAsked(asked: string | undefined, { weeks }: Ahead): number {
  const week = Number(asked);
  const last = weeks.length - 1;
  if (asked === undefined || !Number.isInteger(week) || week < 0) return Math.min(QUARTER, last);
  return Math.min(week, last);
}
const QUARTER = 13;

/** "film on glass" of `film_glass`. */
export const quantityName = ({ as_it_is: { quantities } }: Ahead, quantity: string): string =>
  quantities.find(({ id }) => id === quantity)?.label ?? quantity;

const POISON: ReadonlySet<string> = new Set(["tan", "nh3", "no2"]);

/** Chances that speak of this tank, the ones that matter first: poison before nutrients, likelier before rarer. */
export function knownChances({ as_it_is: { chances } }: Ahead): Chance[] {
  return chances
    .filter(({ missing }) => missing === null)
    .sort((a, b) => Number(POISON.has(b.quantity)) - Number(POISON.has(a.quantity)) || b.of_20 - a.of_20);
}

/** Lowest week of oxygen at dawn; null where too few runs hold any. */
export function lowestOxygen({ as_it_is: { dawn_oxygen_mg_per_l } }: Ahead) {
  const { q05, q50, q95 } = dawn_oxygen_mg_per_l;
  let lowest: { week: number; low: number; middle: number; high: number } | null = null;
  q50.forEach((middle, week) => {
    const [low, high] = [q05[week], q95[week]];
    if (middle === null || low == null || high == null) return;
    if (lowest === null || middle < lowest.middle) lowest = { week, low, middle, high };
  });
  return lowest as { week: number; low: number; middle: number; high: number } | null;
}
