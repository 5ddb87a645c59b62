import { expect, test } from "vitest";
import type { TankRecord } from "../types/record.ts";
import { bareGlassDays, filmSlower, growthsBack } from "./growth-back.ts";

const growth = (score: number, on: string) =>
  ({ kind: "growth", growth: "film_glass", score, traits: {}, on, entry: on }) as const;
const back = (days: number, on: string) => ({ kind: "film_back", days, on, entry: on }) as const;
const record = (
  observations: TankRecord["observations"],
  happenings: TankRecord["happenings"] = [],
): TankRecord => ({ observations, happenings, declined: [], asOf: "2026-06-15" });
const wiped = (on: string) => ({ kind: "chore", chore: "glass_wiped", share: null, on, entry: on }) as const;

test("bare for a week by two looks; one look, a wipe between, film since, or an old look are none", () => {
  expect(
    bareGlassDays(record([growth(2, "2026-05-20"), growth(0, "2026-06-05"), growth(0, "2026-06-13")])),
  ).toBe(8);
  expect(bareGlassDays(record([growth(0, "2026-06-13")]))).toBeNull();
  expect(
    bareGlassDays(record([growth(0, "2026-06-05"), growth(0, "2026-06-13")], [wiped("2026-06-08")])),
  ).toBeNull();
  expect(
    bareGlassDays(record([growth(0, "2026-06-01"), growth(0, "2026-06-09"), growth(1, "2026-06-13")])),
  ).toBeNull();
  expect(bareGlassDays(record([growth(0, "2026-04-01"), growth(0, "2026-04-20")]))).toBeNull();
});

test("film that takes twice its usual days, by three returns before", () => {
  const usual = [back(3, "2026-05-01"), back(4, "2026-05-10"), back(3, "2026-05-20")];
  expect(filmSlower(record([...usual, back(7, "2026-06-10")]))).toMatchObject({ days: 7, usualDays: 3 });
  expect(filmSlower(record([...usual, back(5, "2026-06-10")]))).toBeNull();
  expect(filmSlower(record([...usual.slice(1), back(9, "2026-06-10")]))).toBeNull();
});

test("a growth that is thick and was less has come back; one always thick has not", () => {
  expect(growthsBack(record([growth(1, "2026-05-01"), growth(3, "2026-06-10")]))).toMatchObject([
    { growth: "film_glass", score: 3 },
  ]);
  expect(growthsBack(record([growth(3, "2026-05-01"), growth(3, "2026-06-10")]))).toEqual([]);
});
