/**
 * What a record's observations are to the smoother: a number on a scale where errors are about normal, its error, and
 * how a run's state would have shown it. Nutrients on log(x + a little), growths on their score of 0 to 4, heads as
 * heads, days to wipe as the crop's distance from the keeper's threshold. docs/model/calibration.md, "Observations".
 */
import type { CrewKind } from "../ahead/crew.ts";
import { NEAR_ZERO, type Nutrient, QUANTITY_OF } from "../ahead/window.ts";
import { D, FF, FG, FR, FS, headsAt, NO2, NO3, PO4, TAN } from "../balance/pools.ts";
import type { World } from "../balance/world.ts";
import type { HeadRates } from "../heads/rates.ts";
import { chanceAt, seenOf } from "../heads/seen.ts";
import type { MemberLearned } from "../larder/members.ts";
import { exp, log } from "../numeric/elementary.ts";
import { daysBetween } from "../stocking/suitability.ts";
import type { Spread } from "../types/estimate.ts";
import type { LearnedWindow } from "../types/learned.ts";
import type { FilmBack, GrowthSeen, HeadsSeen, ReadingSeen, TankRecord } from "../types/record.ts";
import { grouped } from "./grouped.ts";
import { JUDGEMENT } from "./judgement.ts";

/** Groups whose influence is told. */
export const GROUPS = [
  "tan",
  "no2",
  "no3",
  "po4",
  "film_glass",
  "film_rock",
  "film_sand",
  "hair_algae",
  "detritus_sand",
  "film_back",
  "heads",
] as const;
export type Group = (typeof GROUPS)[number];

export interface Observed {
  readonly entry: string;
  readonly on: string;
  /** Day of the window. */
  readonly day: number;
  readonly group: Group;
  /** Observations of one series share what the model gets wrong for weeks. */
  readonly series: string;
  readonly value: number;
  readonly error: number;
  /** What the model gets wrong for weeks, one standard deviation on the same scale. */
  readonly model: number;
  readonly censored: "below" | "above" | null;
  /** How many observations it stands for. */
  readonly of: number;
  /** What the run would have shown. */
  readonly shown: (state: Float64Array, world: World, own: MemberLearned["own"]) => number;
}

/** What one kit and one eye always add. */
export const BIAS_OF = {
  ...{ kit: JUDGEMENT.kitBias, eye: JUDGEMENT.eyeBias, dust: JUDGEMENT.dustBias },
} as const;
/** Crop at which a keeper wipes, mg C/m2. @source alg.film_visible_C */
const WIPED_AT_MG_C = 150;
const Z90_WIDTH = 2 * 1.6448536269514722;
/** More of one series than this are taken together, by time. */
const MOST_IN_SERIES = 40;

/** Score of a crop, 0 to 4. Hair algae counts a third, detritus on sand a half. */
const HALF_SCORE = 300 ** 0.8;
function scoreOfCrop(mgCPerM2: number): number {
  const x = Math.max(0, mgCPerM2) ** 0.8;
  return (4 * x) / (x + HALF_SCORE);
}

/** Scale of a logistic law with the standard deviation of a score. */
const SCORE_SCALE = (JUDGEMENT.scoreError * Math.sqrt(3)) / Math.PI;
const atLeastNought = (score: number): number =>
  score > 0
    ? score + SCORE_SCALE * log(1 + exp(-score / SCORE_SCALE))
    : SCORE_SCALE * log(1 + exp(score / SCORE_SCALE));
/**
 * Mean of the scores that an eye gives which errs about this one: nobody gives less than 0 or more than 4, so near the
 * ends it errs inwards. A tank of hardly any film is given 0 or 1, never -1.
 */
const scoreGiven = (score: number): number => atLeastNought(score) - atLeastNought(score - MOST_SCORE);
const MOST_SCORE = 4;

/** Crop of hair algae that a score of 1 or more stands for; of 4 there is no upper end, and 3.75 is taken. */
const hairOfScore = (score: number): number => {
  const at = Math.min(score, 3.75);
  return (300 * (at / (4 - at)) ** (1 / 0.8)) / CROPS.hair_algae.times;
};

/** A sighting older than this tells nothing of today. Judgement. */
const SEEN_LATELY_DAYS = 28;

