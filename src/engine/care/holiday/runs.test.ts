/** What nobody at home means, by laws: less feed, less nitrate; the same until the day of leaving; bags counted. */
import { describe, expect, test } from "vitest";
import { animalById, modelParameters } from "../../../catalogue/index.ts";
import { FEEDER_GIVES, fedOn } from "../../ahead/away.ts";
import { crewKind } from "../../ahead/start.ts";
import { drawMembers } from "../../larder/members.ts";
import { referenceTank } from "../../larder/test-kit/reference-tank.ts";
import { holidayRuns, WAYS } from "./runs.ts";

const facts = referenceTank();
const members = drawMembers(facts, modelParameters, { count: 4, seed: 1 });
const kinds = [crewKind(animalById.get("trochus-snail")!, 3)];
const runs = (sitterEvery = 2, leave = 3, back = 17) =>
  holidayRuns({ facts, members, kinds, seed: 1, leave, back, sitterEvery });

test("days that a sitter feeds: not on the day of leaving, then every so many", () => {
  const days = (every: number) => [0, 1, 2, 3, 4, 5, 6].filter((d) => fedOn("sitter", d, every) > 0);
  expect(days(2)).toEqual([2, 4, 6]);
  expect(days(3)).toEqual([3, 6]);
  expect(days(1)).toEqual([0, 1, 2, 3, 4, 5, 6]);
  expect([0, 1].map((d) => fedOn("feeder", d, 2))).toEqual([FEEDER_GIVES, FEEDER_GIVES]);
  expect(fedOn("nothing", 4, 2)).toBe(0);
});

describe("runs", () => {
  const found = runs();

  test("every version of the tank comes home in each way, with numbers that can be", () => {
    for (const way of WAYS) {
      expect(found[way]).toHaveLength(members.length);
      for (const one of found[way]) {
        for (const value of Object.values(one)) expect(Number.isFinite(value)).toBe(true);
        expect(one.lost).toBeLessThanOrEqual(3);
        expect(one.nitrateMgPerL).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test("in the dark, where nothing grows: the more is fed, the more nitrate and phosphate", () => {
    const none = { low: 0, central: 0, high: 0, origin: "stated", how: "dark" } as const;
    const dark = referenceTank({ lightHours: none });
    const ofDark = drawMembers(dark, modelParameters, { count: 4, seed: 1 });
    const inDark = holidayRuns({
      ...{ facts: dark, members: ofDark, kinds: [], seed: 1, leave: 3, back: 17, sitterEvery: 2 },
    });
    for (const m of ofDark.keys()) {
      const [nothing, sitter, feeder] = WAYS.map((way) => inDark[way][m]!);
      expect(nothing!.nitrateMgPerL).toBeLessThan(sitter!.nitrateMgPerL);
      expect(sitter!.nitrateMgPerL).toBeLessThan(feeder!.nitrateMgPerL);
      expect(nothing!.phosphateMgPerL).toBeLessThanOrEqual(feeder!.phosphateMgPerL);
    }
  });

  test("asked again it says the same", () => {
    expect(runs()).toEqual(found);
  });

  test("a sitter who feeds daily gives more than one of every third day", () => {
    const [daily, third] = [runs(1).sitter, runs(3).sitter];
    for (const [m, one] of daily.entries())
      expect(one.nitrateMgPerL).toBeGreaterThan(third[m]!.nitrateMgPerL);
  });
});
