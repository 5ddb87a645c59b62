/** Four weeks from today as three keepers would have them: without the daybook, with its last readings, and calibrated. */
import { TABLE } from "../../src/answers/figures/table.ts";
import { animals, modelParameters } from "../../src/catalogue/index.ts";
import { type Forecast, finish, forecast } from "../../src/engine/ahead/forecast.ts";
import { calibrate } from "../../src/engine/calibration/calibrate.ts";
import { headRates } from "../../src/engine/heads/rates.ts";
import { drawMembers, type EnsembleOptions } from "../../src/engine/larder/members.ts";
import type { GrowthSeen, ReadingSeen, TankRecord } from "../../src/engine/types/record.ts";
import type { Cover, Reading, TankFacts } from "../../src/engine/types/tank.ts";
import { crewOf } from "./tank.ts";
import { FUTURE_DAYS } from "./truth.ts";

export interface Three {
  /** From the facts alone. */
  readonly blind: Forecast;
  /** From the facts and the daybook's latest readings and scores, as before calibration. */
  readonly latest: Forecast;
  readonly calibrated: Forecast;
  readonly learned: TankFacts;
}

export function threeForecasts(
  facts: TankFacts,
  record: TankRecord,
  { count: members, seed }: EnsembleOptions,
): Three {
  const told = withLatest(facts, record);
  const { learned } = finish(
    calibrate({
      facts: told,
      record,
      table: modelParameters,
      rates: headRates(TABLE),
      animals,
      members,
      seed,
    }),
  );
  const calibrated = { ...told, learned };
  return {
    blind: ahead(facts, members, seed),
    latest: ahead(told, members, seed),
    calibrated: ahead(calibrated, members, seed),
    learned: calibrated,
  };
}

const ahead = (facts: TankFacts, count: number, seed: number): Forecast =>
  finish(
    forecast({
      ...{ facts, kinds: crewOf(facts), events: [], days: FUTURE_DAYS, seed },
      members: drawMembers(facts, modelParameters, { count, seed }),
    }),
  );

const COVER_BY_SCORE: readonly Cover[] = ["none", "trace", "patches", "patches", "covered"];

/** Facts with what the daybook last said, as a loaded tank has them. */
export function withLatest(facts: TankFacts, { observations }: TankRecord): TankFacts {
  const readings = observations.filter((seen): seen is ReadingSeen => seen.kind === "reading");
  const growths = observations.filter((seen): seen is GrowthSeen => seen.kind === "growth");
  return {
    ...facts,
    readings: readings.map(
      ({ quantity, value, censored, on }): Reading => ({ quantity, value, censored, on }),
    ),
    sightings: Object.fromEntries(growths.map(({ growth, score }) => [growth, COVER_BY_SCORE[score]!])),
  };
}
