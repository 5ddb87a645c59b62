/** Feeding of a tank: what goes in comes out somewhere, every number opens, none ends blind. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fedGoes } from "../../engine/care/feeding/feed.ts";
import { referenceTank } from "../../engine/larder/test-kit/reference-tank.ts";
import type { Sentence } from "../sentence.ts";
import { feedingOf } from "./feeding.ts";
import { feedingWorking } from "./working.ts";

const share = fc.double({ min: 0, max: 0.5, noNaN: true });
const facts = referenceTank();
const { lead, parts, figures } = feedingOf(facts);
const value = (name: string) => figures.find(({ id }) => id === `care.feeding.${name}`)!.spread.central;

test("feed goes somewhere, all of it", () => {
  fc.assert(
    fc.property(share, share, share, share, (left, faeces, kept, organic) => {
      const goes = fedGoes({ left, faeces, kept, organic });
      expect(Object.values(goes).reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
      expect(Math.min(...Object.values(goes))).toBeGreaterThanOrEqual(0);
    }),
  );
});

test("the ways of a day's nitrogen and phosphorus add up to what goes in", () => {
  for (const element of ["nitrogen", "phosphorus"]) {
    const ways = ["leftovers", "faeces", "fish", "organic", "dissolved"].map((way) =>
      value(`${element}_${way}`),
    );
    expect(ways.reduce((sum, one) => sum + one, 0)).toBeCloseTo(value(`${element}_in`), 9);
  }
  expect(value("nitrogen_in")).toBeCloseTo(facts.feedGPerDay.central * facts.feedNMgPerG.central, 9);
});

test("what is past the fish's appetite is left as well, as in the model; without fish all of it is", () => {
  const of = (tank: typeof facts, name: string) =>
    feedingOf(tank).figures.find(({ id }) => id === `care.feeding.${name}`)!.spread.central;
  const crowded = referenceTank({ fishWetG: { ...facts.fishWetG, low: 20, central: 20, high: 20 } });
  const feed = of(crowded, "given_dry");
  const most = of(crowded, "most");
  const eaten = ((1 - crowded.uneatenShare.central) * feed) / (1 + (feed / most) ** 4) ** 0.25;
  expect(of(crowded, "nitrogen_leftovers") / of(crowded, "nitrogen_in")).toBeCloseTo(1 - eaten / feed, 9);

  const nobody = referenceTank({ fishWetG: { ...facts.fishWetG, low: 0, central: 0, high: 0 } });
  expect(of(nobody, "nitrogen_leftovers")).toBeCloseTo(of(nobody, "nitrogen_in"), 9);
  const said = feedingOf(nobody).parts.flatMap(({ notes }) => notes);
  expect(said).toContain("No fish live here: all of it is left for the crew, or rots.");
  expect(said.join(" ")).not.toContain("these fish");
});

test("seven fasting days would bring nothing; one brings a seventh less", () => {
  expect(value("fasting_1")).toBeCloseTo((6 / 7) * value("fasting_0"), 9);
});

const shown = (sentences: readonly Sentence[]) =>
  sentences.flatMap((sentence) =>
    sentence.flatMap((part) => (typeof part === "string" ? [] : [part.figure])),
  );

describe("no dead ends", () => {
  test("each number shown has a working, and what it rests on has one or is a fact of the tank", () => {
    const ids = shown([
      lead,
      ...parts.flatMap(({ rows, tables }) => [
        ...rows.map((row) => row.value),
        ...tables.flatMap((table) => table.rows.flat()),
      ]),
    ]);
    expect(ids.length).toBeGreaterThan(30);
    for (const id of ids) {
      const working = feedingWorking({ facts }, id);
      expect(working, id).not.toBeNull();
      for (const { figure } of working!.inputs)
        if (figure !== null)
          expect(figure.startsWith("tank.") || feedingWorking({ facts }, figure) !== null, figure).toBe(true);
    }
  });
});

test("a fish weight that was guessed from the feed is not held against the feed", () => {
  const guessed = referenceTank({ assumed: ["fishWetG"] });
  expect(feedingOf(guessed).figures.some(({ id }) => id === "care.feeding.times_upkeep")).toBe(false);
});
