import { describe, expect, test } from "vitest";
import { GROWTHS } from "../../engine/types/tank.ts";
import { coverOfScore, cropOfScore, GROWTH_ANCHORS, SCORES, scoreOfShare } from "./growth-anchors.ts";

/** Model, section 12. */
const scoreOf = (mgC: number): number => (4 * mgC ** 0.8) / (mgC ** 0.8 + 300 ** 0.8);

describe("a score's crop", () => {
  test("gives the score back through the model's own formula, threads at three times the crop", () => {
    for (const score of [1, 2, 3] as const) {
      const { low, central, high } = cropOfScore("film_glass", score)!;
      expect(scoreOf(central)).toBeCloseTo(score, 2);
      expect(scoreOf(low)).toBeCloseTo(score - 0.5, 1);
      expect(scoreOf(high)).toBeCloseTo(score + 0.5, 1);
      expect(cropOfScore("hair_algae", score)!.central).toBe(3 * central);
    }
    expect(cropOfScore("film_rock", 2)!.central).toBe(300);
  });
  test("grows with the score, each where the one before ends", () => {
    for (const score of [0, 1, 2, 3] as const) {
      const [here, next] = [cropOfScore("film_glass", score)!, cropOfScore("film_glass", (score + 1) as 1)!];
      expect(here.low).toBeLessThan(here.high);
      expect(next.low).toBe(here.high);
    }
  });
  test("is not made up where the model has none", () => {
    expect(cropOfScore("dinoflagellates", 3)).toBeNull();
  });
});

test("each growth has five different anchors, short enough for a row", () => {
  for (const growth of GROWTHS) {
    const { anchors } = GROWTH_ANCHORS[growth];
    expect(new Set(anchors).size).toBe(SCORES.length);
    for (const anchor of anchors) expect(anchor.length).toBeLessThanOrEqual(80);
  }
});

test("shares and covers agree: a share's score is covered as the share is", () => {
  expect([0, 0.05, 0.3, 0.6, 0.9].map(scoreOfShare)).toEqual([0, 1, 2, 3, 4]);
  expect(SCORES.map(coverOfScore)).toEqual(["none", "trace", "patches", "patches", "covered"]);
});
