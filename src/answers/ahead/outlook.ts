/** What the runs say, as plain data for text and JSON alike: chances of limits, the life of each kind. */
import { animalById } from "../../catalogue/index.ts";
import {
  aboveOf20,
  aliveOf20,
  type Crossing,
  crossing,
  type Survival,
  survivalOf,
} from "../../engine/ahead/chances.ts";
import { acrossMembers, ROW_DAYS } from "../../engine/ahead/forecast.ts";
import { bandOf } from "../../engine/numeric/quantile.ts";
import { CHECK_DAYS } from "../../engine/stocking/check.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { missingFor } from "./evidence.ts";
import { LIMITS, type Limit } from "./limits.ts";
import type { Course } from "./runs.ts";

export interface LimitChance extends Crossing {
  readonly limit: Limit;
  /** What it would take to make this the chance of this tank, not of a typical one; null where enough is known. */
  readonly missing: string | null;
  /** Runs of 20 above the limit in a week. */
  readonly aboveIn: (week: number) => number;
}

export interface KindLife extends Survival {
  readonly animal: Animal;
  /** Heads once all have come and gone that the keeper adds or takes out. */
  readonly heads: number;
  /** Week asked for: 90 days after the last arrival, or the last of the run. */
  readonly week: number;
  /** Days from the last arrival to that week. */
  readonly days: number;
  /** Reserve of the living then, 0 to 1; null where fewer than half of the runs have any. */
  readonly condition: Spread | null;
  /** Runs of 20 in which at least half are alive in a week. */
  readonly aliveIn: (week: number) => number;
}

export interface Outlook {
  readonly course: Course;
  readonly chances: readonly LimitChance[];
  readonly kinds: readonly KindLife[];
}

export function outlookOf(course: Course, facts: TankFacts): Outlook {
  const { quantities, peaks } = course.forecast;
  return {
    course,
    chances: LIMITS.filter(({ quantity }) => quantity !== "film_rock" || facts.litRockM2.central > 0).map(
      (limit) => ({
        limit,
        ...crossing(peaks[limit.quantity], limit.value),
        missing: missingFor(limit.quantity, facts),
        aboveIn: (week) => aboveOf20(quantities[limit.quantity], week, limit.value),
      }),
    ),
    kinds: lives(course),
  };
}

function lives({ forecast, kinds, events }: Course): KindLife[] {
  return kinds.flatMap(({ species, residents }, k): KindLife[] => {
    let came = 0;
    let last = 0;
    for (const event of events) {
      if (!("species" in event) || event.species !== species.id || event.t >= forecast.days) continue;
      came += event.kind === "addAnimals" ? event.count : -event.count;
      if (event.kind === "addAnimals") last = Math.max(last, event.t);
    }
    const heads = residents + came;
    if (heads <= 0) return [];
    const { heads: sheaf, condition: reserve } = forecast.kinds[k]!;
    const week = Math.min(forecast.weeks - 1, Math.ceil((last + CHECK_DAYS) / ROW_DAYS));
    const days = week * ROW_DAYS - last;
    const condition = acrossMembers(reserve, week).filter(Number.isFinite);
    return [
      {
        animal: animalById.get(species.id)!,
        heads,
        week,
        days,
        ...survivalOf(sheaf, week, { came, deathRate: species.m0, days: Math.max(0, days) }),
        condition: condition.length * 2 < forecast.members ? null : bandOf(condition),
        aliveIn: (at) => aliveOf20(sheaf, at, came),
      },
    ];
  });
}
