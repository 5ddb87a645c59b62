/** Leaving home as `feeding --from --to --json` prints it. */
import type { HolidayJson } from "../../contract/output/feeding.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { careDateOutputOf } from "../almanac/output.ts";
import type { Sentence } from "../sentence.ts";
import { STATEMENT } from "../statement.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { sentenceData, toldWorkings, workingsById } from "../told-workings.ts";
import { ENGINE_VERSION } from "../version.ts";
import { holidayDates } from "./care-dates.ts";
import type { HolidayOutput } from "./holiday.ts";
import { packingOf } from "./packing.ts";

/** @param workings of the runs' own figures */
export function holidayJsonOf(
  facts: TankFacts,
  outcome: HolidayOutput,
  workings: TankAnswers["workings"],
  today: string,
): HolidayJson {
  const { from, to, sitterEvery, days, finding, ways } = outcome;
  const packing = packingOf(facts, outcome);
  const { weighed, portion, food, bags, feedOn, short } = packing;
  const told: Sentence = [
    ...finding,
    ...ways.flatMap(({ way: _, ...numbers }) => Object.values(numbers)),
    ...[portion, bags, ...short.map(({ lasts }) => lasts)],
  ];
  return {
    ...{ schema: "grazewell.holiday/1", engine: ENGINE_VERSION },
    tank: { name: facts.name, as_of: facts.asOf },
    ...{ from, to, days, sitter_every_days: sitterEvery, finding: sentenceData(finding) },
    ways: ways.map(({ way, nitrate, phosphate, ammonia, film, lost }) => ({
      ...{ way, nitrate_mg_per_l: nitrate, phosphate_mg_per_l: phosphate, ammonia_harms: ammonia },
      ...{ film_mg_c_per_m2: film, lost_heads: lost },
    })),
    packing: {
      ...{ weighed, portion, food, portions: bags, feed_on: [...feedOn] },
      may_not_last: short.map(({ name, lasts }) => ({ name, lasts })),
    },
    dates: holidayDates(outcome, packing, today).map(careDateOutputOf),
    figures: toldWorkings([told], { ...workings, ...workingsById(packing.figures) }),
    statement: STATEMENT,
  };
}
