/**
 * Twenty twins of the model's own truths: learning from a keeper's daybook makes the four weeks ahead sharper, and their
 * bands stay honest. A small sample, so its bounds are wide; the full runs stand in docs/validation.md.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { deathFigures, deathTwin } from "./deaths.ts";
import { type TwinResult, twin } from "./one.ts";
import { inflowWithin, type Row, rowsOf } from "./table.ts";

const TANKS = 20;
/** As many as the tables': with 60, chance teaches besides, and bands over all quantities hold 67 % instead of 76 %. */
const MEMBERS = 160;
const results: TwinResult[] = [];
let rows: readonly Row[] = [];

beforeAll(() => {
  for (let seed = 1; seed <= TANKS; seed += 1) results.push(twin(seed, "own", MEMBERS));
  rows = rowsOf(results);
}, 1_200_000);

const row = (of: Row["of"]): Row => rows.find((one) => one.of === of)!;

describe("what was measured is forecast better than without the daybook", () => {
  test.each(["no3", "po4", "film_glass", "film_rock", "hair_algae"] as const)("%s", (of) => {
    const [blind, , calibrated] = row(of).error;
    expect(calibrated).toBeLessThan(0.75 * blind);
  });
});

test("bands from 10 to 90 % hold about four truths in five, over all quantities", () => {
  const within = rows.filter(({ of }) => of !== "heads" && of !== "heads page").map((one) => one.within[2]);
  const all = within.reduce((a, b) => a + b, 0) / within.length;
  expect(all).toBeGreaterThan(0.7);
  expect(all).toBeLessThan(0.93);
});

test("what comes in with the feed is found again in more tanks than before", () => {
  const [before, after] = inflowWithin(results);
  expect(after).toBeGreaterThan(before);
});

test("heads counted by torch are nearer the truth than the keeper's list, and none nearer than chance leaves", () => {
  const [list] = row("heads").error;
  const [, , counted] = row("heads page").error;
  expect(counted).toBeLessThan(list);
  expect(counted).toBeGreaterThan(row("heads").floor);
});

test("water's and growth's own chance is small beside what is not known", () => {
  for (const { of, error, floor } of rows) {
    if (of !== "heads" && of !== "heads page") expect(floor, of).toBeLessThan(0.2 * error[2]);
  }
});

test("a death that nobody found is named from the ammonia within two days, and none where nothing died", () => {
  const figures = deathFigures(Array.from({ length: 20 }, (_, i) => deathTwin(i + 1)));
  expect(figures.visible).toBeGreaterThan(5);
  expect(figures.namedInTime).toBeGreaterThanOrEqual(0.8 * figures.visible);
  expect(figures.falseAlarms).toBeLessThanOrEqual(2);
});
