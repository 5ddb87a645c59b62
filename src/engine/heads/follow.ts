/**
 * Heads of one kind followed from the first day to today under one set of rates: how likely each number is, and how
 * well the rates foretold what was seen. In the 72 hours after an arrival heads are updated but rates are not judged:
 * what dies then says something of the journey, not of the tank. docs/model/heads.md, "Following".
 */
import { valueAt } from "../numeric/draws.ts";
import { exp, expm1, log } from "../numeric/elementary.ts";
import { binomial } from "./chances.ts";
import {
  added,
  bodiesFound,
  countWeight,
  type Grid,
  gridOf,
  type HeadFate,
  leastWeight,
  living,
  mixed,
  movedOut,
  newcomersDied,
  passed,
  scaled,
  settled,
  total,
  weighed,
} from "./grid.ts";
import type { Life, LifeEvent } from "./life.ts";
import type { HeadRates } from "./rates.ts";
import { chanceAt } from "./seen.ts";

/** One set of rates. */
export interface Hypothesis {
  /** Loss of settled heads that have not outlived their kind, a day. */
  readonly lossPerDay: number;
  /** Further loss while trouble lasts, which may set in and end; null: none ever does. */
  readonly troublePerDay: number | null;
  /** Score of the chance of being seen within its band. */
  readonly seenScore: number;
  /** Chance that a death is found and written down on its day. */
  readonly found: number;
  /** Its share before anything was seen. */
  readonly prior: number;
}

export interface Followed {
  readonly hypothesis: Hypothesis;
  /** As things usually go, and while trouble lasts (left out where none ever does); together 1. */
  readonly grids: readonly Grid[];
  /** log of the chance of all that was seen. */
  readonly logChance: number;
  /** The same up to and with each event. */
  readonly course: readonly number[];
}

/** Days after an arrival that are the journey's. */
export const ARRIVAL_DAYS = 3;
/** Trouble sets in or ends at most once in so many days. */
const STEP_DAYS = 14;

class Follower {
  grids: Grid[];
  day = 0;
  logChance = 0;
  /** Day of the last arrival while its window is open. */
  arrived: number | null = null;
  private readonly scene: LifeScene;
  private readonly rates: HeadRates;
  private readonly hypothesis: Hypothesis;

  constructor(scene: LifeScene, hypothesis: Hypothesis) {
    this.scene = scene;
    this.rates = scene.rates;
    this.hypothesis = hypothesis;
    const start = gridOf(scene.life.before);
    this.grids = hypothesis.troublePerDay === null ? [start] : [start, scaled(start, 0)];
  }

  /** Up to a day; `bodies` are found on it. */
  advance(to: number, bodies: number): void {
    while (this.day < to) {
      const last = to - (bodies > 0 ? 1 : 0);
      const within = this.arrived === null ? STEP_DAYS : 1;
      const span = this.day < last ? Math.min(within, last - this.day) : 1;
      const found = this.day + span === to ? bodies : 0;
      this.stepOf(span, found);
    }
  }

  private stepOf(span: number, bodies: number): void {
    const { troublePerDay } = this.hypothesis;
    if (troublePerDay !== null) this.switchTrouble(span);
    const middle = this.day + span / 2;
    this.day += span;
    const sinceArrival = this.arrived === null ? null : this.day - this.arrived;
    this.learn((grid, regime) => this.lived(grid, regime, { span, bodies, middle, sinceArrival }));
    if (sinceArrival === null || sinceArrival < ARRIVAL_DAYS) return;
    this.grids = this.grids.map(settled);
    this.arrived = null;
  }

  private lived(
    grid: Grid,
    regime: number,
    step: {
      readonly span: number;
      readonly bodies: number;
      readonly middle: number;
      readonly sinceArrival: number | null;
    },
  ): Grid {
    const { span, bodies, middle, sinceArrival } = step;
    const { found } = this.hypothesis;
    const dies = -expm1(-this.rateOf(regime, middle));
    const late = found * this.rates.foundLate.central;
    // A doomed newcomer dies on one of the days of its window, each as likely.
    const newDies = sinceArrival === null ? 0 : 1 / (ARRIVAL_DAYS + 1 - Math.min(ARRIVAL_DAYS, sinceArrival));
    const afterBodies =
      bodies === 0
        ? grid
        : bodiesFound(grid, bodies, {
            settled: dies * found,
            newcomer: newDies * found,
            older: late,
          });
    const left = passed(afterBodies, fateOver(span, dies, found, bodies > 0 ? 0 : late));
    return newcomersDied(left, newDies, found);
  }

