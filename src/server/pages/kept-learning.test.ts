/** What came since a tank was learned from: entries are counted where there are new ones. */
import { expect, test } from "vitest";
import { sinceWords } from "./kept-learning.ts";

test.each([
  [["a"], ["a", "b"], "1 entry has come in"],
  [["a"], ["b", "c"], "2 entries have come in"],
  [["a", "b"], ["a"], "The daybook or the answers have changed"],
  [["a"], ["a"], "The daybook or the answers have changed"],
])("%j, then %j", (then, now, words) => {
  expect(sinceWords(new Set(then), new Set(now))).toContain(words);
});
