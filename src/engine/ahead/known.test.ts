/** One run serves the plan's check and the weeks ahead: what is cut short or taken over is what would have been run. */
import { expect, test } from "vitest";
import { animalById, modelParameters } from "../../catalogue/index.ts";
import { drawMembers } from "../larder/members.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import { cutTo, type ForecastPlan, finish, forecast } from "./forecast.ts";
import { crewKind } from "./start.ts";

const facts = referenceTank();
const members = drawMembers(facts, modelParameters, { count: 6, seed: 1 });
const kinds = [crewKind(animalById.get("trochus-snail")!, 3)];
// An arrival and a water change on the last day of the short run, which that run no longer does.
const events = [{ t: 56, kind: "addAnimals", species: "trochus-snail", count: 2, condition: 0.5 }] as const;
const plan: ForecastPlan = { facts, members, kinds, events, days: 56, seed: 5, withOxygen: true };
const short = finish(forecast(plan));
const long = finish(forecast({ ...plan, days: 98 }));

test("a run cut to fewer days is the run of so many days", () => expect(cutTo(long, 56)).toEqual(short));

test("a run is not stretched", () => expect(() => cutTo(short, 57)).toThrow(RangeError));

test("members run already, over more days, are taken over; the rest is run", () => {
  const known = finish(forecast({ ...plan, members: members.slice(0, 4), days: 98 }));
  const work = forecast({ ...plan, known });
  let ran = 0;
  for (let step = work.next(); step.done !== true; step = work.next()) ran += 1;
  expect(ran).toBe(2);
  expect(finish(forecast({ ...plan, known }))).toEqual(short);
});

test("nothing is taken over that is too short or has no oxygen", () => {
  const brief = finish(forecast({ ...plan, days: 28 }));
  const airless = finish(forecast({ ...plan, withOxygen: false }));
  for (const known of [brief, airless]) expect([...forecast({ ...plan, known })]).toHaveLength(6);
});
