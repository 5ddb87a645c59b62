/**
 * Start-up against published durations, as wide bounds: the engine's own parameters were chosen from some of the same
 * sources, so this tells that nothing has slipped, not that the model is right. docs/model/start-up.md, "Held against".
 */
import { expect, test } from "vitest";
import { modelParameters, supplyParameters } from "../../src/catalogue/index.ts";
import { courseOf, doneOn } from "../../src/engine/care/start-up/runs.ts";
import { drawMembers } from "../../src/engine/larder/members.ts";
import { referenceTank } from "../../src/engine/larder/test-kit/reference-tank.ts";

const stated = (value: number) =>
  ({ low: value, central: value, high: value, origin: "stated", how: "typed" }) as const;

const MEMBERS = 60;
const LONGEST_DAYS = 120;

function tank(rock: "live" | "mixed" | "dry" | "none") {
  const facts = referenceTank({
    ...{ ageDays: stated(0), fishWetG: stated(0), feedGPerDay: stated(0) },
    rockStart: { value: rock, origin: "stated" },
  });
  const members = drawMembers(facts, modelParameters, { count: MEMBERS, seed: 11 });
  const plan = { facts, kinds: [], stocked: false };
  const ends = members.flatMap((member) => {
    const day = doneOn(member, plan, LONGEST_DAYS);
    return day === null ? [] : [{ member, day }];
  });
  const days = ends.map(({ day }) => day).sort((a, b) => a - b);
  return { plan, ends, middle: days[Math.floor(days.length / 2)]! };
}

const dry = tank("dry");
const live = tank("live");

// General fish culture: one to six weeks (glossary, passage); freshwater pilot filters six to seven weeks (Mnyoro and
// others 2022, J. Cleaner Prod. 366:132929, abstract); seawater much longer than fresh (Nijhof & Bovendeur 1990,
// Aquaculture 87:133, abstract). Together, for a start without live rock: three to eleven weeks.
test("dry rock: the middle lies within three to eleven weeks", () => {
  const { low, high } = supplyParameters.get("nit.startup.days_unseeded")!.spread;
  expect([low, high]).toEqual([21, 75]);
  expect(dry.middle).toBeGreaterThanOrEqual(low);
  expect(dry.middle).toBeLessThanOrEqual(high);
});

// Keepers' practice (memory): facts/parameters/nit.yaml, startup.days_seeded
test("live rock: the middle lies within two days to four weeks, and before dry rock's", () => {
  const { low, high } = supplyParameters.get("nit.startup.days_seeded")!.spread;
  expect(live.middle).toBeGreaterThanOrEqual(low);
  expect(live.middle).toBeLessThanOrEqual(high);
  expect(live.middle).toBeLessThan(dry.middle);
});

// Nitrite accumulates in a seawater start-up (Nijhof & Bovendeur 1990, abstract)
test("dry rock: nitrite piles up above half of the first ammonia, and is the last to go, in nearly every version", () => {
  const seen = dry.ends.map(({ member, day }) => {
    const course = courseOf(member, dry.plan, day);
    const first = course[0]!.tan;
    const peak = Math.max(...course.map(({ no2 }) => no2));
    const ammoniaGone = course.findIndex(({ tan }) => tan < 0.1);
    const nitriteGone = course.findIndex(({ no2 }, d) => d > ammoniaGone && no2 < 0.03);
    return { piled: peak > first / 2, last: nitriteGone > ammoniaGone };
  });
  const share = (of: (one: (typeof seen)[number]) => boolean) => seen.filter(of).length / seen.length;
  expect(share(({ last }) => last)).toBeGreaterThanOrEqual(0.9);
  expect(share(({ piled }) => piled)).toBeGreaterThanOrEqual(0.5);
});

// A step too long for many bacteria of a small half-saturation once made nitrite out of nitrate: matter, not a bound.
test("dry rock: nitrate falls by no more than rock, sand and algae take in a day, in every version", () => {
  for (const { member, day } of dry.ends) {
    const course = courseOf(member, dry.plan, day + 20);
    const falls = course.map(({ no3 }, d) => (course[d - 1]?.no3 ?? no3) - no3);
    expect(Math.max(...falls)).toBeLessThan(0.5);
  }
});