  private rateOf(regime: number, day: number): number {
    const { lossPerDay, troublePerDay } = this.hypothesis;
    const aged = lossPerDay * this.scene.agedOn(day);
    return regime === 0 ? aged : aged + (troublePerDay ?? 0);
  }

  private switchTrouble(span: number): void {
    const [usual, trouble] = this.grids as [Grid, Grid];
    const setsIn = -expm1(-this.rates.troubleSetsIn.central * span);
    const ends = -expm1(-this.rates.troubleEnds.central * span);
    this.grids = [mixed(usual, 1 - setsIn, trouble, ends), mixed(trouble, 1 - ends, usual, setsIn)];
  }

  /** Applies what happened or was seen; while the window of an arrival is open each course keeps its own weight. */
  private learn(change: (grid: Grid, regime: number) => Grid, judged = true): void {
    const closed = judged && this.arrived === null;
    const before = this.grids.map(total);
    const after = this.grids.map(change);
    const masses = after.map(total);
    const all = masses.reduce((sum, mass) => sum + mass, 0);
    if (closed) this.logChance += all > 0 ? log(all) : IMPOSSIBLE;
    this.grids = after.map((grid, regime) => {
      const mass = masses[regime]!;
      if (all <= 0 || mass <= 0) return before[regime]! <= 0 ? grid : impossible(grid, before[regime]!);
      const scale = closed ? 1 / all : before[regime]! / mass;
      return scaled(grid, scale);
    });
  }

  meet(event: LifeEvent): void {
    if (event.kind === "added") {
      const doomed = doomedOf(event.count, event.condition, this.rates);
      this.grids = this.grids.map((grid) => added(grid, event.count, doomed));
      this.arrived = this.day;
    } else if (event.kind === "moved_out") {
      this.learn((grid) => movedOut(grid, event.count));
    } else if (event.kind === "feared") {
      const odds = event.hides ? 1 : this.rates.fearedOdds.central;
      const weights = (onRecord: number) =>
        Array.from({ length: onRecord + 1 }, (_, alive) => (onRecord - alive >= event.count ? odds : 1));
      // A fear is no count: it moves the heads, and judges no rate.
      this.learn((grid) => weighed(grid, weights(grid.onRecord)), false);
    } else if (event.kind === "listed") {
      const weights = (onRecord: number) =>
        Array.from({ length: onRecord + 1 }, (_, alive) => (alive <= event.count ? 1 : AGAINST_THE_LIST));
      this.learn((grid) => weighed(grid, weights(grid.onRecord)), false);
    } else if (event.kind === "counted") {
      this.learn((grid) =>
        weighed(grid, this.scene.weightsOf(event, this.hypothesis.seenScore, grid.onRecord)),
      );
    }
  }
}

/** A life with what many sets of rates ask of it: worked out once. */
export class LifeScene {
  readonly life: Life;
  readonly rates: HeadRates;
  private readonly aged = new Map<number, number>();
  private readonly weights = new Map<LifeEvent, Map<number, number[]>>();

  constructor(life: Life, rates: HeadRates) {
    this.life = life;
    this.rates = rates;
  }

  /** How many times its kind's loss the heads there meet on a day. */
  agedOn(day: number): number {
    const known = this.aged.get(day) ?? agedBy(this.life, day, this.rates);
    this.aged.set(day, known);
    return known;
  }

  /** Of each number of living heads, by a count: heads on record are the same under all rates. */
  weightsOf(event: LifeEvent & { kind: "counted" }, seenScore: number, onRecord: number): number[] {
    const known = this.weights.get(event) ?? new Map<number, number[]>();
    this.weights.set(event, known);
    const weights = known.get(seenScore) ?? this.newWeights(event, seenScore, onRecord);
    known.set(seenScore, weights);
    return weights;
  }

  private newWeights(event: LifeEvent & { kind: "counted" }, seenScore: number, onRecord: number): number[] {
    const { seen, about, how } = event;
    if (how.kind === "at_least") return leastWeight(seen, about, onRecord);
    const mean = chanceAt(how.chance, seenScore);
    return countWeight(seen, about, onRecord, mean, this.rates.seenAlike.central);
  }
}

