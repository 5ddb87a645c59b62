/**
 * Heads of one kind now, over all sets of rates: two worlds, one in which nothing but the catalogue's loss and age takes
 * heads, and one in which trouble may set in. Their ratio says whether more died than usually does: in a quiet tank it
 * passes k in at most one of k tanks, however often one looks. docs/model/heads.md, "When to ask".
 */
import { valueAt } from "../numeric/draws.ts";
import { log } from "../numeric/elementary.ts";
import { normalQuantile } from "../numeric/normal.ts";
import type { Spread } from "../types/estimate.ts";
import { headsAhead } from "./ahead.ts";
import {
  chanceOf,
  type Followed,
  follow,
  type Hypothesis,
  LifeScene,
  livingOf,
  lossPerDayAt,
} from "./follow.ts";
import { cameTo, type Life } from "./life.ts";
import type { HeadRates } from "./rates.ts";

export interface KindHeads {
  readonly life: Life;
  /** All that ever came, and those of them neither found dead nor moved out. */
  readonly came: number;
  readonly onRecord: number;
  /** Chance of each number of living heads now, 0 to those on record. */
  readonly living: readonly number[];
  /** Chance of each number by the catalogue's loss and age alone, nothing seen. */
  readonly byAgeAlone: readonly number[];
  /** Chance of each number of living heads in so many weeks. */
  readonly ahead: readonly { readonly weeks: number; readonly living: readonly number[] }[];
  /** Share lost in a year when no trouble is about, as the record leaves it. */
  readonly lossPerYear: Spread;
  /** Where in the band the chance of being seen lies, a standard normal score. */
  readonly seenScore: number;
  readonly trouble: Trouble;
}

export interface Trouble {
  /** How many times better trouble foretells the record than its absence does, in logarithms. */
  readonly logRatio: number;
  /** The highest that it ever was after an event. */
  readonly most: number;
  /** Day on which the record last spoke for trouble, ISO date; null where it never did. */
  readonly lastSpokeOn: string | null;
  /** Chance that trouble is about now, where it may be. */
  readonly now: number;
}

const AHEAD_WEEKS = [4, 12, 26] as const;

const evenScores = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));

const LOSS_SCORES = evenScores(7);
const COARSE_LOSS_SCORES = evenScores(3);
const TROUBLE_SCORES = evenScores(2);
const SEEN_SCORES = evenScores(3);
/** Of a keeper who does not write losses down, against one who does. */
const SELDOM_WRITTEN = 0.05;

interface World {
  readonly losses: readonly number[];
  readonly troubles: readonly (number | null)[];
}

function hypothesesOf(life: Life, rates: HeadRates, { losses, troubles }: World): Hypothesis[] {
  // Without a count that has a chance of its own nothing tells how well this keeper sees them.
  const counted = life.events.some((one) => one.kind === "counted" && one.how.kind === "chance");
  const seens = counted ? SEEN_SCORES : [0];
  const founds = [rates.found.central, rates.found.central * SELDOM_WRITTEN];
  const prior = 1 / (losses.length * troubles.length * seens.length * founds.length);
  return losses.flatMap((score) =>
    troubles.flatMap((troublePerDay) =>
      seens.flatMap((seenScore) =>
        founds.map((found) => ({
          ...{ lossPerDay: lossPerDayAt(life.animal, score), troublePerDay, seenScore, found, prior },
        })),
      ),
    ),
  );
}

interface Weighed {
  readonly one: Followed;
  readonly weight: number;
}

const mostOf = (values: readonly number[]): number => values.reduce((most, v) => Math.max(most, v), -1e300);

/** log of the mean chance of the record in a world, up to one of its events (or its end). */
function logMean(world: readonly Followed[], at: (one: Followed) => number): number {
  const most = mostOf(world.map(at));
  return most + log(world.reduce((sum, one) => sum + one.hypothesis.prior * chanceOf(at(one) - most, 0), 0));
}

export function headsOfKind(life: Life, rates: HeadRates): KindHeads {
  const scene = new LifeScene(life, rates);
  const quiet = hypothesesOf(life, rates, { losses: LOSS_SCORES, troubles: [null] }).map((hypothesis) =>
    follow(scene, hypothesis),
  );
  const troubles = TROUBLE_SCORES.map((score) => valueAt(rates.troubleLoss, score));
  const troubled = hypothesesOf(life, rates, { losses: COARSE_LOSS_SCORES, troubles }).map((hypothesis) =>
    follow(scene, hypothesis),
  );
  const most = mostOf([...quiet, ...troubled].map(({ logChance }) => logChance));
  const share = rates.troubleShare.central;
  const all = [...quiet, ...troubled].map((one) => ({
    one,
    weight:
      (one.hypothesis.troublePerDay === null ? 1 - share : share) *
      one.hypothesis.prior *
      chanceOf(one.logChance, most),
  }));
  const weighedOf = (world: readonly Followed[]) => all.filter(({ one }) => world.includes(one));
  const kept = heaviest(all);
  const later = new Map(kept.map(({ one }) => [one, headsAhead(one, scene, AHEAD_WEEKS)]));
  const living = mean(kept.map(({ one, weight }) => ({ chances: livingOf(one), weight })));
  return {
    life,
    came: cameTo(life),
    onRecord: living.length - 1,
    living,
    byAgeAlone: byAgeAloneOf(life, rates),
    ahead: AHEAD_WEEKS.map((weeks, i) => ({
      weeks,
      living: mean(kept.map(({ one, weight }) => ({ chances: later.get(one)![i]!, weight }))),
    })),
    lossPerYear: lossBand(weighedOf(quiet)),
    seenScore: averageOf(all, ({ hypothesis }) => hypothesis.seenScore),
    trouble: troubleOf(life, quiet, troubled, weighedOf(troubled)),
  };
}

