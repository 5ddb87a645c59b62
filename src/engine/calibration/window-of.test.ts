import { describe, expect, test } from "vitest";
import { animals } from "../../catalogue/index.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import { addDays } from "../stocking/suitability.ts";
import type { Happening, Observation, TankRecord } from "../types/record.ts";
import { windowOf } from "./window-of.ts";

const TODAY = "2026-06-15";
const known = (value: number) =>
  ({ low: value, central: value, high: value, origin: "stated", how: "typed" }) as const;
const facts = referenceTank({
  ageDays: known(400),
  present: [{ id: "trochus-snail", count: 4, on: null }],
  waterChangeFraction: known(0.1),
  waterChangeEveryDays: known(7),
  wipeGlassEveryDays: known(0),
  filterChangeDays: null,
});
const on = (daysAgo: number) => addDays(TODAY, -daysAgo);
const water = (daysAgo: number, share: number | null = 0.2): Happening => ({
  ...{ kind: "chore", entry: `w${daysAgo}`, on: on(daysAgo), chore: "water_change", share },
});
const heads = (kind: "added" | "lost_feared" | "lost_found" | "moved_out", daysAgo: number, count: number) =>
  ({
    ...{ kind, entry: `${kind}${daysAgo}`, on: on(daysAgo), animal: "trochus-snail", count },
    ...{ condition: null, bodyRemoved: kind === "lost_found" ? true : null, wave: null },
  }) as const;
const windowIn = (happenings: readonly Happening[], observations: readonly Observation[] = []) => {
  const record: TankRecord = { observations, happenings, declined: [], asOf: TODAY };
  return windowOf(facts, record, animals, [])!;
};
const at = (window: ReturnType<typeof windowIn>, kind: string) =>
  window.events.filter((event) => event.kind === kind).map(({ t }) => t);

test("from the record's first day, at most four months back; nothing before today is no window", () => {
  expect(windowIn([water(30)])).toMatchObject({ from: on(30), days: 30 });
  expect(windowIn([water(500), water(30)]).days).toBe(120);
  expect(
    windowOf(facts, { observations: [], happenings: [], declined: [], asOf: TODAY }, animals, []),
  ).toBeNull();
});

describe("chores", () => {
  test("what was logged is what was done", () => {
    const window = windowIn([water(40), water(33), water(24), water(16), water(9), water(3)]);
    expect(at(window, "water")).toEqual([0, 7, 16, 24, 31, 37]);
  });
  test("of a kind that nobody logs, the usual care goes on", () => {
    expect(at(windowIn([heads("added", 28, 1)]), "water")).toEqual([7, 14, 21]);
  });
  test("a hole of three intervals is filled", () => {
    const days = at(windowIn([water(60), water(53), water(7)]), "water");
    expect(days.slice(0, 2)).toEqual([0, 7]);
    expect(days.length).toBeGreaterThan(6);
  });
  test("a share that nobody told is the usual one", () => {
    const [first] = windowIn([water(20, null)]).events.filter(({ kind }) => kind === "water");
    expect(first).toMatchObject({ share: 0.1 });
  });
  test("a glass that needed wiping after nine days was clean nine days before", () => {
    const back: Observation = { kind: "film_back", entry: "f", on: on(4), days: 9 };
    expect(at(windowIn([water(20)], [back]), "wipe")).toEqual([7]);
  });
});

describe("heads", () => {
  test("on the first day: today's, less what came, plus what went", () => {
    const window = windowIn([heads("added", 20, 3), heads("lost_feared", 10, 2), heads("moved_out", 5, 1)]);
    expect(window.heads).toEqual({ "trochus-snail": 4 });
  });
  test("a body that was taken out leaves nothing; one that was not is carrion", () => {
    expect(at(windowIn([heads("lost_found", 10, 1)]), "body")).toEqual([]);
    expect(at(windowIn([heads("lost_feared", 10, 1)]), "body")).toEqual([0]);
  });
});

describe("given", () => {
  const changed = (
    what: "feed" | "light_hours" | "light_strength",
    daysAgo: number,
    to: number,
  ): Happening => ({
    ...{ kind: "changed", entry: `${what}${daysAgo}`, on: on(daysAgo), what, to },
  });
  test("feed as a multiple of today's, from the day of each change on", () => {
    const window = windowIn([water(30), changed("feed", 20, 0.1), changed("feed", 10, 0.2)]);
    expect(window.first.feed).toBe(1);
    expect(window.events.filter(({ kind }) => kind === "given")).toMatchObject([
      { t: 10, feed: 0.5 },
      { t: 20, feed: 1 },
    ]);
  });
  test("strength told as a share of before: before it, it was more", () => {
    const window = windowIn([water(30), changed("light_strength", 10, 0.5)]);
    expect(window.first.light).toBe(2);
    expect(window.events.find(({ kind }) => kind === "given")).toMatchObject({ t: 20, light: 1 });
  });
  test("a lamp out for two days is two dark days", () => {
    const window = windowIn([water(30), { kind: "outage", entry: "o", on: on(10), of: "lamp", hours: 48 }]);
    expect(window.events.filter(({ kind }) => kind === "given")).toMatchObject([
      { t: 20, light: 0 },
      { t: 22, light: 1 },
    ]);
  });
});
