/**
 * What every unknown does to a twin's readings, scores and weeks ahead: each score of the truth pushed a little, the
 * daybook's weeks and the four after run again. Deaths are expected, not drawn. For ceiling.ts.
 */
import { animals, modelParameters } from "../../src/catalogue/index.ts";
import { runWindow } from "../../src/engine/ahead/window.ts";
import { learnableNames } from "../../src/engine/calibration/names.ts";
import { windowOf } from "../../src/engine/calibration/window-of.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { scores } from "../../src/engine/numeric/draws.ts";
import { OWN_NAMES } from "../../src/engine/types/learned.ts";
import { nitrateToN, phosphateToP } from "../../src/engine/units/nutrients.ts";
import { USUAL } from "./habits.ts";
import { dayOn, happeningsOf, recordOfKeeper } from "./keeper.ts";
import { FLOORS, MEASURED, type Measured } from "./measures.ts";
import { fedWithin } from "./one.ts";
import { OWN } from "./other-truths.ts";
import { crewOf, DAYBOOK_DAYS, twinFacts } from "./tank.ts";
import { dayOf, FUTURE_DAYS, TRUTH_SEED, truthOf } from "./truth.ts";

/** Series looked at: on logarithms with a little added, or as scores. */
export const SERIES = [
  "tan",
  "no3",
  "po4",
  "film_glass",
  "film_rock",
  "film_sand",
  "hair_algae",
  "detritus_sand",
] as const;
export type Series = (typeof SERIES)[number];
export const NEAR_ZERO = { tan: 0.05, no3: 0.2, po4: 0.01 } as const;
/** A push of a score, for slopes. */
const PUSH = 0.1;

const scoreOf = (crop: number): number => {
  const x = Math.max(0, crop) ** 0.8;
  return (4 * x) / (x + 300 ** 0.8);
};

export interface Slopes {
  readonly names: readonly string[];
  /** By series and day: the value itself, and what a push of each name does to it. */
  readonly value: Readonly<Record<Series, readonly number[]>>;
  readonly slope: Readonly<Record<Series, readonly Float64Array[]>>;
  /** Of the logarithm of what comes in. */
  readonly inflow: Float64Array;
  /** Of each quantity four weeks after, as the tables of twins tell it. */
  readonly ahead: Readonly<Record<Measured, Float64Array>>;
}

type Days = Readonly<Record<Series, number[]>> & { readonly last: Record<Measured, number> };

export function slopesOf(seed: number): Slopes {
  const told = fedWithin(twinFacts(seed), USUAL.feedWithin);
  const truth = truthOf(told, seed, OWN);
  // The weeks after are run as days of a longer daybook.
  const { low, central, high } = told.ageDays;
  const older = { low: low + FUTURE_DAYS, central: central + FUTURE_DAYS, high: high + FUTURE_DAYS };
  const facts = { ...told, ageDays: { ...told.ageDays, ...older } };
  const { observations, happenings } = recordOfKeeper(truth, seed, OWN);
  const asOf = dayOn(DAYBOOK_DAYS + FUTURE_DAYS);
  const later = happeningsOf(truth.later, () => "later");
  const record = { observations, happenings: [...happenings, ...later], declined: [], asOf };
  const window = { ...windowOf({ ...facts, asOf }, record, animals, [])!, observed: [] };
  const names = learnableNames();
  const own: readonly string[] = OWN_NAMES;
  const at = names.map((name) => (own.includes(name) ? 0 : scores(name, 1, TRUTH_SEED + seed)[0]!));
  const rows = [at, ...names.map((_, k) => at.map((z, j) => (j === k ? z + PUSH : z)))];
  const learned = { ...facts, learned: { names, scores: rows, seed: TRUTH_SEED + seed, window } };
  const members = drawMembers(learned, modelParameters, { count: rows.length, seed });
  const kinds = crewOf(facts);
  const firstDay = DAYBOOK_DAYS + FUTURE_DAYS - window.days;
  const runs = members.map((member): Days => {
    const days = Object.fromEntries(SERIES.map((series) => [series, [] as number[]])) as Record<
      Series,
      number[]
    >;
    const last = {} as Record<Measured, number>;
    runWindow(member, kinds, learned, window, (day, y, { inputs }) => {
      const now = dayOf(y, { ...member, inputs }, kinds);
      if (day === window.days) for (const id of MEASURED) last[id] = Math.log(now[id] + FLOORS[id]);
      if (firstDay + day > DAYBOOK_DAYS) return;
      days.tan.push(Math.log(now.tan + NEAR_ZERO.tan));
      days.no3.push(Math.log(nitrateToN(now.no3) + NEAR_ZERO.no3));
      days.po4.push(Math.log(phosphateToP(now.po4) + NEAR_ZERO.po4));
      for (const film of ["film_glass", "film_rock", "film_sand"] as const)
        days[film].push(scoreOf(now[film]));
      days.hair_algae.push(scoreOf(now.hair_algae / 3));
      days.detritus_sand.push(scoreOf(now.detritus_sand / 2));
    });
    return { ...days, last };
  });
  const [first, ...pushed] = runs;
  const logIn = members.map(({ inputs }) => Math.log(inputs.feed * inputs.feedN));
  const by = (of: (run: Days) => number): Float64Array =>
    Float64Array.from(pushed, (run) => (of(run) - of(first!)) / PUSH);
  const each = <Key extends string, Value>(keys: readonly Key[], of: (key: Key) => Value) =>
    Object.fromEntries(keys.map((key) => [key, of(key)])) as Record<Key, Value>;
  return {
    ...{ names, value: first! },
    slope: each(SERIES, (series) => first![series].map((_, day) => by((run) => run[series][day]!))),
    inflow: Float64Array.from(logIn.slice(1), (value) => (value - logIn[0]!) / PUSH),
    ahead: each(MEASURED, (id) => by(({ last }) => last[id])),
  };
}