/** Those that carry all but a thousandth of the weight. */
function heaviest(all: readonly Weighed[]): Weighed[] {
  const sum = all.reduce((total, { weight }) => total + weight, 0);
  return all.filter(({ weight }) => weight > sum * 1e-5);
}

function mean(parts: readonly { readonly chances: ArrayLike<number>; readonly weight: number }[]): number[] {
  const length = Math.max(...parts.map(({ chances }) => chances.length));
  const sums = Array.from({ length }, (_, i) =>
    parts.reduce((sum, { chances, weight }) => sum + weight * (chances[i] ?? 0), 0),
  );
  const all = sums.reduce((sum, part) => sum + part, 0);
  return sums.map((part) => part / all);
}

function averageOf(all: readonly Weighed[], of: (one: Followed) => number): number {
  const weights = all.reduce((sum, { weight }) => sum + weight, 0);
  return all.reduce((sum, { one, weight }) => sum + weight * of(one), 0) / weights;
}

/** What would be, had nobody looked: who came, who left, and the catalogue's loss. */
function byAgeAloneOf(life: Life, rates: HeadRates): number[] {
  const events = life.events.filter(({ kind }) => kind === "added" || kind === "moved_out");
  const unseen = new LifeScene({ ...life, events }, rates);
  const world = LOSS_SCORES.map((score) =>
    follow(unseen, {
      ...{ lossPerDay: lossPerDayAt(life.animal, score), troublePerDay: null, seenScore: 0, found: 0 },
      prior: 1 / LOSS_SCORES.length,
    }),
  );
  return mean(world.map((one) => ({ chances: livingOf(one), weight: one.hypothesis.prior })));
}

/** Weighted quantiles of the yearly loss, each point of the grid standing for its own stretch of the band. */
function lossBand(quiet: readonly Weighed[]): Spread {
  const points = LOSS_SCORES.map((_, i) => {
    const size = quiet.length / LOSS_SCORES.length;
    const own = quiet.slice(i * size, (i + 1) * size);
    const perDay = own[0]!.one.hypothesis.lossPerDay;
    return { share: 1 - (1 - perDay) ** 365.25, weight: own.reduce((sum, { weight }) => sum + weight, 0) };
  });
  const all = points.reduce((sum, { weight }) => sum + weight, 0);
  const at = (target: number): number => {
    let below = 0;
    let [lastShare, lastAt] = [points[0]!.share, 0];
    for (const { share, weight } of points) {
      const middle = (below + weight / 2) / all;
      if (middle >= target) {
        const part = middle > lastAt ? (target - lastAt) / (middle - lastAt) : 1;
        return lastShare + part * (share - lastShare);
      }
      [lastShare, lastAt] = [share, middle];
      below += weight;
    }
    return lastShare;
  };
  return { low: at(0.05), central: at(0.5), high: at(0.95) };
}

/** A step of the ratio that counts as the record speaking for trouble: half as much again. */
const SPOKE = log(1.5);

function troubleOf(
  { events }: Life,
  quiet: readonly Followed[],
  troubled: readonly Followed[],
  weights: readonly Weighed[],
): Trouble {
  const ratio = (at: (one: Followed) => number) => logMean(troubled, at) - logMean(quiet, at);
  let before = 0;
  let highest = 0;
  let lastSpokeOn: string | null = null;
  for (const [i, { on }] of events.entries()) {
    const after = ratio(({ course }) => course[i]!);
    if (after - before > SPOKE) lastSpokeOn = on;
    before = after;
    highest = Math.max(highest, after);
  }
  const share = ({ grids }: Followed) => grids[1]!.mass.reduce((sum, mass) => sum + mass, 0);
  return {
    logRatio: ratio(({ logChance }) => logChance),
    most: highest,
    lastSpokeOn,
    now: averageOf(weights, share),
  };
}

/**
 * The ratio, as a logarithm, from which on a tank of so many kinds is asked about. Were it the tenfold of the kinds, at
 * most one quiet tank in ten would ever pass it (Ville 1939). Three times the kinds is passed by fewer than one in ten of
 * invented quiet tanks as well, ill-seen and short-lived ones among them (table in docs/model/heads.md), and asks sooner.
 */
export const askFrom = (kinds: number): number => log(ASKED_TIMES * Math.max(1, kinds));
const ASKED_TIMES = 3;
/** Days for which a question stands after the record last spoke for it. */
export const ASKED_DAYS = 60;
