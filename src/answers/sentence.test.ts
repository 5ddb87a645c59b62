import { expect, test } from "vitest";
import { linked, opened, plain } from "./sentence.ts";

test("the first number of a ready sentence is the door", () => {
  expect(linked("It wants at least 300 L; this display holds about 114 L.", "a.b")).toEqual([
    "It wants at least ",
    { text: "300 L", figure: "a.b" },
    "; this display holds about 114 L.",
  ]);
});

test.each([
  ["In 15 of 20 runs the larder offers 1.1 rations a day in all.", "1.1 rations a day"],
  ["The least group of 3 needs 0.54 rations a day and may starve.", "0.54 rations a day"],
])("%s: what is told in rations is the door, not what is counted before it", (text, door) => {
  const sentence = linked(text, "a.b");
  expect(sentence.filter((part) => typeof part !== "string")).toEqual([{ text: door, figure: "a.b" }]);
  expect(plain(sentence)).toBe(text);
});

test("without a number, what stands before the first stop is", () => {
  expect(linked("food: none is left", "a.b")).toEqual([{ text: "food", figure: "a.b" }, ": none is left"]);
});

test("without a figure the sentence is plain", () => {
  expect(linked("It wants 300 L.", null)).toEqual(["It wants 300 L."]);
});

test("each captured part is a door of its own, and no word is lost", () => {
  const text = "It lives at 20 to 28 °C, best at 24 to 26.5 °C, and at a salinity of 33 to 36.";
  const sentence = opened(text, [
    [/salinity of ([\d.]+ to [\d]+)/, "salinity"],
    [/lives at (\d+ to \d+ °C)/, "warmth"],
    [/weighs (\d+ g)/, "weight"],
  ]);
  expect(plain(sentence)).toBe(text);
  expect(sentence.filter((part) => typeof part !== "string")).toEqual([
    { text: "20 to 28 °C", figure: "warmth" },
    { text: "33 to 36", figure: "salinity" },
  ]);
});
