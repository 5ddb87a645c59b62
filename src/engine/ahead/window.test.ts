/** The daybook's first day: what nobody told of it differs from member to member, by scores that can be learned. */
import { expect, test } from "vitest";
import { modelParameters } from "../../catalogue/index.ts";
import { FG } from "../balance/pools.ts";
import { drawMembers } from "../larder/members.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import type { TankFacts } from "../types/tank.ts";
import { runWindow } from "./window.ts";

const EVERY_DAYS = 10;
const every = { low: EVERY_DAYS, central: EVERY_DAYS, high: EVERY_DAYS };
const tank = referenceTank();
const facts: TankFacts = {
  ...tank,
  ageDays: { ...tank.ageDays, low: 400, central: 400, high: 400 },
  wipeGlassEveryDays: { ...tank.wipeGlassEveryDays, ...every },
};

/** Film on the glass at the first midnight of a daybook of four weeks. */
function firstGlass(wipedBefore: number, given: TankFacts = facts): number {
  const first = { feed: 1, fish: 1, hours: 1, light: 1, skimmer: null };
  const learned = {
    ...{ names: ["wipedBefore"], scores: [[wipedBefore]], seed: 1 },
    window: { from: "2026-05-18", days: 28, events: [], heads: {}, first, observed: [] },
  };
  const known = { ...given, learned };
  const [member] = drawMembers(known, modelParameters, { count: 1, seed: 1 });
  let film = Number.NaN;
  runWindow(member!, [], known, learned.window, (day, state) => {
    if (day === 0) film = state[FG]!;
  });
  return film;
}

test("the longer ago the glass was wiped before the daybook, the more film stands on it", () => {
  const films = [-3, -1, 0, 1, 3].map((score) => firstGlass(score));
  expect(films).toEqual(films.toSorted((a, b) => a - b));
  // A wipe takes nine tenths: between a day and the whole interval after it lies a good part of that.
  expect(films.at(-1)! / films[0]!).toBeGreaterThan(2);
});

test("who never wipes the glass has as much film whatever the score", () => {
  const never = {
    ...facts,
    wipeGlassEveryDays: { ...facts.wipeGlassEveryDays, low: 0, central: 0, high: 0 },
  };
  expect(firstGlass(2, never)).toBe(firstGlass(-2, never));
});
