/**
 * Survival and counts against printed examples. Evidence: the control arm and both population estimates were read in
 * copies (lecture notes; a page of the textbook); the treated arm's table is quoted from memory, as many textbooks print it.
 */
import { expect, test } from "vitest";
import { betaBinomial } from "../../src/engine/heads/chances.ts";
import { type Known, kaplanMeier, shareAt } from "../../src/engine/heads/survival.ts";

const dead = (days: readonly number[]): Known[] => days.map((day) => ({ days: day, died: true }));
const left = (days: readonly number[]): Known[] => days.map((day) => ({ days: day, died: false }));

// Cox & Oakes (1984), Analysis of Survival Data, table 1.1: remission of leukaemia in weeks.
const CONTROL = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23];

test("control arm of Cox & Oakes, table 1.1: S(10) is 8 of 21, 0.381, with a standard error of 0.106", () => {
  const steps = kaplanMeier(dead(CONTROL));
  expect(shareAt(steps, 10).toFixed(3)).toBe("0.381");
  expect(
    steps
      .filter(({ days }) => days <= 10)
      .at(-1)!
      .standardError.toFixed(3),
  ).toBe("0.106");
  expect([1, 2].map((day) => shareAt(steps, day).toFixed(3))).toEqual(["0.905", "0.810"]);
});

// The same table, arm on 6-mercaptopurine.
const TREATED = [
  ...dead([6, 6, 6, 7, 10, 13, 16, 22, 23]),
  ...left([6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35]),
];

test.each([
  [6, 0.857, 0.0764],
  [7, 0.807, 0.0869],
  [10, 0.753, 0.0963],
  [13, 0.69, 0.1068],
  [16, 0.627, 0.1141],
  [22, 0.538, 0.1282],
  [23, 0.448, 0.1346],
])("treated arm at week %d: printed share %d, standard error %d", (week, share, error) => {
  const step = kaplanMeier(TREATED).find(({ days }) => days === week)!;
  expect(step.share).toBeCloseTo(share, 3);
  expect(step.standardError).toBeCloseTo(error, 4);
});

/**
 * Sinclair, Fryxell & Caughley (2006), Wildlife Ecology, chapter 13: 100 animals were marked; of 50 caught later, ten
 * with a mark give an estimate of 464, nine of 510 (Bailey's). Here: 100 were seen in a count, in which each is seen with
 * a chance p that the second catch tells, whose likelihood is p^m (1 - p)^(50 - m). For large numbers the chance of the count
 * among N is that likelihood at p = 100 / N, over N: highest at p = (m + 1) / 51, which is Bailey's 100 x 51 / (m + 1).
 */
test.each([
  [10, 464],
  [9, 510],
])("100 seen, %d of 50 known to have been among them: %d there", (known, printed) => {
  const [a, b] = [known + 1, 50 - known + 1];
  let best = { heads: 0, weight: 0 };
  for (let heads = 100; heads < 1500; heads += 1) {
    const weight = betaBinomial(100, heads, a / (a + b), a + b);
    if (weight > best.weight) best = { heads, weight };
  }
  // Whole numbers against a formula for large ones: within one in a hundred.
  expect(Math.abs(best.heads / printed - 1)).toBeLessThan(0.01);
});