/** Weight of more heads than the keeper's own list has. */
const AGAINST_THE_LIST = 1e-3;
/** log of a chance that is none. */
const IMPOSSIBLE = -700;

/** What can't be, was: everyone on record is taken to live, and the count itself raises the question. */
const impossible = (grid: Grid, mass: number): Grid => scaled(gridOf(grid.onRecord), mass);

export function follow(scene: LifeScene, hypothesis: Hypothesis): Followed {
  const follower = new Follower(scene, hypothesis);
  const course: number[] = [];
  const { life } = scene;
  const { events } = life;
  for (const [i, event] of events.entries()) {
    const earlier = events[i - 1];
    if (event.kind === "found" && earlier?.kind === "found" && earlier.day === event.day) {
      course.push(follower.logChance);
      continue;
    }
    const bodies = event.kind === "found" ? bodiesOn(event.day, events) : 0;
    // Found on the day of what stands before it: one more day's worth of that day, no time passes.
    if (bodies > 0 && follower.day === event.day) follower.day -= 1;
    follower.advance(event.day, bodies);
    follower.meet(event);
    course.push(follower.logChance);
  }
  follower.advance(life.days, 0);
  return { hypothesis, grids: follower.grids, logChance: follower.logChance, course };
}

const bodiesOn = (day: number, events: readonly LifeEvent[]): number =>
  events.reduce((sum, one) => sum + (one.kind === "found" && one.day === day ? one.count : 0), 0);

/** What a head comes to in a span in which nothing is found, dying each day with the same chance. */
export function fateOver(span: number, dies: number, found: number, foundLate: number): HeadFate {
  const lives = (1 - dies) ** span;
  const staysHidden = (1 - foundLate) ** span;
  const stays = 1 - foundLate;
  const apart = 1 - dies - stays;
  // Sum over the day of death: a geometric series, unless dying and staying hidden are alike.
  let hidden = dies * (1 - found) * span * stays ** (span - 1);
  if (Math.abs(apart) > 1e-9) hidden = (dies * (1 - found) * (lives - staysHidden)) / apart;
  return { lives, hidden, staysHidden };
}

/** Chance that so many of a group of newcomers are doomed, 0 to all of them. */
export function doomedOf(
  count: number,
  condition: "lively" | "usual" | "weak" | null,
  rates: HeadRates,
): number[] {
  const dies = {
    lively: rates.arrivalLively,
    usual: rates.arrivalUsual,
    weak: rates.arrivalWeak,
  }[condition ?? "usual"].central;
  const bad = rates.badBagShare.central;
  return Array.from(
    { length: count + 1 },
    (_, doomed) =>
      (1 - bad) * binomial(doomed, count, dies) + bad * binomial(doomed, count, rates.badBagLoss.central),
  );
}

/** How many times its kind's loss the heads there meet on a day, by how long ago they came. */
function agedBy({ animal, before, events }: Life, day: number, { ageMost }: HeadRates): number {
  const { central, high } = animal.lifespanYears;
  let heads = 0;
  let sum = 0;
  const take = (count: number, came: number): void => {
    const years = (day - came) / 365.25;
    const old = high > central ? (years - central) / (high - central) : years > central ? 1 : 0;
    heads += count;
    sum += count * (1 + (ageMost.central - 1) * Math.min(1, Math.max(0, old)));
  };
  take(before, 0);
  for (const event of events) if (event.kind === "added" && event.day <= day) take(event.count, event.day);
  return heads === 0 ? 1 : sum / heads;
}

/** Loss a day at a score within the catalogue's band of yearly losses. */
export function lossPerDayAt(
  { annualLossFraction: { low, central, high } }: Life["animal"],
  score: number,
): number {
  const daily = (share: number): number => -log(1 - Math.min(0.999, share)) / 365.25;
  return valueAt({ low: daily(low), central: daily(central), high: daily(high) }, score);
}

/** Chance of each number of living heads; sums to 1. */
export function livingOf({ grids }: Pick<Followed, "grids">): Float64Array {
  const [first, ...rest] = grids.map(living);
  return rest.reduce((sum, other) => sum.map((chance, i) => chance + other[i]!), first!);
}

export const chanceOf = (logChance: number, most: number): number => exp(logChance - most);
