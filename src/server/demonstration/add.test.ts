import { expect, test } from "vitest";
import { temporaryStore } from "../../../checks/kit/store.ts";
import { loadTank } from "../load-tank.ts";
import { addDemonstration } from "./add.ts";
import { demonstrations } from "./tanks.ts";

// A leap day and a new year among them: every day counted back must be one that exists.
const DAYS = ["2026-06-15", "2028-02-29", "2027-01-01"];
const now = (today: string) => `${today}T09:00:00.000Z`;

test.each(DAYS)("made on %s, all four are read without a finding and marked as invented", async (today) => {
  const store = await temporaryStore();
  await addDemonstration(store, today, now(today));
  const tanks = await store.tanks();
  expect(tanks).toHaveLength(4);
  for (const { id, demonstration, keeper } of tanks) {
    const loaded = await loadTank(store, id, today);
    expect(demonstration).toBe(true);
    expect(loaded?.head.name).toContain("(invented)");
    expect(keeper.name).toContain("(invented)");
    expect(loaded?.facts.unknownAnimals).toEqual([]);
  }
});

test("each has a daybook, one of two months up to yesterday, and the tank is read with it", async () => {
  const store = await temporaryStore();
  const today = DAYS[0]!;
  await addDemonstration(store, today, now(today));
  const tanks = await store.tanks();
  for (const { id } of tanks) {
    const entries = await store.entries(id, { limit: 1000 });
    expect(entries.length).toBeGreaterThan(10);
    expect(entries.every(({ on }) => on < today)).toBe(true);
  }
  const reef = tanks.find(({ facts }) => facts["name"] === "Hallway reef (invented)");
  const days = (await store.entries(reef!.id, { limit: 1000, kind: "reading" })).map(({ on }) => on);
  expect(days.at(0)).toBe("2026-06-14");
  expect(days.at(-1)).toBe("2026-04-16");
  const loaded = await loadTank(store, reef!.id, today);
  expect(loaded?.facts.readings.some(({ on }) => on === "2026-06-14")).toBe(true);
  const heads = (animal: string) =>
    loaded?.facts.present.filter(({ id }) => id === animal).reduce((sum, { count }) => sum + count, 0);
  expect({ trochus: heads("trochus-snail"), cerith: heads("dwarf-cerith") }).toEqual({
    trochus: 2,
    cerith: 4,
  });
  expect(loaded?.facts.feedGPerDay.central).toBeCloseTo(1.2, 6);
});

test("only a store that never held a tank gets them, and only once", async () => {
  const store = await temporaryStore();
  const today = DAYS[0]!;
  await addDemonstration(store, today, now(today));
  const [first] = await store.tanks();
  await store.setKept(first!.id, first!.version, false, { at: now(today), by: "test" });
  await addDemonstration(store, today, now(today));
  expect(await store.tanks()).toHaveLength(3);
});

test("they still read as they were when a year has passed", async () => {
  const store = await temporaryStore();
  await addDemonstration(store, "2026-06-15", now("2026-06-15"));
  for (const { id } of await store.tanks()) expect(await loadTank(store, id, "2027-06-15")).not.toBeNull();
});

test("there is one keeper with more than one tank", () => {
  const keepers = demonstrations("2026-06-15").map(({ keeper }) => keeper);
  expect(new Set(keepers).size).toBeLessThan(keepers.length);
});
