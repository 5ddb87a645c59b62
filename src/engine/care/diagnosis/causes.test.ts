import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diagnosisScene, growth, reading, subjectOf } from "../../../../checks/kit/diagnosis-scene.ts";
import { diagnosis } from "../../../catalogue/diagnosis.ts";
import type { ToldInAnswers } from "../../types/record.ts";
import type { TankFacts } from "../../types/tank.ts";
import { askedFirst, rankCauses, tellingClues } from "./causes.ts";
import { RECORD_CLUES } from "./clues.ts";

test("every clue that the record is to answer has its reader, and no other", () => {
  const told = diagnosis.clues.filter(({ from }) => from === "record").map(({ id }) => id);
  expect(Object.keys(RECORD_CLUES).sort()).toEqual(told.sort());
});

test("every clue answers every question without a word of the record", () => {
  const scene = diagnosisScene();
  for (const { explains } of diagnosis.causes)
    for (const effect of Object.keys(explains))
      for (const { clues } of rankCauses(scene, subjectOf(effect as keyof typeof explains)))
        for (const { holds, factor } of clues) if (holds === null) expect(factor).toBe(1);
});

test("nothing known: each cause has its share as it stands in facts/", () => {
  const clues = diagnosis.clues.map(({ id }) => id);
  const scene = diagnosisScene();
  for (const { cause, chance, prior, clues: weighed } of rankCauses(scene, subjectOf("diatoms"))) {
    expect(weighed.every(({ id }) => clues.includes(id))).toBe(true);
    if (weighed.every(({ holds }) => holds === null)) expect(chance, cause.id).toBeCloseTo(prior, 12);
  }
});

test("who has nobody that eats it has few eaters, though the tank has no such surface either", () => {
  const eaters = (facts: Partial<TankFacts>) =>
    rankCauses(diagnosisScene({ facts }), subjectOf("diatoms"))
      .find(({ cause }) => cause.id === "few-mouths")!
      .clues.find(({ id }) => id === "few_eaters")!.holds;
  const none = { low: 0, central: 0, high: 0, origin: "stated", how: "typed" } as const;
  expect(eaters({ present: [], sandM2: none })).toBe(true);
  expect(eaters({ present: [{ id: "florida-cerith", count: 60, on: "2025-09-01" }] })).toBe(false);
  expect(eaters({ present: [{ id: "florida-cerith", count: 60, on: "2025-09-01" }], sandM2: none })).toBe(
    false,
  );
});

test("a clue that holds more often with a cause never lowers it; its denial never raises it", () => {
  const scene = diagnosisScene();
  const effects = [...new Set(diagnosis.causes.flatMap(({ explains }) => Object.keys(explains)))];
  fc.assert(
    fc.property(
      fc.constantFrom(...effects),
      fc.array(fc.tuple(fc.constantFrom(...diagnosis.clues.map(({ id }) => id)), fc.boolean())),
      fc.constantFrom(...diagnosis.clues.map(({ id }) => id)),
      (effect, told, clue) => {
        const subject = subjectOf(effect as "diatoms");
        const answers = Object.fromEntries(told.filter(([id]) => id !== clue));
        const chances = (more: Record<string, boolean>) =>
          new Map(
            rankCauses(scene, subject, { ...answers, ...more }).map(({ cause, chance }) => [
              cause.id,
              chance,
            ]),
          );
        const [yes, no] = [chances({ [clue]: true }), chances({ [clue]: false })];
        for (const { id, clues, explains } of diagnosis.causes) {
          const row = clues[clue];
          if (row === undefined || explains[effect as "diatoms"] === undefined) continue;
          const [high, low] = row.if >= row.otherwise ? [yes, no] : [no, yes];
          expect(high.get(id) ?? 0).toBeGreaterThanOrEqual((low.get(id) ?? 0) - 1e-12);
        }
      },
    ),
  );
});

test("diatoms: where the source water is not known, it is asked before all else", () => {
  const scene = diagnosisScene({ facts: { sourceWater: { value: "tap", origin: "assumed" } } });
  const ranked = rankCauses(scene, subjectOf("diatoms"));
  expect(askedFirst(ranked, "diatoms")).toEqual(["source_unpurified", "cartridge_spent"]);
  expect(askedFirst(rankCauses(scene, subjectOf("hair_algae")), "hair_algae")).toEqual([]);
  expect(askedFirst(rankCauses(scene, subjectOf("snail_loss")), "snail_loss")[0]).toBe("source_unpurified");
});

