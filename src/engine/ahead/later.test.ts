import { describe, expect, test } from "vitest";
import { modelParameters } from "../../catalogue/index.ts";
import { drawMembers } from "../larder/members.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import type { TankFacts } from "../types/tank.ts";
import { acrossMembers, finish, forecast, QUANTITIES, type QuantityId } from "./forecast.ts";

const facts = referenceTank();
const membersOf = (tank: TankFacts) => drawMembers(tank, modelParameters, { count: 20, seed: 1 });
const plan = { facts, members: membersOf(facts), kinds: [], events: [], days: 56, seed: 5 };
const today = finish(forecast(plan));
const exact = (value: number) =>
  ({ low: value, central: value, high: value, origin: "stated", how: "what if" }) as const;
const changed = (changes: Partial<TankFacts>) => {
  const later = { ...facts, ...changes };
  return finish(forecast({ ...plan, later: { facts: later, members: membersOf(later) } }));
};
const middle = (outlook: typeof today, id: QuantityId, week: number) =>
  acrossMembers(outlook.quantities[id], week).sort()[10]!;

describe("care that changes from today on", () => {
  test("leaves the start as it is", () => {
    const fed = changed({ feedGPerDay: exact(4 * facts.feedGPerDay.central) });
    for (const id of Object.keys(QUANTITIES) as QuantityId[]) {
      expect([...acrossMembers(fed.quantities[id], 0)], id).toEqual([
        ...acrossMembers(today.quantities[id], 0),
      ]);
    }
  });

  test("is nothing where nothing changes", () => expect(changed({})).toEqual(today));

  test("more feed, more phosphate; no light, less film; more water changed, less nitrate", () => {
    const fed = changed({ feedGPerDay: exact(4 * facts.feedGPerDay.central) });
    expect(middle(fed, "po4", 8)).toBeGreaterThan(middle(today, "po4", 8));
    const dark = changed({ lightHours: exact(0) });
    expect(middle(dark, "film_rock", 8)).toBeLessThan(middle(today, "film_rock", 8));
    const fresh = changed({ waterChangeFraction: exact(0.5), waterChangeEveryDays: exact(2) });
    expect(middle(fresh, "tan", 8)).toBeLessThan(middle(today, "tan", 8));
  });
});

test("a tank yet to be filled holds nothing until its own first day, then starts as one filled that day", () => {
  const wet = referenceTank({ ageDays: exact(0), readings: [], sightings: {} });
  const dry = { ...wet, ageDays: exact(-28) };
  const [now, ahead] = [wet, dry].map((tank) =>
    finish(forecast({ ...plan, facts: tank, members: membersOf(tank), days: 84 })),
  );
  for (const week of [0, 1, 2, 3]) expect(Math.max(...acrossMembers(ahead!.peaks.tan, week))).toBe(0);
  expect([...acrossMembers(ahead!.quantities.tan, 8)]).toEqual([...acrossMembers(now!.quantities.tan, 4)]);
});

describe("peaks", () => {
  test("are never below the weekly value, and the first is the start", () => {
    for (const id of Object.keys(QUANTITIES) as QuantityId[]) {
      const { values } = today.quantities[id];
      today.peaks[id].values.forEach((peak, i) => {
        expect(peak).toBeGreaterThanOrEqual(values[i]!);
      });
      expect([...acrossMembers(today.peaks[id], 0)]).toEqual([...acrossMembers(today.quantities[id], 0)]);
    }
  });

  test("hold what a weekly value misses: a death between two of them", () => {
    const events = [{ t: 8, kind: "fishDeath", grams: 30, found: false }] as const;
    const outlook = finish(forecast({ ...plan, events }));
    const most = (id: "quantities" | "peaks") => Math.max(...acrossMembers(outlook[id].tan, 2));
    expect(most("peaks")).toBeGreaterThan(most("quantities"));
  });
});

test("a tank without sand has nothing lying on it", () => {
  const bare = referenceTank({ sandM2: exact(0) });
  const outlook = finish(forecast({ ...plan, facts: bare, members: membersOf(bare), days: 14 }));
  expect(Math.max(...outlook.quantities.detritus_sand.values)).toBe(0);
});
