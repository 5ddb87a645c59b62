/**
 * False alarms and truth in invented tanks: a sample of those whose figures stand in docs/model/heads.md. Quiet tanks have
 * the catalogue's losses, a journey's deaths, counts by day and by night; a tank in trouble loses one kind by a tenth a day.
 */
import { expect, test } from "vitest";
import { animals, supplyParameters } from "../../catalogue/index.ts";
import { askFrom, headsOfKind } from "./kind.ts";
import { isFollowed, lifeOf } from "./life.ts";
import { headRates } from "./rates.ts";
import { headsAt } from "./summary.ts";
import { inventedTank, type Twist } from "./test-kit/invented-tank.ts";

const rates = headRates(supplyParameters);
const crew = animals.filter(
  (one) => isFollowed(one) && (one.role === "crew" || one.role === "crew_with_caution"),
);
const WEEKLY: Twist = { days: 182, countEvery: 7, lossScore: null, seenScore: null, troublePerDay: null };

const tankOf = (seed: number, twist: Twist) =>
  inventedTank(crew, rates, seed, twist).map((kind) => ({
    ...{ kind, heads: headsOfKind(lifeOf(kind.animal, kind.facts, kind.record, rates), rates) },
  }));

test("of 16 quiet tanks at most two are ever asked about, and 80 % bands hold the truth", () => {
  let asked = 0;
  let inside = 0;
  let all = 0;
  for (let seed = 1000; seed < 1016; seed += 1) {
    const tank = tankOf(seed, { ...WEEKLY, countEvery: 14 });
    if (tank.some(({ heads }) => heads.trouble.most >= askFrom(tank.length))) asked += 1;
    for (const { kind, heads } of tank) {
      all += 1;
      const [low, high] = [headsAt(heads.living, 0.1), headsAt(heads.living, 0.9)];
      if (kind.alive >= low && kind.alive <= high) inside += 1;
    }
  }
  expect(asked).toBeLessThanOrEqual(2);
  expect(inside / all).toBeGreaterThanOrEqual(0.8);
});

test("a kind that loses a tenth a day for six weeks is asked about in over half of tanks, and not the others", () => {
  let found = 0;
  let others = 0;
  for (let seed = 2000; seed < 2010; seed += 1) {
    const tank = tankOf(seed, { ...WEEKLY, days: 140, troublePerDay: 0.1 });
    const from = askFrom(tank.length);
    const [first, ...rest] = tank.map(({ heads }) => heads.trouble.most >= from);
    if (first) found += 1;
    if (rest.some((one) => one)) others += 1;
  }
  expect(found).toBeGreaterThan(5);
  expect(others).toBeLessThanOrEqual(1);
});
