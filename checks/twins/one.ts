/** One twin experiment from seed to figures: plain numbers, so that they pass between threads. */

import { modelParameters } from "../../src/catalogue/index.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { quantile } from "../../src/engine/numeric/quantile.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { threeForecasts } from "./forecasts.ts";
import { recordOfKeeper } from "./keeper.ts";
import { type Held, heldBy, type Measured } from "./measures.ts";
import { OTHER_TRUTHS, OWN } from "./other-truths.ts";
import { twinFacts } from "./tank.ts";
import { truthOf } from "./truth.ts";

type HeldOf = Readonly<Record<Measured | "heads", Held>>;

export interface TwinResult {
  readonly seed: number;
  readonly blind: HeldOf;
  readonly latest: HeldOf;
  readonly calibrated: HeldOf;
  /** mg N a day that come in with the feed: truth, and the middle of the members before and after. */
  readonly inflow: { readonly truth: number; readonly before: number; readonly after: number };
}

export function twin(seed: number, truthName: string, members = 160): TwinResult {
  const departure = [OWN, ...OTHER_TRUTHS].find(({ name }) => name === truthName);
  if (departure === undefined) throw new RangeError(`There is no truth "${truthName}"`);
  const facts = unweighed(twinFacts(seed));
  const truth = truthOf(facts, seed, departure);
  const { blind, latest, calibrated, learned } = threeForecasts(
    facts,
    recordOfKeeper(truth, seed, departure),
    { count: members, seed },
  );
  return {
    seed,
    blind: heldBy(blind, truth),
    latest: heldBy(latest, truth),
    calibrated: heldBy(calibrated, truth),
    inflow: {
      truth: truth.member.inputs.feed * truth.member.inputs.feedN,
      before: inflowOf(facts),
      after: inflowOf(learned),
    },
  };
}

/** A keeper who feeds by the pinch: what comes in is known within a factor of two and a half. */
const unweighed = (facts: TankFacts): TankFacts => {
  const { central } = facts.feedGPerDay;
  return { ...facts, feedGPerDay: { ...facts.feedGPerDay, low: central / 2.5, high: central * 2.5 } };
};

const inflowOf = (facts: TankFacts): number =>
  quantile(
    drawMembers(facts, modelParameters, { count: 160, seed: 1 }).map(
      ({ inputs }) => inputs.feed * inputs.feedN,
    ),
    0.5,
  );
