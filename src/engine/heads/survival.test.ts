import { expect, test } from "vitest";
import type { Life, LifeEvent } from "./life.ts";
import { kaplanMeier, knownEnds, lossRate, poissonBand, shareAt } from "./survival.ts";

test("product limit by hand: deaths at 2 and 5 of four, one censored at 3", () => {
  const steps = kaplanMeier([
    { days: 2, died: true },
    { days: 3, died: false },
    { days: 5, died: true },
    { days: 9, died: false },
  ]);
  expect(steps.map(({ atRisk, deaths }) => [atRisk, deaths])).toEqual([
    [4, 1],
    [2, 1],
  ]);
  expect(steps[0]!.share).toBeCloseTo(0.75, 12);
  expect(steps[1]!.share).toBeCloseTo(0.375, 12);
  expect(shareAt(steps, 4)).toBeCloseTo(0.75, 12);
  expect(shareAt(steps, 1)).toBe(1);
});

test("nobody left: the share is nought and has no band", () => {
  const [last] = kaplanMeier([{ days: 4, died: true }]);
  expect(last).toMatchObject({ share: 0, standardError: 0, band: null });
});

test("exact Poisson limits solve their own equations: nought deaths have -ln 0.05 above them", () => {
  expect(poissonBand(0, 0.05).high).toBeCloseTo(2.995732, 6);
  expect(poissonBand(0, 0.05).low).toBe(0);
  // P(at least 1) = 0.05 at -ln 0.95.
  expect(poissonBand(1, 0.05).low).toBeCloseTo(0.0512933, 7);
});

test("a rate is deaths over the days known", () => {
  const rate = lossRate([
    { days: 100, died: true },
    { days: 300, died: false },
  ]);
  expect(rate).toMatchObject({ deaths: 1, headDays: 400 });
  expect(rate!.perDay.central).toBe(1 / 400);
  expect(lossRate([])).toBeNull();
});

const event = (day: number, kind: "added" | "found" | "feared" | "moved_out", count: number): LifeEvent =>
  ({ day, on: "", entry: "", kind, count, condition: null }) as LifeEvent;
const life = (before: number, days: number, ...events: LifeEvent[]): Life =>
  ({ before, days, from: "", animal: {}, events }) as unknown as Life;

test("what dies within three days of its arrival is no loss of the tank's", () => {
  const ends = knownEnds(life(2, 60, event(30, "added", 4), event(32, "found", 1)));
  expect(ends.filter(({ died }) => died)).toEqual([]);
  expect(ends.map(({ days }) => days).sort((a, b) => a - b)).toEqual([30, 30, 30, 60, 60]);
});

test("later losses are taken off those that came first; fears and moves are no deaths", () => {
  const ends = knownEnds(
    life(
      2,
      60,
      event(20, "added", 2),
      event(40, "found", 1),
      event(45, "feared", 1),
      event(50, "moved_out", 1),
    ),
  );
  expect(ends).toEqual([
    { days: 40, died: true },
    { days: 45, died: false },
    { days: 30, died: false },
    { days: 40, died: false },
  ]);
});
