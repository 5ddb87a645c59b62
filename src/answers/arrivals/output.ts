/** Arrivals as `arrivals --json` prints them. */
import type { ArrivalsOutput } from "../../contract/output/arrivals.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { leftFigureId, medicineFigures } from "../medicines/after.ts";
import { coursesOf } from "../medicines/courses.ts";
import { type Told, told } from "../sentence.ts";
import { STATEMENT } from "../statement.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { toldWorkings, workingsById } from "../told-workings.ts";
import { ENGINE_VERSION } from "../version.ts";
import { chance, dryFood } from "../words.ts";
import { BEFORE_PAYING } from "./before-paying.ts";
import { type Fallow, fallowOf } from "./fallow.ts";
import {
  apartIn,
  FALLOW_DAYS,
  HOSPITAL_TANK,
  type Quarantined,
  quarantineDays,
  REFUSES_FOOD,
  SIGNS_OF_DISEASE,
} from "./quarantine.ts";

interface Asked {
  readonly facts: TankFacts;
  readonly record: Pick<TankRecord, "happenings">;
  /** ISO dates. */
  readonly today: string;
  readonly from: string;
  readonly group: Quarantined;
}

/** @param fallow answers of the fallow what-if; null where nobody asked for it */
export function arrivalsOutputOf(
  { facts, record, today, from, group }: Asked,
  fallow: Pick<TankAnswers, "ahead" | "waves" | "workings"> | null,
): ArrivalsOutput {
  const courses = coursesOf(facts.medicines, record, today);
  const medicines = courses.map((course) => ({
    ...{ typed: course.typed, ingredient: course.medicine?.id ?? null },
    ...{ started_on: course.startedOn, ended_on: course.endedOn, crew_back_on: course.backOn },
    left: told(`${Math.round(100 * course.left)} %`, leftFigureId(course)),
  }));
  const hungry = fallow === null ? null : fallowTold(fallowOf(fallow, facts));
  const numbers: Told[] = [
    ...medicines.map(({ left }) => left),
    ...(hungry?.crew ?? []).map(({ half_starve }) => half_starve),
    ...(hungry?.fed_by_hand ?? []).map(({ dry_feed_a_day }) => dry_feed_a_day),
  ];
  return {
    ...{ schema: "grazewell.arrivals/1", engine: ENGINE_VERSION },
    tank: { name: facts.name, as_of: today },
    before_paying: BEFORE_PAYING.map(({ id, name, look, leave }) => ({ id, name, look: [...look], leave })),
    apart: apartIn(record).map((one) => ({ ...one })),
    quarantine: { group, from, days: quarantineDays(group, from).map((day) => ({ ...day })) },
    ...{ refuses_food: [...REFUSES_FOOD], signs_of_disease: [...SIGNS_OF_DISEASE] },
    ...{ hospital_tank: [...HOSPITAL_TANK], medicines, fallow: hungry },
    figures: toldWorkings([numbers], {
      ...fallow?.workings,
      ...workingsById(courses.flatMap(medicineFigures)),
    }),
    statement: STATEMENT,
  };
}

const fallowTold = ({ kinds, fed }: Fallow): NonNullable<ArrivalsOutput["fallow"]> => ({
  days: FALLOW_DAYS,
  crew: kinds.map(({ id, name, heads, starvesOf20, figure }) => ({
    ...{ id, name, heads, half_starve: told(chance(starvesOf20), figure) },
  })),
  fed_by_hand: fed.map(({ name, dryFeedMg, figure }) => ({
    ...{ name, dry_feed_a_day: told(dryFood(dryFeedMg), figure) },
  })),
});