/** The latest sighting of hair algae, where there was any; a start that has next to none of it contradicts the keeper. */
export function hairSeenIn(
  { observations }: TankRecord,
  { from, days }: Pick<LearnedWindow, "from" | "days">,
): Pick<LearnedWindow, "hairSeen"> {
  const last = observations
    .filter((seen): seen is GrowthSeen => seen.kind === "growth" && seen.growth === "hair_algae")
    .reduce<GrowthSeen | null>(
      (latest, seen) => (latest !== null && latest.on > seen.on ? latest : seen),
      null,
    );
  if (last === null || last.score < 1) return {};
  const day = daysBetween(from, last.on);
  if (day < 0 || day > days || days - day > SEEN_LATELY_DAYS) return {};
  return { hairSeen: { day, mgCPerM2: hairOfScore(last.score) } };
}

const NUTRIENTS = Object.keys(QUANTITY_OF) as Nutrient[];
const POOL = { tan: TAN, no2: NO2, no3: NO3, po4: PO4 } as const;
const KIT_NAME = { tan: "kitTan", no2: "kitNo2", no3: "kitNo3", po4: "kitPo4" } as const;

const CENSORED: readonly Observed["censored"][] = [null, "below", "above"];

/** What a head count is read with. */
export interface Counting {
  readonly kinds: readonly CrewKind[];
  readonly rates: HeadRates;
  readonly lightHours: number;
}

/** Those observations that a run can be compared with, in one order whatever order they were kept in. */
export function observedIn(
  { observations }: TankRecord,
  window: Pick<LearnedWindow, "from" | "days">,
  counted: Counting,
): Observed[] {
  const all = observations.flatMap((seen): Observed[] => {
    const day = daysBetween(window.from, seen.on);
    if (day < 0 || day > window.days) return [];
    switch (seen.kind) {
      case "reading":
        return readingOf(seen, day);
      case "growth":
        return growthOf(seen, day);
      case "film_back":
        return filmBackOf(seen, day);
      case "heads":
        return headsOf(seen, day, counted);
      default:
        return [];
    }
  });
  all.sort(
    (a, b) =>
      GROUPS.indexOf(a.group) - GROUPS.indexOf(b.group) ||
      (a.series < b.series ? -1 : a.series > b.series ? 1 : 0) ||
      a.day - b.day ||
      a.value - b.value ||
      a.error - b.error ||
      CENSORED.indexOf(a.censored) - CENSORED.indexOf(b.censored),
  );
  return [...grouped(all, ({ series }) => series).values()].flatMap((series) => thinned(series, window.days));
}

function readingOf({ entry, on, quantity, value, censored, step }: ReadingSeen, day: number): Observed[] {
  const nutrient = NUTRIENTS.find((name) => QUANTITY_OF[name] === quantity);
  if (nutrient === undefined) return [];
  const { absolute, relative } = JUDGEMENT.kit[nutrient];
  const rounding = (step ?? 0) * SD_OF_ONE_STEP;
  const c = Math.max(NEAR_ZERO[nutrient], JUDGEMENT.linearBelow * hypotenuse(absolute, rounding));
  const shownAt = censored === null ? value.central : kitEndOf(value, censored, step);
  if (!(shownAt >= 0) || !Number.isFinite(shownAt)) return [];
  const scatter = Math.max(absolute, relative * shownAt);
  const { back, times } = JUDGEMENT.kitEnd;
  const at =
    censored === null ? shownAt : Math.max(0, shownAt + (censored === "below" ? -back : back) * scatter);
  const own = (log(Math.max(0, value.high) + c) - log(Math.max(0, value.low) + c)) / Z90_WIDTH;
  const kit = (censored === null ? hypotenuse(scatter, rounding) : times * scatter) / (at + c);
  const pool = POOL[nutrient];
  const bias = KIT_NAME[nutrient];
  return [
    {
      ...{ entry, on, day, group: nutrient, series: nutrient, censored, of: 1 },
      value: log(at + c),
      error: censored === null && Number.isFinite(own) ? Math.max(kit, own) : kit,
      model: (JUDGEMENT.modelError[nutrient] * (at + NEAR_ZERO[nutrient])) / (at + c),
      shown: (y, world, { [bias]: z }) =>
        log(Math.max(0, y[pool]! / world.inputs.V) * exp(BIAS_OF.kit * z) + c),
    },
  ];
}

/** The platform's own differs in the last bit from engine to engine. */
const hypotenuse = (a: number, b: number): number => Math.sqrt(a * a + b * b);

