/** Learning in short turns: told how far, stopped between two, and the same as in one go. */
import { expect, test } from "vitest";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import type { TankRecord } from "../../engine/types/record.ts";
import { learnedTo } from "./engine-learning.ts";

const film = (on: string, score: number) =>
  ({ kind: "growth", entry: on, on, growth: "film_glass", score, traits: {} }) as const;
const record: TankRecord = {
  observations: ["2026-06-11", "2026-06-12", "2026-06-13", "2026-06-15"].map((on, i) => film(on, i)),
  ...{ happenings: [], declined: [], asOf: "2026-06-15" },
};
const word = (of: TankRecord) => ({ kind: "learn", id: 4, facts: referenceTank(), record: of }) as const;

test("stopped, it says nothing more", async () => {
  const told: number[] = [];
  const reply = await learnedTo(
    word(record),
    (progress) => told.push(progress.kind === "progress" ? progress.share : Number.NaN),
    () => told.length === 3,
  );
  expect(reply).toBeNull();
  expect(told).toHaveLength(3);
  expect(told.every((share, i) => share > (told[i - 1] ?? 0))).toBe(true);
});

test("too little to learn from is an answer", async () => {
  const reply = await learnedTo(
    word({ ...record, observations: [] }),
    () => {},
    () => false,
  );
  expect(reply).toEqual({ kind: "learned", id: 4, seen: { observations: 0, least: 4, taught: null } });
});

test("what can't be run is told", async () => {
  const broken = { ...word(record), facts: { ...referenceTank(), waterL: undefined } } as never;
  const reply = await learnedTo(
    broken,
    () => {},
    () => false,
  );
  expect(reply).toMatchObject({ kind: "failed", id: 4 });
});