test("a keeper's answer in a sighting counts, the newest of them, for six weeks", () => {
  const before = (on: string, told: boolean) => growth("hair_algae", 2, on, { new_rock: told });
  const chance = (...observations: ReturnType<typeof before>[]) =>
    rankCauses(diagnosisScene({ observations }), subjectOf("hair_algae")).find(
      ({ cause }) => cause.id === "new-rock",
    )?.chance ?? 0;
  const none = chance();
  expect(chance(before("2026-06-01", true))).toBeGreaterThan(none);
  expect(chance(before("2026-06-01", true), before("2026-06-10", false))).toBeLessThan(none);
  expect(chance(before("2026-04-01", true))).toBe(none);
});

test("what would tell causes apart is not known yet, and moves them", () => {
  const ranked = rankCauses(diagnosisScene(), subjectOf("hair_algae"));
  const telling = tellingClues(ranked);
  expect(telling.length).toBe(3);
  for (const id of telling)
    expect(ranked.some(({ clues }) => clues.some((clue) => clue.id === id && clue.holds === null))).toBe(
      true,
    );
});

// Odds by hand: little-export, prior 0.2 of hair algae; no skimmer (0.5 / 0.25), nitrate above 20 (0.55 / 0.2), water
// changed weekly (0.4 / 0.8): 0.25 x 2 x 2.75 x 0.5 = 0.6875, a chance of 0.4074.
test("a chance worked by hand", () => {
  const scene = diagnosisScene({
    facts: { skimmer: { value: false, origin: "stated" } },
    observations: [reading("no3_mg_n_per_l", 25 / 4.4268, "2026-06-10")],
  });
  const ranked = rankCauses(scene, subjectOf("hair_algae"));
  expect(ranked.find(({ cause }) => cause.id === "little-export")?.chance).toBeCloseTo(0.6875 / 1.6875, 9);
});

const clueOf = (scene: ReturnType<typeof diagnosisScene>, id: string) =>
  rankCauses(scene, subjectOf("hair_algae"))
    .flatMap(({ clues }) => clues)
    .find((clue) => clue.id === id);

test("what is left of the feed is taken from the questions where the daybook is silent, and from the daybook where it is not", () => {
  const share = (central: number) =>
    ({ low: central, central, high: central, origin: "derived", how: "" }) as const;
  const told = (central: number, assumed: string[] = []) =>
    clueOf(diagnosisScene({ facts: { uneatenShare: share(central), assumed } }), "leftovers_seen");
  expect(told(0.25)).toMatchObject({ holds: true, on: null });
  expect(told(0.02)).toMatchObject({ holds: false });
  expect(told(0.25, ["uneatenShare"])?.holds).toBeNull();
  const seen = diagnosisScene({
    facts: { uneatenShare: share(0.25) },
    observations: [growth("leftovers", 0)],
  });
  expect(clueOf(seen, "leftovers_seen")).toMatchObject({ holds: false });
});

describe("feed raised", () => {
  const changed = (on: string, to: number) => ({ kind: "changed", what: "feed", on, to }) as const;
  const state = (happenings: ReturnType<typeof changed>[], told?: ToldInAnswers["feed"]) => {
    const scene = diagnosisScene({ happenings });
    const record =
      told === undefined ? scene.record : { ...scene.record, told: { sightings: null, feed: told } };
    return RECORD_CLUES["feed_raised"]!({ ...scene, record }, subjectOf("hair_algae")).holds;
  };

  test.each([
    ["the first change, and nobody knows the feed before it", [changed("2026-06-10", 0.8)], undefined, null],
    ["the first change, to twice what the questions were told", [changed("2026-06-10", 0.8)], 0.4, true],
    ["the first change, to less", [changed("2026-06-10", 0.3)], 0.4, false],
    [
      "two changes, the second to more",
      [changed("2026-05-01", 0.4), changed("2026-06-10", 0.8)],
      undefined,
      true,
    ],
    ["a raise that is long ago", [changed("2026-03-01", 0.8)], 0.4, false],
  ] as const)("%s", (_, changes, gPerDay, holds) => {
    const told = gPerDay === undefined ? undefined : { gPerDay, changedBy: "h0" };
    expect(state([...changes], told)).toBe(holds);
  });

  test("told after the change it holds it already: the feed before stays unknown", () => {
    expect(state([changed("2026-06-10", 0.8)], { gPerDay: 0.8, changedBy: null })).toBeNull();
  });

  test("told between two changes it is what the second changed", () => {
    const two = [changed("2026-05-01", 0.4), changed("2026-06-10", 0.8)];
    expect(state(two, { gPerDay: 0.8, changedBy: "h1" })).toBe(false);
  });
});
