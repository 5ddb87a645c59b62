/** One twin experiment from seed to figures: plain numbers, so that they pass between threads. */

import { modelParameters } from "../../src/catalogue/index.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { quantile } from "../../src/engine/numeric/quantile.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { headsCounted } from "./counted.ts";
import { floorOf } from "./floor.ts";
import { threeForecasts } from "./forecasts.ts";
import { HABITS, type Habits, USUAL } from "./habits.ts";
import { recordOfKeeper } from "./keeper.ts";
import { type Held, heldBy, type Measured } from "./measures.ts";
import { OTHER_TRUTHS, OWN } from "./other-truths.ts";
import { twinFacts } from "./tank.ts";
import { type Truth, truthOf } from "./truth.ts";

type HeldOf = Readonly<Record<Measured | "heads", Held>>;

export interface TwinResult {
  readonly seed: number;
  readonly blind: HeldOf;
  readonly latest: HeldOf;
  readonly calibrated: HeldOf;
  /** The truth's own run, deaths drawn anew: no forecast comes nearer. */
  readonly floor: HeldOf;
  /** Heads as the heads page tells them. */
  readonly counted: Held;
  /** mg N a day that come in with the feed: truth, the middle of the members before and after, and the band after. */
  readonly inflow: {
    readonly truth: number;
    readonly before: number;
    readonly after: number;
    readonly low: number;
    readonly high: number;
  };
}

export function twin(seed: number, truthName: string, members = 160, habits: Habits = USUAL): TwinResult {
  const departure = [OWN, ...OTHER_TRUTHS].find(({ name }) => name === truthName);
  if (departure === undefined) throw new RangeError(`There is no truth "${truthName}"`);
  // The truth feeds by the pinch whatever the keeper knows of it.
  const unweighed = fedWithin(twinFacts(seed), USUAL.feedWithin);
  const truth = truthOf(unweighed, seed, departure);
  const facts = habits.feedWithin === USUAL.feedWithin ? unweighed : weighed(unweighed, truth, habits);
  const record = recordOfKeeper(truth, seed, departure, habits);
  const { blind, latest, calibrated, learned } = threeForecasts(facts, record, { count: members, seed });
  const after = inflowOf(learned, members);
  return {
    seed,
    blind: heldBy(blind, truth),
    latest: heldBy(latest, truth),
    calibrated: heldBy(calibrated, truth),
    floor: floorOf(truth, facts, seed),
    counted: headsCounted(facts, record, truth),
    inflow: {
      truth: truth.member.inputs.feed * truth.member.inputs.feedN,
      before: quantile(inflowOf(facts, members), 0.5),
      ...{ after: quantile(after, 0.5), low: quantile(after, 0.1), high: quantile(after, 0.9) },
    },
  };
}

export function habitsNamed(wanted: string): Habits {
  const found = HABITS.find(({ name }) => name === wanted);
  if (found === undefined) throw new RangeError(`There are no habits "${wanted}"`);
  return found;
}

/** A keeper who feeds by the pinch: what comes in is known within so many times either way. */
export const fedWithin = (facts: TankFacts, times: number): TankFacts => {
  const { central } = facts.feedGPerDay;
  return {
    ...facts,
    feedGPerDay: { ...facts.feedGPerDay, low: central / times, high: central * times },
  };
};

/** The keeper weighs what is fed: the truth's own grams, within a little. */
function weighed(facts: TankFacts, { member }: Truth, { feedWithin }: Habits): TankFacts {
  const perGram = facts.feedCMgPerG.central / member.inputs.feedC;
  const central = member.inputs.feed / perGram;
  return fedWithin({ ...facts, feedGPerDay: { ...facts.feedGPerDay, central } }, feedWithin);
}

const inflowOf = (facts: TankFacts, count: number): number[] =>
  drawMembers(facts, modelParameters, { count, seed: 1 }).map(({ inputs }) => inputs.feed * inputs.feedN);
