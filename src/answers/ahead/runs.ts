/** The runs of `grazewell ahead`: who lives in the tank or comes, what happens, today's care or another. */
import { animalById, animals } from "../../catalogue/index.ts";
import { cutTo, type Forecast, forecast, type Later, type Sheaf } from "../../engine/ahead/forecast.ts";
import { type CrewKind, crewKind } from "../../engine/ahead/start.ts";
import type { TankEvent } from "../../engine/balance/events.ts";
import type { Member } from "../../engine/larder/members.ts";
import { arrivals, kindsOf, plannedArrivals } from "../../engine/stocking/check.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import { companyOf } from "../../engine/stocking/waves.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { type EnsembleChoice, membersOf } from "../plan/plan-tank.ts";
import type { Progress } from "../progress.ts";
import type { WhatIf } from "../what-if.ts";

/** A forecast with its oxygen. */
export type FullForecast = Forecast & { readonly dawnOxygen: Sheaf };

export interface Course {
  readonly forecast: FullForecast;
  readonly kinds: readonly CrewKind[];
  /** Additions, and what a what-if does; the usual care is not among them. */
  readonly events: readonly TankEvent[];
}

export interface Courses {
  readonly members: readonly Member[];
  readonly asItIs: Course;
  readonly whatIf: Course | null;
}

export interface RunsRequest {
  readonly facts: TankFacts;
  readonly whatIf: WhatIf | null;
  readonly plan: Plan | null;
  readonly days: number;
  readonly choice: EnsembleChoice;
}

export function runCourses({ facts, whatIf, plan, days, choice }: RunsRequest, progress: Progress): Courses {
  const members = membersOf(facts, choice);
  const kinds = kindsOf(companyOf(facts, animals), plan?.drafts ?? [], animals);
  const events = [...plannedArrivals(facts, kinds), ...arrivals(plan?.drafts ?? [], kinds)];
  const runs = whatIf === null ? 1 : 2;
  const courseOf = (part: number, course: Omit<Course, "forecast">, later?: Later): Course => {
    const work = forecast({
      facts,
      members,
      days,
      seed: choice.seed,
      withOxygen: true,
      ...course,
      ...(later === undefined ? {} : { later }),
    });
    for (;;) {
      const step = work.next();
      if (step.done === true) return { ...course, forecast: step.value as FullForecast };
      progress("running the weeks ahead", (part + step.value.done / step.value.of) / runs);
    }
  };
  const checked = outlookOf(plan, days);
  const asItIs =
    checked === null
      ? courseOf(0, { kinds, events })
      : { kinds, events, forecast: cutTo(checked, days) as FullForecast };
  const changed =
    whatIf === null
      ? null
      : courseOf(
          1,
          { kinds: withNewcomers(kinds, whatIf.events), events: [...whatIf.events, ...events] },
          { facts: whatIf.facts, members: membersOf(whatIf.facts, choice) },
        );
  return { members, asItIs, whatIf: changed };
}

/** The runs that the plan was checked with, where they go as far and hold oxygen: the same tank, waves and draws. */
function outlookOf(plan: Plan | null, days: number): Forecast | null {
  const runs = plan?.check?.forecast;
  return runs === undefined || runs.dawnOxygen === null || runs.days < days ? null : runs;
}

/** The kinds of a course with those that events bring besides; today's come first, so that draws stay theirs. */
function withNewcomers(kinds: readonly CrewKind[], events: readonly TankEvent[]): CrewKind[] {
  const known = new Set(kinds.map(({ species }) => species.id));
  const fresh = events.flatMap((event) => (event.kind === "addAnimals" ? [event.species] : []));
  const newcomers = [...new Set(fresh)].filter((id) => !known.has(id));
  return [...kinds, ...newcomers.map((id) => crewKind(animalById.get(id)!, 0))];
}
