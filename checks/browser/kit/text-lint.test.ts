import { expect, test } from "vitest";
import { sentencesOf, wordFaults } from "./text-lint.ts";

test.each([
  "Usually short if you add: 15 of 20.",
  "It grows about 3 rations a day; nearly always, 19 of 20.",
  "film on glass\tusually\t14 of 20",
  "usually: 13 to 17 of 20",
  "Mains by water is a matter of safety.",
])("%s: nothing to say against it", (text) => {
  expect(wordFaults(text)).toEqual([]);
});

test.each([
  ["It usually hides by day.", '"usually" without its number'],
  ["Usually short. That is 15 of 20.", '"usually" without its number'],
  ["15 of 20 runs are usually short.", '"usually" without its number'],
  ["Seldom, 14 of 20.", '"seldom" stands for 14 of 20'],
  ["This is reef-safe.", "not used: safe"],
  ["Please enter a number.", "not used: Please"],
])("%s: %s", (text, rule) => {
  expect(wordFaults(text).map((fault) => fault.rule)).toEqual([rule]);
});

test("a sentence ends at its stop or its line, not at a decimal point or a unit", () => {
  expect(sentencesOf("Grows 3.5 mg. of it. Wait\na\tb")).toEqual(["Grows 3.5 mg. of it.", "Wait", "a b"]);
});
