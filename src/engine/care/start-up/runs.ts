/**
 * How a start-up goes on: members of the ensemble run from today, day by day, with filters fed as is common practice
 * (nothing lives there), or by what the animals give (something does). A run is done on the day that a dose was gone
 * within a day and nitrite with it, or, stocked, once both stayed unreadable. docs/model/start-up.md.
 * Limits: what is dosed is the rule's, not the keeper's; deaths are not drawn.
 */
import { careEvents } from "../../ahead/care.ts";
import type { CrewKind } from "../../ahead/crew.ts";
import { LAMP_DAY } from "../../ahead/run-up.ts";
import { standingOf, worldOf } from "../../ahead/start.ts";
import type { TankEvent } from "../../balance/events.ts";
import { NO2, NO3, TAN } from "../../balance/pools.ts";
import { run, type StepRule } from "../../balance/run.ts";
import type { World } from "../../balance/world.ts";
import type { Member } from "../../larder/members.ts";
import type { TankFacts } from "../../types/tank.ts";
import { START_UP } from "./judgement.ts";

/**
 * Fine enough for a day that begins with a dose: many bacteria of a small half-saturation take a milligram up within
 * hours, and a longer step overshoots into nitrite that is not there.
 */
const STEPS: StepRule = { kind: "graded", first: 0.02, growth: 1.6, most: 0.25 };
/** Once it is done the filter is kept alive: a dose so many days apart. */
const KEPT_FED_EVERY_DAYS = 3;

export interface StartUpPlan {
  readonly facts: TankFacts;
  readonly kinds: readonly CrewKind[];
  /** Something lives there: no ammonia is dosed. */
  readonly stocked: boolean;
}

/** mg N/L at a midnight. */
export interface Night {
  readonly tan: number;
  readonly no2: number;
  readonly no3: number;
}

/** Midnights of one version of the tank from today on, for as long as they are asked for. */
function* nights(
  drawn: Member,
  { facts, kinds, stocked }: StartUpPlan,
): Generator<Night & { done: boolean }> {
  const { member, state: start } = standingOf(drawn, kinds, facts);
  const world = worldOf(member, kinds, facts.phScale, "expected");
  // Nobody eats and nobody is fed in an empty tank, whatever a usual tank of its size gets.
  if (!stocked) world.set({ feed: 0, fish: 0 });
  const lampOn = Math.max(0, LAMP_DAY[facts.rockStart.value] - Math.round(Math.max(0, drawn.ageDays)));
  if (lampOn > 0) world.set({ light: 0 });
  let state: Float64Array = Float64Array.from(start);
  let dosed = false;
  let clearNights = 0;
  let doneSince: number | null = null;
  for (let day = 0; ; day += 1) {
    const night = nightOf(state, world);
    const clear = isClear(night);
    clearNights = clear ? clearNights + 1 : 0;
    const done = stocked ? clearNights >= START_UP.clearDays : clear && dosed;
    if (done) doneSince ??= day;
    yield { ...night, done };
    const due = doneSince === null || (day - doneSince) % KEPT_FED_EVERY_DAYS === 0;
    dosed =
      !stocked && due && night.tan < START_UP.readable.tan && night.no2 <= START_UP.fedWhileNitriteMgNPerL;
    const events: TankEvent[] = [
      ...(dosed
        ? [{ t: 0, kind: "dose", pool: "TAN", mg: START_UP.testDoseMgNPerL * world.inputs.V } as const]
        : []),
      ...(lampOn > 0 && day === lampOn ? [{ t: 0, kind: "set", light: 1 } as const] : []),
      ...(stocked ? careOn(facts, day) : []),
    ];
    state = run(world, state, events, { days: 1, steps: STEPS }).state;
  }
}

const isClear = ({ tan, no2 }: Pick<Night, "tan" | "no2">): boolean =>
  tan < START_UP.readable.tan && no2 < START_UP.readable.no2;

const nightOf = (state: Float64Array, { inputs: { V } }: World): Night => ({
  tan: state[TAN]! / V,
  no2: state[NO2]! / V,
  no3: state[NO3]! / V,
});

/** Of the usual care what falls on that day. */
const careOn = (facts: TankFacts, day: number): TankEvent[] =>
  careEvents(facts, day + 1)
    .filter(({ t }) => t === day)
    .map((event) => ({ ...event, t: 0 }));

/** Day from today on which this version is done; null where it is not within so many days. */
export function doneOn(member: Member, plan: StartUpPlan, withinDays: number): number | null {
  let day = 0;
  for (const { done } of nights(member, plan)) {
    if (done) return day;
    if (day >= withinDays) break;
    day += 1;
  }
  return null;
}

/** Its midnights from today on. */
export function courseOf(member: Member, plan: StartUpPlan, days: number): Night[] {
  const course: Night[] = [];
  for (const { tan, no2, no3 } of nights(member, plan)) {
    course.push({ tan, no2, no3 });
    if (course.length > days) break;
  }
  return course;
}
