/** Food by hand is told from a tenth of a ration on; below it nobody is called short. */
import { expect, test } from "vitest";
import { animalById } from "../../catalogue/index.ts";
import { referenceTank } from "../larder/test-kit/reference-tank.ts";
import { fedByHandOf } from "./fed-by-hand.ts";
import { nothingYet } from "./nothing-yet.ts";
import type { WaveDraft } from "./waves.ts";

const animal = animalById.get("trochus-snail")!;
const facts = referenceTank({ present: [{ id: animal.id, count: 2, on: null }] });
const company = [{ animal, count: 2, planned: false }];

/** What of a draft tells of food by hand. */
const draft = (mgC: number): WaveDraft =>
  ({
    programme: { input: { candidates: [{ animal }] } },
    answer: { handFed: new Map([[animal.id, mgC]]), heads: new Map([[animal.id, 2]]) },
    ...{ suitability: new Map(), date: { day: 0 } },
    supply: { pessimistic: {} },
  }) as unknown as WaveDraft;

test.each([
  [[0.58], []],
  [[0.99], []],
  [[1], [1]],
  [[3, 0.2], [3]],
  [[0.2, 3], [3]],
])("%j mg C a day, wave by wave: %j is told", (waves, told) => {
  const fed = fedByHandOf(waves.map(draft), facts, company);
  expect(fed.map(({ mgC }) => mgC)).toEqual(told);
  const said = nothingYet(facts, [], [], [], fed).because.join(" ");
  if (told.length > 0) expect(said).toContain("do not find enough");
  else expect(said).not.toContain("do not find enough");
});

test("it is told in dry food too, for those that live there", () => {
  const [fed] = fedByHandOf([draft(4.2)], facts, company);
  expect(fed).toMatchObject({ heads: 2, standing: "resident" });
  expect(fed!.dryFeedMg).toBeCloseTo(10, 9);
});
