/**
 * Start-up twins: invented tanks whose truth is a version of the model that the learner has not seen, tested every third
 * day with a kit's steps for three weeks. The day on which a dose is truly gone must lie in the band that is told, and
 * the band must be narrower than without the tests. Limits: the truth is the model's own kind.
 */
import { expect, test } from "vitest";
import { learnedOf } from "../../src/answers/learned/learned.ts";
import { membersOf } from "../../src/answers/plan/plan-tank.ts";
import { modelParameters } from "../../src/catalogue/index.ts";
import { addDays } from "../../src/contract/quantity/calendar.ts";
import { type Ends, endsOf } from "../../src/engine/care/start-up/ends.ts";
import { courseOf, doneOn, type StartUpPlan } from "../../src/engine/care/start-up/runs.ts";
import { drawMembers, type Member } from "../../src/engine/larder/members.ts";
import { referenceTank } from "../../src/engine/larder/test-kit/reference-tank.ts";
import type { ReadingSeen, TankRecord } from "../../src/engine/types/record.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";

const TODAY = "2026-06-15";
const AGE = 21;
const TRUTHS = 6;
const stated = (value: number) =>
  ({ low: value, central: value, high: value, origin: "stated", how: "typed" }) as const;

const tankOf = (age: number): TankFacts =>
  referenceTank({
    ...{ asOf: TODAY, ageDays: stated(age), fishWetG: stated(0), feedGPerDay: stated(0) },
    rockStart: { value: "dry", origin: "stated" },
  });
const planOf = (facts: TankFacts): StartUpPlan => ({ facts, kinds: [], stocked: false });

const STEP = { tan_mg_n_per_l: 0.2, no2_mg_n_per_l: 0.03 } as const;

/** The truth's readings as a kit of these steps shows them, every third day. */
function testsOf(truth: Member): ReadingSeen[] {
  const course = courseOf(truth, planOf(tankOf(0)), AGE);
  return [2, 5, 8, 11, 14, 17, 20].flatMap((day) =>
    (["tan_mg_n_per_l", "no2_mg_n_per_l"] as const).map((quantity): ReadingSeen => {
      const step = STEP[quantity];
      const night = course[day]!;
      const shown = Math.round((quantity === "tan_mg_n_per_l" ? night.tan : night.no2) / step) * step;
      const value =
        shown === 0
          ? { low: 0, central: step / 2, high: step }
          : { low: shown - step / 2, central: shown, high: shown + step / 2 };
      return {
        ...{ kind: "reading", entry: `${quantity} ${day}`, on: addDays(TODAY, day - AGE), quantity },
        ...{ value, censored: shown === 0 ? "below" : null, step, flag: null },
      };
    }),
  );
}

function ended(facts: TankFacts): Ends {
  const work = endsOf(planOf(facts), membersOf(facts, { members: 200, seed: 1 }));
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

const at = ({ ended: all }: Ends, share: number): number => all[Math.floor(share * (all.length - 1))]!.day;

test("the true end lies in the told band of most twins, and the tests narrow the band", () => {
  const plan = planOf(tankOf(0));
  const truths = drawMembers(tankOf(0), modelParameters, { count: 60, seed: 99 })
    .flatMap((member) => {
      const day = doneOn(member, plan, 90);
      return day === null || day <= AGE ? [] : [{ member, left: day - AGE }];
    })
    .slice(0, TRUTHS);
  expect(truths).toHaveLength(TRUTHS);
  const before = ended(tankOf(AGE));
  const found = truths.map(({ member, left }) => {
    const record: TankRecord = {
      ...{ observations: testsOf(member), happenings: [], declined: [], asOf: TODAY },
    };
    const ends = ended(learnedOf(tankOf(AGE), record, () => {}).facts);
    const [low, high] = [at(ends, 0.05), at(ends, 0.95)];
    return { left, low, high };
  });
  // 18 of 20 are meant to lie in the band; six of six or one out are both likely, three out are not.
  expect(found.filter(({ left, low, high }) => left < low - 1 || left > high + 1).length).toBeLessThanOrEqual(
    2,
  );
  const width = found.map(({ low, high }) => high - low).sort((a, b) => a - b)[TRUTHS >> 1]!;
  expect(width).toBeLessThan(at(before, 0.95) - at(before, 0.05));
});