/** Standard deviation of what is rounded to whole steps, in steps: even over one of them. */
const SD_OF_ONE_STEP = 1 / Math.sqrt(12);

/**
 * Where a kit that shows nothing begins to show something: half-way to its first step, as a keeper takes the nearer colour.
 * Any other limit stands where it was typed.
 */
function kitEndOf({ low, high }: Spread, censored: "below" | "above", step: number | null): number {
  if (censored === "above") return low;
  return step !== null && Math.abs(high - step) <= 1e-9 * step ? high / 2 : high;
}

const CROPS = {
  film_glass: { pool: FG, area: "Ag", times: 1, eye: "eyeFilm", bias: BIAS_OF.eye },
  film_rock: { pool: FR, area: "Ar", times: 1, eye: "eyeFilm", bias: BIAS_OF.eye },
  film_sand: { pool: FS, area: "As", times: 1, eye: "eyeSand", bias: BIAS_OF.eye },
  hair_algae: { pool: FF, area: "Ar", times: 1 / 3, eye: "eyeHair", bias: BIAS_OF.eye },
  detritus_sand: { pool: D, area: "As", times: 1 / 2, eye: "eyeDust", bias: BIAS_OF.dust },
} as const;

function growthOf({ entry, on, growth, score }: GrowthSeen, day: number): Observed[] {
  if (!(growth in CROPS)) return [];
  const group = growth as keyof typeof CROPS;
  const { pool, area, times, eye, bias } = CROPS[group];
  return [
    {
      ...{ entry, on, day, group, series: group, censored: null, of: 1 },
      value: score,
      error: JUDGEMENT.scoreError,
      model: JUDGEMENT.modelError[group],
      shown: (y, world, own) =>
        scoreGiven(scoreOfCrop((times * y[pool]!) / Math.max(1e-3, world.inputs[area])) + bias * own[eye]),
    },
  ];
}

/** The glass needed wiping on that day: its crop is what this keeper wipes at. */
function filmBackOf({ entry, on }: FilmBack, day: number): Observed[] {
  return [
    {
      ...{ entry, on, day, group: "film_back", series: "film_back", censored: null, of: 1 },
      value: log(WIPED_AT_MG_C),
      error: JUDGEMENT.filmBackError,
      model: JUDGEMENT.modelError.film_back,
      shown: (y, world, own) => log(y[FG]! / world.inputs.Ag + 1) - JUDGEMENT.wipedAtBias * own.wipedAt,
    },
  ];
}

/** A count that says "at least so many" (by day, of kinds that are buried or out at night) teaches nothing here. */
function headsOf(counted: HeadsSeen, day: number, { kinds, rates, lightHours }: Counting): Observed[] {
  const s = kinds.findIndex(({ animal }) => animal.id === counted.animal);
  if (s < 0) return [];
  const { entry, on, animal, seen, about } = counted;
  const how = seenOf(kinds[s]!.animal, { ...counted, lightHours }, rates);
  if (how.kind === "at_least") return [];
  const { chance } = how;
  const there = Math.max(1, seen / chance.central);
  // No two nights are alike: the spread of a beta-binomial, as the head count has it.
  const alike = 1 + (there - 1) / (rates.seenAlike.central + 1);
  const spread = there * chance.central * (1 - chance.central) * alike;
  return [
    {
      ...{ entry, on, day, group: "heads", series: `heads ${animal}`, censored: null, of: 1 },
      value: seen,
      error: Math.sqrt(JUDGEMENT.headsError ** 2 + spread) * (about ? 1.5 : 1),
      model: JUDGEMENT.modelError.heads,
      shown: (y, _, own) => chanceAt(chance, own.eyeHeads) * y[headsAt(s)]!,
    },
  ];
}

/** At most so many of a series: the median of each stretch of time stands for all of it. */
function thinned(series: readonly Observed[], days: number): readonly Observed[] {
  if (series.length <= MOST_IN_SERIES) return series;
  const width = Math.ceil((days + 1) / MOST_IN_SERIES);
  return [...grouped(series, ({ day }) => Math.floor(day / width)).values()].map((some) => {
    const middle = [...some].sort((a, b) => a.value - b.value)[(some.length - 1) >> 1]!;
    // A median of n is about as sure as a mean of two thirds as many.
    return {
      ...middle,
      of: some.length,
      error: middle.error / Math.sqrt(Math.max(1, (2 * some.length) / 3)),
    };
  });
}
